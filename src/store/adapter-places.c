/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapters.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "civil-words.h"
#include "deed.h"
#include "fits.h"
#include "family-row.h"
#include "shops.h"

void
unsoot_item_state_free (UnsootItemState *state)
{
  if (state == NULL)
    return;
  unsoot_adapter_item_row_free (state->item);
  g_free (state->words);
  g_free (state);
}

void
unsoot_adapter_fit_free (UnsootAdapterFit *fit)
{
  if (fit == NULL)
    return;
  unsoot_adapter_type_row_free (fit->type);
  g_free (fit->reason);
  g_clear_pointer (&fit->items, g_ptr_array_unref);
  g_free (fit);
}

/* The time asked about, and whose own booking does not stand in the way. */
typedef struct
{
  gint64 starts_at;
  gint64 ends_at;
  gint64 but_job_id;
  char *day; /* of the start, ISO */
} Asked;

static void
settle (UnsootItemState *state, UnsootItemPlace place, char *words)
{
  g_free (state->words);
  state->place = place;
  state->words = words;
}

static char *
due_words (const char *due_on)
{
  int day;

  return due_on != NULL && unsoot_day_parse (due_on, &day, NULL) ? unsoot_day_short_words (day)
                                                                 : NULL;
}

/* A loan stands in the way until it is back, whatever its date says. */
static gboolean
look_at_loans (UnsootDb *db, UnsootItemState *state, const Asked *asked, GError **error)
{
  g_autoptr (GPtrArray) loans = unsoot_rows_list (
      db, &unsoot_loan_row_type, error, "WHERE item_id = $1 AND back_at IS NULL ORDER BY id DESC",
      unsoot_int (state->item->id));
  if (loans == NULL)
    return FALSE;
  for (guint i = 0; i < loans->len; i++)
    {
      const UnsootLoanRow *loan = loans->pdata[i];
      if (loan->job_id != 0 && loan->job_id == asked->but_job_id)
        continue;
      g_autofree char *until = due_words (loan->due_on);
      settle (state, UNSOOT_ITEM_LENT,
              until != NULL ? g_strdup_printf (_ ("lent to %s until %s"), loan->to_name, until)
                            : g_strdup_printf (_ ("lent to %s"), loan->to_name));
    }
  return TRUE;
}

static gboolean
look_at_bookings (UnsootDb *db, UnsootItemState *state, const Asked *asked, GError **error)
{
  g_autoptr (GError) failed = NULL;
  gint64 number = 0;

  if (unsoot_db_int (db, &number, &failed,
                     "SELECT j.number FROM booking_adapters a"
                     " JOIN bookings b ON b.id = a.booking_id JOIN jobs j ON j.id = b.job_id"
                     " WHERE a.item_id = $1 AND b.state <> 'dropped' AND b.job_id <> $2"
                     " AND b.starts_at < $4 AND b.ends_at > $3"
                     " ORDER BY b.starts_at, b.id LIMIT 1",
                     unsoot_int (state->item->id), unsoot_int (asked->but_job_id),
                     unsoot_int (asked->starts_at), unsoot_int (asked->ends_at)))
    settle (state, UNSOOT_ITEM_BOOKED, g_strdup_printf (_ ("held for job %" PRId64), number));
  else if (!g_error_matches (failed, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND))
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  return TRUE;
}

static gboolean
inspection_due (const UnsootAdapterTypeRow *type, const UnsootAdapterItemRow *item, const char *day)
{
  int inspected;
  int asked;

  if (type->inspect_days <= 0)
    return FALSE;
  return item->inspected_on == NULL || !unsoot_day_parse (item->inspected_on, &inspected, NULL)
         || !unsoot_day_parse (day, &asked, NULL)
         || inspected + type->inspect_days < (gint64) asked;
}

static UnsootItemState *
state_of (UnsootDb *db, const UnsootAdapterTypeRow *type, const UnsootAdapterItemRow *item,
          const Asked *asked, GError **error)
{
  g_autoptr (UnsootItemState) state = g_new0 (UnsootItemState, 1);

  state->item = unsoot_record_copy (&unsoot_adapter_item_row_type, item);
  settle (state, UNSOOT_ITEM_HERE,
          item->bin != NULL ? g_strdup_printf (_ ("bin %s"), item->bin) : g_strdup (_ ("here")));
  if (inspection_due (type, item, asked->day))
    settle (state, UNSOOT_ITEM_INSPECTION, g_strdup (_ ("its inspection is due")));
  if (g_strcmp0 (item->state, "inspection") == 0)
    settle (state, UNSOOT_ITEM_INSPECTION, g_strdup (_ ("set aside for inspection")));
  if (!look_at_bookings (db, state, asked, error) || !look_at_loans (db, state, asked, error))
    return NULL;
  if (g_strcmp0 (item->state, "retired") == 0)
    settle (state, UNSOOT_ITEM_RETIRED, g_strdup (_ ("retired")));
  return g_steal_pointer (&state);
}

static gboolean
ask_about (UnsootDb *db, Asked *asked, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);

  if (shop == NULL)
    return FALSE;
  asked->day = unsoot_shop_date (shop, asked->starts_at);
  return TRUE;
}

