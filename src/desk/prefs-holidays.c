/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "prefs-edit.h"
#include "shops.h"

enum
{
  DAY,
  NAME,
  N_FIELDS
};

static const UnsootPrefsEdit edit;

static gboolean
carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  return unsoot_prefs_carry_out (db, who, order, &edit, error);
}

static const UnsootDeedForm form = {
  .slug = "holiday",
  .title = N_ ("Holiday"),
  .verb = N_ ("Save"),
  .done = N_ ("The holiday is saved"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .n_fields = N_FIELDS,
  .fields = {
    [DAY] = { .label = N_ ("Day"), .kind = UNSOOT_ASK_DAY, .hint = N_ ("As 2026-12-25") },
    [NAME] = { .label = N_ ("Name") },
  },
  .carry_out = carry_out,
};

static char *
text (gconstpointer record, gsize field, const char *currency)
{
  const UnsootHolidayRow *holiday = record;

  return g_strdup (field == DAY ? holiday->day : holiday->name);
}

static gboolean
apply (gpointer record, const UnsootDeedOrder *order, GError **error)
{
  UnsootHolidayRow *holiday = record;

  g_free (holiday->day);
  holiday->day = g_strdup (order->values[DAY].text);
  g_free (holiday->name);
  holiday->name = g_strdup (unsoot_deed_text (order, NAME));
  return TRUE;
}

static gboolean
save (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error)
{
  return unsoot_holiday_save (db, who, record, error);
}

static const UnsootPrefsEdit edit = { &form, &unsoot_holiday_row_type, text, apply, save };

static gboolean
drop (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order, GError **error)
{
  g_autoptr (UnsootHolidayRow) holiday
      = unsoot_rows_get (db, &unsoot_holiday_row_type, order->record, error);

  return holiday != NULL && unsoot_holiday_drop (db, who, holiday, error);
}

static const UnsootDeedForm drop_form = {
  .slug = "holiday-drop",
  .title = N_ ("Open on this day"),
  .verb = N_ ("Remove"),
  .done = N_ ("The holiday is removed"),
  .deed = UNSOOT_DEED_EDIT_SHOP,
  .destroys = TRUE,
  .carry_out = drop,
};

void
unsoot_prefs_card_holidays (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Holidays"));

  for (guint i = 0; i < file->holidays->len; i++)
    {
      const UnsootHolidayRow *holiday = g_ptr_array_index (file->holidays, i);
      g_autofree char *day = unsoot_format_exact_day (holiday->day);
      g_autofree char *about = g_strdup_printf ("%s, %s", holiday->name, day);
      GtkWidget *row = unsoot_prefs_row_new (session, &edit, holiday->name, day, NULL, holiday);

      unsoot_prefs_row_add_drop (row, session, &drop_form, holiday->id, about);
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  unsoot_prefs_list_show (list, card, _ ("None yet. On a holiday nothing can be booked."));
  gtk_box_append (GTK_BOX (card),
                  unsoot_prefs_add_button_new (session, &edit, _ ("Add a holiday…")));
}
