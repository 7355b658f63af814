/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-supply.h"

#include <math.h>

#include "attention.h"
#include "deed.h"
#include "fluid-needs.h"
#include "fluids.h"
#include "lot-shelf.h"
#include "shops.h"

enum
{
  WEEKS = 12, /* as the mean use is taken over */
  WEEK_SECONDS = 7 * 86400
};

void
unsoot_fluid_supply_free (UnsootFluidSupply *supply)
{
  if (supply == NULL)
    return;
  unsoot_fluid_row_free (supply->fluid);
  unsoot_fluid_stock_free (supply->stock);
  unsoot_supplier_row_free (supply->supplier);
  g_clear_pointer (&supply->packs, g_ptr_array_unref);
  g_clear_pointer (&supply->needs, g_ptr_array_unref);
  g_clear_pointer (&supply->orders, g_ptr_array_unref);
  g_free (supply);
}

static gboolean
read_weeks (UnsootDb *db, gint64 fluid_id, gint64 now, gint64 *weeks, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, error,
      "SELECT m.at, -m.ml FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      " WHERE l.fluid_id = $1 AND m.kind = 'use' AND m.at > $2 AND m.at <= $3 ORDER BY m.id",
      unsoot_int (fluid_id), unsoot_int (now - (gint64) WEEKS * WEEK_SECONDS), unsoot_int (now));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    weeks[(now - unsoot_query_get_int (query, 0)) / WEEK_SECONDS]
        += unsoot_query_get_int (query, 1);
  return step == UNSOOT_STEP_DONE;
}

static gboolean
load_supplier (UnsootDb *db, UnsootFluidSupply *supply, GError **error)
{
  if (supply->fluid->supplier_id == 0)
    return TRUE;
  supply->supplier
      = unsoot_rows_get (db, &unsoot_supplier_row_type, supply->fluid->supplier_id, error);
  return supply->supplier != NULL;
}

static void
suggest (UnsootFluidSupply *supply)
{
  const UnsootSupplierRow *from = supply->supplier;
  g_autoptr (GArray) packs = g_array_new (FALSE, TRUE, sizeof (UnsootPack));

  if (from == NULL || isnan (from->lead_days) || from->lead_days <= 0)
    return;
  supply->reorder.lead = from->lead_days;
  supply->reorder.lead_sd = isnan (from->lead_days_spread) ? 0 : from->lead_days_spread;
  supply->reorder.service = supply->fluid->service_level;
  supply->has_point = unsoot_supply_suggest (&supply->reorder, supply->stock->free_ml,
                                             supply->stock->on_order_ml, &supply->suggestion, NULL);
  for (guint i = 0; i < supply->packs->len; i++)
    {
      const UnsootPackRow *row = g_ptr_array_index (supply->packs, i);
      const UnsootPack pack = { row->ml, row->cost_minor };
      g_array_append_val (packs, pack);
    }
  supply->has_order
      = supply->has_point
        && unsoot_pack_order ((const UnsootPack *) (gconstpointer) packs->data, packs->len,
                              MAX (supply->suggestion.wanted_ml, 0), &supply->order);
}

static void
take_needs (UnsootFluidSupply *supply, GPtrArray *needs)
{
  supply->needs = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_fluid_need_free);
  for (guint i = 0; i < needs->len; i++)
    {
      UnsootFluidNeed *need = needs->pdata[i];
      if (need == NULL || need->fluid_id != supply->fluid->id)
        continue;
      supply->short_ml += need->short_ml;
      g_ptr_array_add (supply->needs, need);
      needs->pdata[i] = NULL;
    }
}

