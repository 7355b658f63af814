/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-needs.h"

#include "lot-shelf.h"
#include "shops.h"

/* $1: a job that is thought of as booked at $2, whatever its booking says. */
static const char needs_sql[]
    = "SELECT f.id, f.name, f.side, j.id,"
      " CASE WHEN j.id = $1 THEN $2 ELSE min (b.starts_at) END, sum (l.quantity_milli)"
      " FROM job_lines l JOIN jobs j ON j.id = l.job_id JOIN fluids f ON f.id = l.fluid_id"
      " LEFT JOIN bookings b ON b.job_id = j.id AND b.state = 'planned'"
      " WHERE l.kind = 'fluid' AND l.unit = 'L' AND l.state <> 'declined'"
      " AND (j.id = $1 OR (b.id IS NOT NULL AND j.status IN ('booked', 'arrived', 'in-bay')))"
      " AND NOT EXISTS (SELECT 1 FROM stock_moves m JOIN lots t ON t.id = m.lot_id"
      "  WHERE m.job_id = j.id AND m.kind = 'use' AND t.fluid_id = f.id)"
      " GROUP BY f.id, f.name, f.side, j.id ORDER BY f.id, 5, j.id";

void
unsoot_fluid_need_free (UnsootFluidNeed *need)
{
  if (need == NULL)
    return;
  g_free (need->fluid);
  g_free (need->side);
  g_free (need->day);
  g_free (need);
}

static gboolean
read_needs (UnsootDb *db, const UnsootShopRow *shop, gint64 now, gint64 job_id, gint64 starts_at,
            GPtrArray *needs, GError **error)
{
  g_autoptr (UnsootQuery) query
      = unsoot_db_query (db, error, needs_sql, unsoot_int (job_id), unsoot_int (starts_at));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootFluidNeed *need = g_new0 (UnsootFluidNeed, 1);
      need->fluid_id = unsoot_query_get_int (query, 0);
      need->fluid = unsoot_query_dup_text (query, 1);
      need->side = unsoot_query_dup_text (query, 2);
      need->job_id = unsoot_query_get_int (query, 3);
      need->starts_at = unsoot_query_get_int (query, 4);
      need->ml = unsoot_query_get_int (query, 5);
      /* What should have begun takes its fluid now. */
      need->day = unsoot_shop_date (shop, MAX (need->starts_at, now));
      g_ptr_array_add (needs, need);
    }
  return step == UNSOOT_STEP_DONE;
}

/* The needs from @first on that are of one fluid. */
static gboolean
allot (UnsootDb *db, const char *today, GPtrArray *needs, guint first, guint *past, GError **error)
{
  gint64 fluid_id = ((UnsootFluidNeed *) needs->pdata[first])->fluid_id;
  g_autoptr (UnsootLotShelf) shelf = unsoot_lot_shelf_load (db, fluid_id, today, error);
  g_autoptr (GArray) asked = g_array_new (FALSE, TRUE, sizeof (UnsootStockNeed));
  g_autoptr (GArray) lacks = g_array_new (FALSE, TRUE, sizeof (gint64));

  if (shelf == NULL)
    return FALSE;
  for (*past = first; *past < needs->len; (*past)++)
    {
      const UnsootFluidNeed *need = needs->pdata[*past];
      UnsootStockNeed dose = { need->day, need->ml };
      if (need->fluid_id != fluid_id)
        break;
      g_array_append_val (asked, dose);
    }
  g_array_set_size (lacks, asked->len);
  unsoot_stock_allot ((const UnsootStockLot *) (gconstpointer) shelf->lots->data, shelf->lots->len,
                      (const UnsootStockNeed *) (gconstpointer) asked->data, asked->len,
                      (gint64 *) (gpointer) lacks->data);
  for (guint i = 0; i < asked->len; i++)
    ((UnsootFluidNeed *) needs->pdata[first + i])->short_ml = g_array_index (lacks, gint64, i);
  return TRUE;
}

GPtrArray *
unsoot_fluid_needs (UnsootDb *db, const UnsootShopRow *shop, gint64 now, gint64 job_id,
                    gint64 starts_at, GError **error)
{
  g_autoptr (GPtrArray) needs
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_fluid_need_free);
  g_autofree char *today = unsoot_shop_date (shop, now);

  if (!read_needs (db, shop, now, job_id, starts_at, needs, error))
    return NULL;
  for (guint i = 0; i < needs->len;)
    if (!allot (db, today, needs, i, &i, error))
      return NULL;
  return g_steal_pointer (&needs);
}
