/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lot-shelf.h"

#include <glib/gi18n-lib.h>

#include "run-postings.h"

static const char on_hand_sql[]
    = "SELECT l.id, COALESCE (sum (m.ml), 0),"
      " (SELECT count (*) FROM containers c WHERE c.lot_id = l.id AND c.empty = 0"
      "  AND c.opened_on IS NOT NULL),"
      " (SELECT min (c.use_by) FROM containers c WHERE c.lot_id = l.id AND c.empty = 0"
      "  AND c.opened_on IS NOT NULL)"
      " FROM lots l LEFT JOIN stock_moves m ON m.lot_id = l.id WHERE l.fluid_id = $1"
      " GROUP BY l.id, l.expires_on"
      " ORDER BY CASE WHEN COALESCE (sum (m.ml), 0) > 0 THEN 0 ELSE 1 END,"
      " l.expires_on NULLS LAST, l.id";

void
unsoot_lot_shelf_free (UnsootLotShelf *shelf)
{
  if (shelf == NULL)
    return;
  g_clear_pointer (&shelf->stocks, g_ptr_array_unref);
  g_clear_pointer (&shelf->lots, g_array_unref);
  g_free (shelf);
}

static UnsootStockLot
as_trade (const UnsootLotStock *stock)
{
  return (UnsootStockLot){
    .id = stock->lot->id,
    .label = stock->lot->code,
    .on_hand = stock->on_hand_ml,
    .expires = stock->lot->expires_on,
    .opened = stock->opened,
    .opened_until = stock->opened_until,
    .held = stock->lot->stop_reason != NULL,
  };
}

static char *
why_not (const UnsootLotStock *stock, const UnsootStockLot *lot)
{
  if (lot->held)
    return g_strdup_printf (_ ("Lot %s is not to be used: %s."), lot->label,
                            stock->lot->stop_reason);
  if (lot->on_hand <= 0)
    return g_strdup_printf (_ ("Lot %s is used up."), lot->label);
  return g_strdup_printf (_ ("Lot %s was good until %s. Take another one."), lot->label,
                          unsoot_stock_last_day (lot));
}

static gboolean
read_stocks (UnsootDb *db, gint64 fluid_id, GPtrArray *stocks, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (db, error, on_hand_sql, unsoot_int (fluid_id));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootLotStock *stock = g_new0 (UnsootLotStock, 1);
      g_ptr_array_add (stocks, stock);
      stock->lot = unsoot_lot_load (db, unsoot_query_get_int (query, 0), error);
      if (stock->lot == NULL)
        return FALSE;
      stock->on_hand_ml = unsoot_query_get_int (query, 1);
      stock->left_ml = stock->on_hand_ml;
      if (stock->on_hand_ml > 0
          && !unsoot_run_lot_left (db, stock->lot->id, &stock->left_ml, error))
        return FALSE;
      stock->opened = unsoot_query_get_int (query, 2) > 0;
      stock->opened_until = unsoot_query_dup_text (query, 3);
    }
  return step == UNSOOT_STEP_DONE;
}

UnsootLotShelf *
unsoot_lot_shelf_load (UnsootDb *db, gint64 fluid_id, const char *today, GError **error)
{
  g_autoptr (UnsootLotShelf) shelf = g_new0 (UnsootLotShelf, 1);

  shelf->stocks = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_lot_stock_free);
  shelf->lots = g_array_new (FALSE, FALSE, sizeof (UnsootStockLot));
  if (!read_stocks (db, fluid_id, shelf->stocks, error))
    return NULL;
  for (guint i = 0; i < shelf->stocks->len; i++)
    {
      UnsootLotStock *stock = shelf->stocks->pdata[i];
      UnsootStockLot lot = as_trade (stock);
      stock->usable = unsoot_stock_usable (&lot, today);
      if (!stock->usable)
        stock->why_not = why_not (stock, &lot);
      g_array_append_val (shelf->lots, lot);
    }
  return g_steal_pointer (&shelf);
}
