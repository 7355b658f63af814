/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lots.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "deed.h"
#include "dose.h"
#include "fluids.h"
#include "indexing.h"
#include "lot-shelf.h"

void
unsoot_lot_stock_free (UnsootLotStock *stock)
{
  if (stock == NULL)
    return;
  unsoot_lot_row_free (stock->lot);
  g_free (stock->opened_until);
  g_free (stock->why_not);
  g_free (stock);
}

UnsootLotRow *
unsoot_lot_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_lot_row_type, id, error);
}

GPtrArray *
unsoot_lot_list (UnsootDb *db, gint64 fluid_id, const char *today, GError **error)
{
  g_autoptr (UnsootLotShelf) shelf = unsoot_lot_shelf_load (db, fluid_id, today, error);

  return shelf != NULL ? g_steal_pointer (&shelf->stocks) : NULL;
}

static UnsootLotRow *
fail_pick (UnsootDb *db, const UnsootLotShelf *shelf, gint64 fluid_id, gint64 ml, gint64 most,
           GError **error)
{
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (db, fluid_id, error);
  g_autofree char *wanted = unsoot_dose_volume_words (ml);
  g_autofree char *there = unsoot_dose_volume_words (most);

  if (fluid != NULL && shelf->stocks->len == 0)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("There is no %s: no lot was ever delivered."), fluid->name);
  else if (fluid != NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("No usable lot of %s holds %s; the fullest has %s."), fluid->name, wanted,
                      there);
  return NULL;
}

UnsootLotRow *
unsoot_lot_pick (UnsootDb *db, gint64 fluid_id, gint64 ml, const char *today, GError **error)
{
  g_autoptr (UnsootLotShelf) shelf = unsoot_lot_shelf_load (db, fluid_id, today, error);
  gint64 shortage = 0;
  gint64 most = 0;

  if (shelf == NULL)
    return NULL;
  /* Asked for everything, the trade's pick is the order in which lots are used. */
  g_autoptr (GArray) order
      = unsoot_stock_pick ((const UnsootStockLot *) (gconstpointer) shelf->lots->data,
                           shelf->lots->len, G_MAXINT64, today, &shortage);
  for (guint i = 0; i < order->len; i++)
    {
      const UnsootStockPick *pick = &g_array_index (order, UnsootStockPick, i);
      const UnsootLotStock *stock = shelf->stocks->pdata[pick->lot];
      if (stock->left_ml >= ml)
        return unsoot_record_copy (&unsoot_lot_row_type, stock->lot);
      most = MAX (most, stock->left_ml);
    }
  return fail_pick (db, shelf, fluid_id, ml, most, error);
}

gboolean
unsoot_lot_check (UnsootDb *db, gint64 lot_id, const char *side, const char *today, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, lot_id, error);
  g_autoptr (UnsootFluidRow) fluid
      = lot != NULL ? unsoot_fluid_load (db, lot->fluid_id, error) : NULL;
  g_autoptr (UnsootLotShelf) shelf
      = fluid != NULL ? unsoot_lot_shelf_load (db, fluid->id, today, error) : NULL;

  if (shelf == NULL)
    return FALSE;
  if (g_strcmp0 (fluid->side, side) != 0)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        g_strcmp0 (side, "fuel") == 0
            ? _ ("%s, lot %s, is an intake-side fluid. It never enters the fuel-side tank.")
            : _ ("%s, lot %s, is a fuel-side fluid. It never enters the intake-side tank."),
        fluid->name, lot->code);
  for (guint i = 0; i < shelf->stocks->len; i++)
    {
      const UnsootLotStock *stock = shelf->stocks->pdata[i];
      if (stock->lot->id == lot_id && !stock->usable)
        return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", stock->why_not);
    }
  return TRUE;
}

gboolean
unsoot_lot_stop (UnsootDb *db, const UnsootActing *who, gint64 lot_id, const char *reason,
                 GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_HOLD_LOT, error);
  g_autoptr (UnsootLotRow) lot = deed != NULL ? unsoot_lot_load (db, lot_id, error) : NULL;

  if (lot == NULL)
    return FALSE;
  g_free (lot->stop_reason);
  lot->stop_reason = g_strdup (reason);
  return unsoot_deed_end (&deed, unsoot_rows_update (db, &unsoot_lot_row_type, lot, who, error),
                          error);
}

GArray *
unsoot_lot_jobs (UnsootDb *db, gint64 lot_id, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, error,
      "SELECT job_id FROM (SELECT job_id FROM stock_moves WHERE lot_id = $1 AND kind = 'use'"
      " UNION SELECT job_id FROM tank_events WHERE lot_id = $1) AS used"
      " WHERE job_id IS NOT NULL ORDER BY job_id",
      unsoot_int (lot_id));
  g_autoptr (GArray) jobs = g_array_new (FALSE, FALSE, sizeof (gint64));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      gint64 job = unsoot_query_get_int (query, 0);
      g_array_append_val (jobs, job);
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&jobs) : NULL;
}

GPtrArray *
unsoot_container_list (UnsootDb *db, gint64 lot_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_container_row_type, error,
                           "WHERE lot_id = $1 AND empty = 0 ORDER BY use_by NULLS LAST, id",
                           unsoot_int (lot_id));
}

/* The earlier of the fluid's days once opened and the lot's own date; NULL for neither. */
static char *
use_by (const UnsootLotRow *lot, const UnsootFluidRow *fluid, const char *opened_on, GError **error)
{
  int day;

  if (fluid->opened_days <= 0)
    return g_strdup (lot->expires_on);
  if (!unsoot_day_parse (opened_on, &day, error))
    return NULL;
  g_autofree char *by = unsoot_day_iso (day + (int) fluid->opened_days);
  gboolean sooner = lot->expires_on == NULL || g_strcmp0 (by, lot->expires_on) < 0;
  return g_strdup (sooner ? by : lot->expires_on);
}

gint64
unsoot_container_open (UnsootDb *db, const UnsootActing *who, gint64 lot_id, const char *label,
                       gint64 size_ml, const char *opened_on, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_POST_STOCK, error);
  g_autoptr (UnsootLotRow) lot = deed != NULL ? unsoot_lot_load (db, lot_id, error) : NULL;
  g_autoptr (UnsootFluidRow) fluid
      = lot != NULL ? unsoot_fluid_load (db, lot->fluid_id, error) : NULL;
  int day;

  if (fluid == NULL || !unsoot_day_parse (opened_on, &day, error))
    return 0;
  g_autoptr (UnsootContainerRow) container = unsoot_container_row_new ();
  container->lot_id = lot_id;
  container->label = g_strdup (label);
  container->size_ml = size_ml;
  container->opened_on = g_strdup (opened_on);
  container->use_by = use_by (lot, fluid, opened_on, error);
  gboolean done = unsoot_rows_insert (db, &unsoot_container_row_type, container, who, error);
  return unsoot_deed_end (&deed, done, error) ? container->id : 0;
}

gboolean
unsoot_container_emptied (UnsootDb *db, const UnsootActing *who, gint64 container_id,
                          GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_POST_STOCK, error);
  g_autoptr (UnsootContainerRow) container
      = deed != NULL ? unsoot_rows_get (db, &unsoot_container_row_type, container_id, error) : NULL;

  if (container == NULL)
    return FALSE;
  if (container->empty)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Container %s is empty already."), container->label);
  container->empty = TRUE;
  return unsoot_deed_end (
      &deed, unsoot_rows_update (db, &unsoot_container_row_type, container, who, error), error);
}
