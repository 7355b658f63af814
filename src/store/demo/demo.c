/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo.h"

#include "civil.h"
#include "demo-private.h"
#include "role.h"
#include "shops.h"

#include <glib/gi18n-lib.h>

#define SEED 2417

static void
demo_vehicle_free (UnsootDemoVehicle *vehicle)
{
  g_free (vehicle->contact);
  g_free (vehicle);
}

/* Whole hours, from 12 behind to 14 ahead: every minute of the day has one. */
int
unsoot_demo_offset (gint64 now)
{
  int utc_hour = (int) (now / 3600 % 24);
  int hours = 10 - utc_hour;

  if (hours < -12)
    hours += 24;
  return hours * 60;
}

char *
unsoot_demo_date (const UnsootDemo *demo, int days)
{
  int today = 0;

  unsoot_day_parse (demo->today, &today, NULL);
  return unsoot_day_iso (today + days);
}

gboolean
unsoot_demo_goes_on (UnsootDemo *demo, double share, GError **error)
{
  if (g_cancellable_is_cancelled (demo->cancellable))
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CANCELLED,
                           _ ("Making the demo shop was stopped. Nothing of it was kept."));
      return FALSE;
    }
  if (demo->progress != NULL)
    demo->progress (share, demo->progress_data);
  return TRUE;
}

static gboolean
make_all (UnsootDemo *demo, GError **error)
{
  return unsoot_demo_make_shop (demo, error) && unsoot_demo_make_families (demo, error)
         && unsoot_demo_make_stores (demo, error) && unsoot_demo_make_people (demo, error)
         && unsoot_demo_make_history (demo, error) && unsoot_demo_make_today (demo, error);
}

gboolean
unsoot_demo_make (UnsootDb *db, gint64 now, UnsootDemoProgress progress, gpointer data,
                  GCancellable *cancellable, GError **error)
{
  UnsootDemo demo = { .db = db,
                      .now = now,
                      .random = g_rand_new_with_seed (SEED),
                      .offset_minutes = unsoot_demo_offset (now),
                      .cancellable = cancellable,
                      .progress = progress,
                      .progress_data = data };
  gint64 local = now + demo.offset_minutes * 60;
  g_autoptr (UnsootTransaction) transaction = unsoot_db_begin (db, error);
  gboolean made = FALSE;

  demo.vehicles = g_ptr_array_new_with_free_func ((GDestroyNotify) demo_vehicle_free);
  demo.zone = g_strdup_printf ("%c%02d:00", demo.offset_minutes < 0 ? '-' : '+',
                               ABS (demo.offset_minutes) / 60);
  demo.day_start = local / UNSOOT_DEMO_DAY * UNSOOT_DEMO_DAY - demo.offset_minutes * 60;
  demo.today = unsoot_day_iso (unsoot_local_from_unix (now, demo.offset_minutes).day);
  if (transaction != NULL && make_all (&demo, error))
    made = unsoot_transaction_commit (g_steal_pointer (&transaction), error);

  g_rand_free (demo.random);
  g_ptr_array_unref (demo.vehicles);
  g_free (demo.zone);
  g_free (demo.today);
  return made;
}

char *
unsoot_demo_pins (void)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < unsoot_demo_n_staff; i++)
    {
      const UnsootDemoPerson *person = &unsoot_demo_staff[i];
      UnsootRole role = UNSOOT_ROLE_ADVISOR;

      unsoot_role_find (person->role, &role);
      /* Translators: name, role, PIN of someone in the demo shop. */
      g_string_append_printf (text, _ ("%s, %s: %s"), person->name, unsoot_role_words (role),
                              person->pin);
      g_string_append_c (text, '\n');
    }
  return g_string_free (text, FALSE);
}
