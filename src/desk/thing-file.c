/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "thing-file.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "adapters.h"
#include "fluids.h"
#include "format.h"
#include "jobs.h"
#include "lots.h"
#include "machines.h"
#include "services.h"
#include "shops.h"
#include "side.h"
#include "stocks.h"
#include "vehicles.h"

static void
fact_free (gpointer data)
{
  UnsootThingFact *fact = data;

  g_free (fact->what);
  g_free (fact->value);
  g_free (fact);
}

void
unsoot_thing_file_free (UnsootThingFile *file)
{
  g_free (file->title);
  g_free (file->subtitle);
  g_clear_pointer (&file->facts, g_ptr_array_unref);
  g_clear_pointer (&file->jobs, g_ptr_array_unref);
  g_free (file);
}

/* Takes @value; nothing is said of what is not known. */
static UnsootThingFact *
say (UnsootThingFile *file, const char *what, char *value)
{
  UnsootThingFact *fact;

  if (value == NULL || *value == '\0')
    {
      g_free (value);
      return NULL;
    }
  fact = g_new0 (UnsootThingFact, 1);
  fact->what = g_strdup (what);
  fact->value = value;
  g_ptr_array_add (file->facts, fact);
  return fact;
}

static void
say_warning (UnsootThingFile *file, const char *what, char *value)
{
  UnsootThingFact *fact = say (file, what, value);

  if (fact != NULL)
    fact->warns = TRUE;
}

static char *
day_text (const char *day, const char *today)
{
  return day != NULL ? unsoot_format_day (day, today) : NULL;
}

static char *
side_text (const char *slug)
{
  UnsootSide side = UNSOOT_SIDE_NONE;

  unsoot_side_from_slug (slug, &side);
  return g_strdup (unsoot_side_label (side));
}

static gboolean
load_fluid (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today, gint64 now,
            GError **error)
{
  g_autoptr (UnsootFluidStock) stock = unsoot_fluid_stock (db, id, now, error);
  g_autoptr (GPtrArray) lots = stock != NULL ? unsoot_lot_list (db, id, today, error) : NULL;

  if (lots == NULL)
    return FALSE;
  file->title = g_strdup (stock->name);
  file->subtitle = side_text (stock->side);
  say (file, _ ("On hand"), unsoot_format_litres (stock->on_hand_ml));
  say (file, _ ("Promised to jobs"), unsoot_format_litres (stock->promised_ml));
  if (stock->free_ml < 0)
    say_warning (file, _ ("Short"), unsoot_format_litres (-stock->free_ml));
  else
    say (file, _ ("Free"), unsoot_format_litres (stock->free_ml));
  if (!isnan (stock->days_left))
    say (file, _ ("Lasts"), unsoot_format_span ((gint64) (stock->days_left * 86400)));
  for (guint i = 0; i < lots->len; i++)
    {
      const UnsootLotStock *lot = g_ptr_array_index (lots, i);
      g_autofree char *what = g_strdup_printf (_ ("Lot %s"), lot->lot->code);
      g_autofree char *left = unsoot_format_litres (lot->on_hand_ml);
      g_autofree char *expires = day_text (lot->lot->expires_on, today);
      char *value = lot->why_not != NULL ? g_strdup_printf ("%s. %s", left, lot->why_not)
                    : expires != NULL
                        /* Translators: what is left of a lot, and when it expires */
                        ? g_strdup_printf (_ ("%s, expires %s"), left, expires)
                        : g_strdup (left);
      if (lot->on_hand_ml > 0 && lot->why_not != NULL)
        say_warning (file, what, value);
      else if (lot->on_hand_ml > 0)
        say (file, what, value);
      else
        g_free (value);
    }
  return TRUE;
}

/* A job as a line of a list, put together from its rows. */
static UnsootJobLine *
job_line (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, id, error);
  g_autoptr (UnsootVehicleRow) vehicle
      = job != NULL ? unsoot_vehicle_load (db, job->vehicle_id, error) : NULL;
  g_autoptr (UnsootServiceRow) service
      = vehicle != NULL ? unsoot_service_load (db, job->service_id, error) : NULL;
  UnsootJobLine *line;

  if (service == NULL)
    return NULL;
  line = g_new0 (UnsootJobLine, 1);
  line->id = job->id;
  line->number = job->number;
  line->vehicle_id = job->vehicle_id;
  line->customer_id = job->customer_id;
  line->status = g_strdup (job->status);
  line->vehicle = unsoot_vehicle_title (vehicle);
  line->service = g_strdup (service->name);
  line->sides = g_strdup (service->sides);
  line->made_at = job->made_at;
  return line;
}

static gboolean
add_job (UnsootDb *db, UnsootThingFile *file, gint64 id, GError **error)
{
  UnsootJobLine *line = job_line (db, id, error);

  if (line == NULL)
    return FALSE;
  if (file->jobs == NULL)
    file->jobs = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_job_line_free);
  g_ptr_array_add (file->jobs, line);
  return TRUE;
}