UnsootItemState *
unsoot_adapter_item_state (UnsootDb *db, gint64 item_id, gint64 starts_at, gint64 ends_at,
                           gint64 but_job_id, GError **error)
{
  Asked asked = { starts_at, ends_at, but_job_id, NULL };
  g_autoptr (UnsootAdapterItemRow) item
      = unsoot_rows_get (db, &unsoot_adapter_item_row_type, item_id, error);
  g_autoptr (UnsootAdapterTypeRow) type
      = item != NULL ? unsoot_rows_get (db, &unsoot_adapter_type_row_type, item->type_id, error)
                     : NULL;

  if (type == NULL || !ask_about (db, &asked, error))
    return NULL;
  UnsootItemState *state = state_of (db, type, item, &asked, error);
  g_free (asked.day);
  return state;
}

static int
free_first (gconstpointer a, gconstpointer b)
{
  const UnsootItemState *left = *(UnsootItemState *const *) a;
  const UnsootItemState *right = *(UnsootItemState *const *) b;

  if (left->place != right->place)
    return left->place < right->place ? -1 : 1;
  return g_strcmp0 (left->item->label, right->item->label);
}

static UnsootAdapterFit *
fit_with_items (UnsootDb *db, gint64 type_id, const char *reason, const Asked *asked,
                GError **error)
{
  g_autoptr (UnsootAdapterFit) fit = g_new0 (UnsootAdapterFit, 1);
  g_autoptr (GPtrArray) items = unsoot_adapter_item_list (db, type_id, error);

  fit->type = unsoot_rows_get (db, &unsoot_adapter_type_row_type, type_id, error);
  fit->reason = g_strdup (reason);
  fit->items = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_item_state_free);
  if (items == NULL || fit->type == NULL)
    return NULL;
  for (guint i = 0; i < items->len; i++)
    {
      UnsootItemState *state = state_of (db, fit->type, items->pdata[i], asked, error);
      if (state == NULL)
        return NULL;
      if (state->place == UNSOOT_ITEM_RETIRED)
        unsoot_item_state_free (state);
      else
        g_ptr_array_add (fit->items, state);
    }
  g_ptr_array_sort (fit->items, free_first);
  return g_steal_pointer (&fit);
}

static GArray *
trade_rows (GPtrArray *rows)
{
  GArray *fits = g_array_new (FALSE, TRUE, sizeof (UnsootFitRow));

  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootAdapterFitRow *row = rows->pdata[i];
      UnsootFitRow fit = {
        .type_id = row->type_id,
        .family_id = row->family_id,
        .make = row->make,
        .model = row->model,
        .engine = row->engine,
        .year_from = (int) row->year_from,
        .year_to = (int) row->year_to,
      };
      g_array_append_val (fits, fit);
    }
  return fits;
}

/* What the trade says fits, of rows read for these sides. */
static GPtrArray *
fits_for (UnsootDb *db, const UnsootVehicleRow *vehicle, GPtrArray *rows, GError **error)
{
  g_autoptr (UnsootFamilyRow) family
      = vehicle->family_id != 0
            ? unsoot_rows_get (db, &unsoot_family_row_type, vehicle->family_id, error)
            : NULL;
  if (vehicle->family_id != 0 && family == NULL)
    return NULL;

  UnsootFitVehicle asked = {
    .family_id = vehicle->family_id,
    .family_name = family != NULL ? family->name : NULL,
    .make = vehicle->make,
    .model = vehicle->model,
    .engine = vehicle->engine,
    .year = (int) vehicle->year,
  };
  g_autoptr (GArray) trade = trade_rows (rows);
  return unsoot_fits ((const UnsootFitRow *) (gconstpointer) trade->data, trade->len, &asked);
}

static int
by_side_and_code (gconstpointer a, gconstpointer b)
{
  const UnsootAdapterTypeRow *left = (*(UnsootAdapterFit *const *) a)->type;
  const UnsootAdapterTypeRow *right = (*(UnsootAdapterFit *const *) b)->type;
  int side = g_strcmp0 (left->side, right->side);

  return side != 0 ? side : g_strcmp0 (left->code, right->code);
}

GPtrArray *
unsoot_adapters_fitting (UnsootDb *db, const UnsootVehicleRow *vehicle, const char *sides,
                         gint64 starts_at, gint64 ends_at, gint64 but_job_id, GError **error)
{
  Asked asked = { starts_at, ends_at, but_job_id, NULL };
  g_autoptr (GPtrArray) result
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_adapter_fit_free);
  g_autoptr (GPtrArray) rows = unsoot_rows_list (
      db, &unsoot_adapter_fit_row_type, error,
      "WHERE type_id IN (SELECT id FROM adapter_types WHERE $1 = 'both' OR side = $1) ORDER BY id",
      unsoot_text (sides));
  g_autoptr (GPtrArray) fits = rows != NULL ? fits_for (db, vehicle, rows, error) : NULL;

  if (fits == NULL || !ask_about (db, &asked, error))
    return NULL;
  g_autofree char *day = asked.day;
  for (guint i = 0; i < fits->len; i++)
    {
      const UnsootFit *fit = fits->pdata[i];
      UnsootAdapterFit *with = fit_with_items (db, fit->type_id, fit->reason, &asked, error);
      if (with == NULL)
        return NULL;
      g_ptr_array_add (result, with);
    }
  g_ptr_array_sort (result, by_side_and_code);
  return g_steal_pointer (&result);
}
