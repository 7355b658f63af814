/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stocks.h"

#include <math.h>

#include "deed.h"
#include "fluids.h"
#include "lot-shelf.h"
#include "shops.h"
#include "supply-orders.h"

/* Use is averaged over twelve weeks. Common practice, no source. */
#define USE_DAYS 84
#define DAY_SECONDS 86400

/* A litre's thousandths are millilitres, so a line's quantity is its volume. */
static const char promised_sql[]
    = "SELECT COALESCE (sum (l.quantity_milli), 0) FROM job_lines l JOIN jobs j ON j.id = l.job_id"
      " WHERE l.fluid_id = $1 AND l.kind = 'fluid' AND l.unit = 'L' AND l.state <> 'declined'"
      " AND j.status IN ('booked', 'arrived', 'in-bay')"
      " AND NOT EXISTS (SELECT 1 FROM stock_moves m JOIN lots t ON t.id = m.lot_id"
      "  WHERE m.job_id = j.id AND m.kind = 'use' AND t.fluid_id = l.fluid_id)";

static const char used_sql[]
    = "SELECT COALESCE (-sum (m.ml), 0) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      " WHERE l.fluid_id = $1 AND m.kind = 'use' AND m.at > $2 AND m.at <= $3";

void
unsoot_fluid_stock_free (UnsootFluidStock *stock)
{
  if (stock == NULL)
    return;
  g_free (stock->code);
  g_free (stock->name);
  g_free (stock->side);
  g_free (stock->next_expiry);
  g_free (stock);
}

static void
set_state (UnsootFluidStock *stock, const UnsootLotShelf *shelf, const char *today)
{
  const UnsootStockLot *lots = (const UnsootStockLot *) (gconstpointer) shelf->lots->data;
  UnsootStockState state
      = unsoot_stock_state (lots, shelf->lots->len, today, stock->promised_ml, stock->daily_ml);

  stock->on_hand_ml = state.on_hand;
  stock->unusable_ml = state.on_hand - state.usable;
  stock->free_ml = state.free;
  stock->days_left = state.has_days_left ? state.days_left : (double) NAN;
  for (guint i = 0; i < shelf->lots->len && stock->next_expiry == NULL; i++)
    if (unsoot_stock_usable (&lots[i], today))
      stock->next_expiry = g_strdup (unsoot_stock_last_day (&lots[i]));
}

static UnsootFluidStock *
stock_of (UnsootDb *db, const UnsootFluidRow *fluid, const char *today, gint64 now, GError **error)
{
  g_autoptr (UnsootFluidStock) stock = g_new0 (UnsootFluidStock, 1);
  g_autoptr (UnsootLotShelf) shelf = unsoot_lot_shelf_load (db, fluid->id, today, error);
  g_autoptr (GPtrArray) orders
      = shelf != NULL ? unsoot_supply_orders_open (db, fluid->id, error) : NULL;
  gint64 used = 0;

  if (orders == NULL
      || !unsoot_db_int (db, &stock->promised_ml, error, promised_sql, unsoot_int (fluid->id))
      || !unsoot_db_int (db, &used, error, used_sql, unsoot_int (fluid->id),
                         unsoot_int (now - (gint64) USE_DAYS * DAY_SECONDS), unsoot_int (now)))
    return NULL;
  stock->fluid_id = fluid->id;
  stock->code = g_strdup (fluid->code);
  stock->name = g_strdup (fluid->name);
  stock->side = g_strdup (fluid->side);
  stock->daily_ml = (double) used / USE_DAYS;
  stock->on_order_ml = unsoot_supply_orders_ml (orders);
  set_state (stock, shelf, today);
  return g_steal_pointer (&stock);
}

UnsootFluidStock *
unsoot_fluid_stock (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (UnsootFluidRow) fluid = shop != NULL ? unsoot_fluid_load (db, fluid_id, error) : NULL;
  if (fluid == NULL)
    return NULL;

  g_autofree char *today = unsoot_shop_date (shop, now);
  return stock_of (db, fluid, today, now, error);
}

GPtrArray *
unsoot_fluid_stock_list (UnsootDb *db, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) stocks
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_fluid_stock_free);
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (GPtrArray) fluids = shop != NULL ? unsoot_fluid_list (db, error) : NULL;
  if (fluids == NULL)
    return NULL;

  g_autofree char *today = unsoot_shop_date (shop, now);
  for (guint i = 0; i < fluids->len; i++)
    {
      const UnsootFluidRow *fluid = fluids->pdata[i];
      UnsootFluidStock *stock = fluid->active ? stock_of (db, fluid, today, now, error) : NULL;
      if (fluid->active && stock == NULL)
        return NULL;
      if (stock != NULL)
        g_ptr_array_add (stocks, stock);
    }
  return g_steal_pointer (&stocks);
}
