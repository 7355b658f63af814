/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-moves.h"

#include "fluid-needs.h"
#include "jobs.h"
#include "shops.h"
#include "vehicles.h"

static const char moves_sql[]
    = "SELECT m.id, m.lot_id, m.container_id, m.job_id, m.kind, m.ml, m.reason, m.at, m.staff_id,"
      " m.reverses_id, l.code, s.initials, j.number,"
      " (SELECT count (*) FROM stock_moves r WHERE r.reverses_id = m.id)"
      " FROM stock_moves m JOIN lots l ON l.id = m.lot_id LEFT JOIN staff s ON s.id = m.staff_id"
      " LEFT JOIN jobs j ON j.id = m.job_id"
      " WHERE l.fluid_id = $1 AND ($2 = 0 OR m.lot_id = $2) AND m.at >= $3 ORDER BY m.at, m.id";

static const char before_sql[]
    = "SELECT COALESCE (sum (m.ml), 0) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
      " WHERE l.fluid_id = $1 AND ($2 = 0 OR m.lot_id = $2) AND m.at < $3";

/* A correction bears its job too, so that what was taken back no longer counts. */
static const char uses_sql[]
    = "SELECT j.id, j.number, j.vehicle_id, max (m.at), -sum (m.ml),"
      " (SELECT COALESCE (sum (d.quantity_milli), 0) FROM job_lines d WHERE d.job_id = j.id"
      "  AND d.fluid_id = $1 AND d.kind = 'fluid' AND d.unit = 'L' AND d.state <> 'declined')"
      " FROM stock_moves m JOIN lots l ON l.id = m.lot_id JOIN jobs j ON j.id = m.job_id"
      " WHERE l.fluid_id = $1 GROUP BY j.id, j.number, j.vehicle_id"
      " ORDER BY max (m.at) DESC, j.id DESC LIMIT $2";

void
unsoot_move_line_free (UnsootMoveLine *line)
{
  if (line == NULL)
    return;
  unsoot_stock_move_row_free (line->move);
  g_free (line->lot);
  g_free (line->staff);
  g_free (line);
}

void
unsoot_fluid_use_free (UnsootFluidUse *use)
{
  if (use == NULL)
    return;
  g_free (use->vehicle);
  g_free (use);
}

void
unsoot_short_job_free (UnsootShortJob *line)
{
  if (line == NULL)
    return;
  g_free (line->fluid);
  g_free (line->side);
  g_free (line->vehicle);
  g_free (line);
}

static UnsootMoveLine *
read_line (UnsootQuery *query)
{
  UnsootMoveLine *line = g_new0 (UnsootMoveLine, 1);
  UnsootStockMoveRow *move = unsoot_stock_move_row_new ();

  move->id = unsoot_query_get_int (query, 0);
  move->lot_id = unsoot_query_get_int (query, 1);
  move->container_id = unsoot_query_get_int (query, 2);
  move->job_id = unsoot_query_get_int (query, 3);
  move->kind = unsoot_query_dup_text (query, 4);
  move->ml = unsoot_query_get_int (query, 5);
  move->reason = unsoot_query_dup_text (query, 6);
  move->at = unsoot_query_get_int (query, 7);
  move->staff_id = unsoot_query_get_int (query, 8);
  move->reverses_id = unsoot_query_get_int (query, 9);
  line->move = move;
  line->lot = unsoot_query_dup_text (query, 10);
  line->staff = unsoot_query_dup_text (query, 11);
  line->job_number = unsoot_query_get_int (query, 12);
  line->taken_back = unsoot_query_get_int (query, 13) > 0;
  return line;
}

GPtrArray *
unsoot_move_lines (UnsootDb *db, gint64 fluid_id, gint64 lot_id, gint64 from, gint64 *before_ml,
                   GError **error)
{
  g_autoptr (GPtrArray) lines
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_move_line_free);
  g_autoptr (UnsootQuery) query = unsoot_db_query (db, error, moves_sql, unsoot_int (fluid_id),
                                                   unsoot_int (lot_id), unsoot_int (from));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    g_ptr_array_add (lines, read_line (query));
  if (step != UNSOOT_STEP_DONE
      || (before_ml != NULL
          && !unsoot_db_int (db, before_ml, error, before_sql, unsoot_int (fluid_id),
                             unsoot_int (lot_id), unsoot_int (from))))
    return NULL;
  return g_steal_pointer (&lines);
}

static char *
vehicle_title (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, id, error);

  return vehicle != NULL ? unsoot_vehicle_title (vehicle) : NULL;
}

GPtrArray *
unsoot_fluid_uses (UnsootDb *db, gint64 fluid_id, guint limit, GError **error)
{
  g_autoptr (GPtrArray) uses
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_fluid_use_free);
  g_autoptr (UnsootQuery) query
      = unsoot_db_query (db, error, uses_sql, unsoot_int (fluid_id), unsoot_int (limit));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootFluidUse *use = g_new0 (UnsootFluidUse, 1);
      g_ptr_array_add (uses, use);
      use->job_id = unsoot_query_get_int (query, 0);
      use->job_number = unsoot_query_get_int (query, 1);
      use->vehicle = vehicle_title (db, unsoot_query_get_int (query, 2), error);
      use->at = unsoot_query_get_int (query, 3);
      use->used_ml = unsoot_query_get_int (query, 4);
      use->dose_ml = unsoot_query_get_int (query, 5);
      if (use->vehicle == NULL)
        return NULL;
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&uses) : NULL;
}

static UnsootShortJob *
short_job (UnsootDb *db, const UnsootFluidNeed *need, GError **error)
{
  g_autoptr (UnsootShortJob) line = g_new0 (UnsootShortJob, 1);
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, need->job_id, error);

  line->vehicle = job != NULL ? vehicle_title (db, job->vehicle_id, error) : NULL;
  if (line->vehicle == NULL)
    return NULL;
  line->fluid_id = need->fluid_id;
  line->fluid = g_strdup (need->fluid);
  line->side = g_strdup (need->side);
  line->job_id = job->id;
  line->job_number = job->number;
  line->starts_at = need->starts_at;
  line->dose_ml = need->ml;
  line->short_ml = need->short_ml;
  return g_steal_pointer (&line);
}

static int
by_start (gconstpointer a, gconstpointer b)
{
  const UnsootShortJob *left = *(UnsootShortJob *const *) a;
  const UnsootShortJob *right = *(UnsootShortJob *const *) b;

  return left->starts_at < right->starts_at ? -1 : left->starts_at > right->starts_at;
}

GPtrArray *
unsoot_short_jobs (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) lines
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_short_job_free);
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (GPtrArray) needs
      = shop != NULL ? unsoot_fluid_needs (db, shop, now, 0, 0, error) : NULL;

  for (guint i = 0; needs != NULL && i < needs->len; i++)
    {
      const UnsootFluidNeed *need = needs->pdata[i];
      UnsootShortJob *line;

      if (need->short_ml <= 0 || (fluid_id != 0 && need->fluid_id != fluid_id))
        continue;
      line = short_job (db, need, error);
      if (line == NULL)
        return NULL;
      g_ptr_array_add (lines, line);
    }
  g_ptr_array_sort (lines, by_start);
  return needs != NULL ? g_steal_pointer (&lines) : NULL;
}