static gboolean
load_lot (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today, gint64 now,
          GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, id, error);
  g_autoptr (UnsootFluidRow) fluid
      = lot != NULL ? unsoot_fluid_load (db, lot->fluid_id, error) : NULL;
  g_autoptr (GArray) jobs = fluid != NULL ? unsoot_lot_jobs (db, id, error) : NULL;
  gint64 left;

  if (jobs == NULL || !unsoot_lot_on_hand (db, id, &left, error))
    return FALSE;
  file->title = g_strdup_printf (_ ("Lot %s"), lot->code);
  file->subtitle = g_strdup (fluid->name);
  say (file, _ ("Side"), side_text (fluid->side));
  say (file, _ ("On hand"), unsoot_format_litres (left));
  say (file, _ ("Received"), day_text (lot->received_on, today));
  say (file, _ ("Expires"), day_text (lot->expires_on, today));
  say_warning (file, _ ("Not to be used"), g_strdup (lot->stop_reason));
  for (guint i = jobs->len; i > 0; i--)
    if (!add_job (db, file, g_array_index (jobs, gint64, i - 1), error))
      return FALSE;
  return TRUE;
}

static gboolean
load_adapter (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today, gint64 now,
              GError **error)
{
  g_autoptr (UnsootItemState) state = unsoot_adapter_item_state (db, id, now, now + 3600, 0, error);
  g_autoptr (UnsootAdapterTypeRow) type
      = state != NULL
            ? unsoot_rows_get (db, &unsoot_adapter_type_row_type, state->item->type_id, error)
            : NULL;

  if (type == NULL)
    return FALSE;
  file->title = g_strdup_printf (_ ("Adapter %s"), state->item->label);
  file->subtitle = g_strdup (type->name);
  say (file, _ ("Side"), side_text (type->side));
  say (file, _ ("Where it is"), g_strdup (state->words));
  say (file, _ ("Its bin"), g_strdup (state->item->bin));
  say (file, _ ("Inspected"), day_text (state->item->inspected_on, today));
  say (file, _ ("Condition"), g_strdup (state->item->condition));
  say (file, _ ("Note"), g_strdup (type->note));
  return TRUE;
}

/* A loan is shown on its adapter's page. */
static gboolean
load_loan (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today, gint64 now,
           GError **error)
{
  g_autoptr (UnsootLoanRow) loan = unsoot_rows_get (db, &unsoot_loan_row_type, id, error);

  if (loan == NULL || !load_adapter (db, file, loan->item_id, today, now, error))
    return FALSE;
  say (file, _ ("Lent to"), g_strdup (loan->to_name));
  say (file, _ ("Their phone"), g_strdup (loan->phone));
  if (loan->back_at == 0 && loan->due_on != NULL && g_strcmp0 (loan->due_on, today) < 0)
    say_warning (file, _ ("Due back"), day_text (loan->due_on, today));
  else
    say (file, _ ("Due back"), day_text (loan->due_on, today));
  return loan->job_id == 0 || add_job (db, file, loan->job_id, error);
}

static gboolean
load_machine (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today, gint64 now,
              GError **error)
{
  g_autoptr (UnsootMachineRow) machine = unsoot_machine_load (db, id, error);
  g_autoptr (GPtrArray) tanks = machine != NULL ? unsoot_machine_tanks (db, id, error) : NULL;
  g_autoptr (GPtrArray) checks = tanks != NULL ? unsoot_gauge_checks (db, id, error) : NULL;

  if (checks == NULL)
    return FALSE;
  file->title = g_strdup (machine->name);
  file->subtitle
      = machine->serial != NULL ? g_strdup_printf (_ ("serial %s"), machine->serial) : NULL;
  for (guint i = 0; i < tanks->len; i++)
    {
      const UnsootTankState *tank = g_ptr_array_index (tanks, i);
      g_autofree char *side = side_text (tank->tank->side);
      say (file, side, g_strdup (tank->words));
    }
  say (file, _ ("Hoses due"), day_text (machine->hoses_due_on, today));
  if (checks->len > 0)
    {
      const UnsootGaugeCheckRow *last = g_ptr_array_index (checks, checks->len - 1);
      say (file, _ ("Gauge checked"), g_strdup (last->passed ? _ ("passed") : _ ("did not pass")));
      say (file, _ ("Next gauge check"), day_text (last->next_on, today));
    }
  return TRUE;
}

typedef gboolean (*Loader) (UnsootDb *db, UnsootThingFile *file, gint64 id, const char *today,
                            gint64 now, GError **error);

UnsootThingFile *
unsoot_thing_file_load (UnsootDb *db, const char *slug, gint64 id, gint64 now, GError **error)
{
  static const struct
  {
    const char *slug;
    Loader load;
  } loaders[] = { { "fluid", load_fluid },
                  { "lot", load_lot },
                  { "adapter", load_adapter },
                  { "loan", load_loan },
                  { "machine", load_machine } };
  g_autoptr (UnsootThingFile) file = g_new0 (UnsootThingFile, 1);
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autofree char *today = shop != NULL ? unsoot_shop_date (shop, now) : NULL;

  file->facts = g_ptr_array_new_with_free_func (fact_free);
  for (gsize i = 0; today != NULL && i < G_N_ELEMENTS (loaders); i++)
    if (g_str_equal (slug, loaders[i].slug))
      return loaders[i].load (db, file, id, today, now, error) ? g_steal_pointer (&file) : NULL;
  return NULL;
}