/* Takes @fluid, and its own out of @needs. */
static UnsootFluidSupply *
supply_of (UnsootDb *db, UnsootFluidRow *fluid, GPtrArray *needs, const char *today, gint64 now,
           GError **error)
{
  g_autoptr (UnsootFluidSupply) supply = g_new0 (UnsootFluidSupply, 1);
  g_autoptr (UnsootLotShelf) shelf = unsoot_lot_shelf_load (db, fluid->id, today, error);
  gint64 weeks[WEEKS] = { 0 };

  supply->fluid = fluid;
  take_needs (supply, needs);
  supply->stock = unsoot_fluid_stock (db, fluid->id, now, error);
  supply->packs = supply->stock != NULL ? unsoot_fluid_packs (db, fluid->id, error) : NULL;
  supply->orders = supply->packs != NULL ? unsoot_supply_orders_open (db, fluid->id, error) : NULL;
  if (shelf == NULL || supply->orders == NULL || !read_weeks (db, fluid->id, now, weeks, error)
      || !load_supplier (db, supply, error))
    return NULL;
  unsoot_demand_of_weeks (weeks, WEEKS, &supply->reorder.demand, &supply->reorder.demand_sd);
  suggest (supply);
  supply->going_off_ml = unsoot_supply_going_off (
      (const UnsootStockLot *) (gconstpointer) shelf->lots->data, shelf->lots->len, today,
      supply->reorder.demand, UNSOOT_ATTENTION_LOT);
  supply->state = unsoot_supply (
      supply->short_ml, supply->stock->free_ml, supply->stock->on_order_ml,
      supply->has_point ? supply->suggestion.point : (double) NAN, supply->going_off_ml);
  return g_steal_pointer (&supply);
}

/* Lets go of the needs that no fluid took. */
static void
needs_free (GPtrArray *needs)
{
  for (guint i = 0; i < needs->len; i++)
    if (needs->pdata[i] != NULL)
      unsoot_fluid_need_free (needs->pdata[i]);
  g_ptr_array_unref (needs);
}

static GPtrArray *
load_needs (UnsootDb *db, gint64 now, char **today, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  GPtrArray *needs = shop != NULL ? unsoot_fluid_needs (db, shop, now, 0, 0, error) : NULL;

  if (needs == NULL)
    return NULL;
  g_ptr_array_set_free_func (needs, NULL);
  *today = unsoot_shop_date (shop, now);
  return needs;
}

UnsootFluidSupply *
unsoot_fluid_supply (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error)
{
  g_autofree char *today = NULL;
  UnsootFluidRow *fluid = unsoot_fluid_load (db, fluid_id, error);
  GPtrArray *needs = fluid != NULL ? load_needs (db, now, &today, error) : NULL;
  UnsootFluidSupply *supply;

  if (needs == NULL)
    {
      unsoot_fluid_row_free (fluid);
      return NULL;
    }
  supply = supply_of (db, fluid, needs, today, now, error);
  needs_free (needs);
  return supply;
}

static gboolean
is_needed (const GPtrArray *needs, gint64 fluid_id)
{
  for (guint i = 0; i < needs->len; i++)
    {
      const UnsootFluidNeed *need = needs->pdata[i];
      if (need != NULL && need->fluid_id == fluid_id)
        return TRUE;
    }
  return FALSE;
}

GPtrArray *
unsoot_fluid_supply_list (UnsootDb *db, gint64 now, GError **error)
{
  g_autofree char *today = NULL;
  g_autoptr (GPtrArray) list
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_fluid_supply_free);
  g_autoptr (GPtrArray) fluids = unsoot_fluid_list (db, error);
  GPtrArray *needs = fluids != NULL ? load_needs (db, now, &today, error) : NULL;
  gboolean whole = needs != NULL;

  for (guint i = 0; whole && i < fluids->len; i++)
    {
      const UnsootFluidRow *fluid = fluids->pdata[i];
      UnsootFluidSupply *supply;

      if (!fluid->active && !is_needed (needs, fluid->id))
        continue;
      supply = supply_of (db, unsoot_record_copy (&unsoot_fluid_row_type, fluid), needs, today, now,
                          error);
      whole = supply != NULL;
      if (whole)
        g_ptr_array_add (list, supply);
    }
  g_clear_pointer (&needs, needs_free);
  return whole ? g_steal_pointer (&list) : NULL;
}
