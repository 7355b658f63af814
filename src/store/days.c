/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "days.h"

#include <math.h>

#include "bookings.h"
#include "civil.h"
#include "hands.h"
#include "run-rows.h"
#include "shops.h"
#include "vehicles.h"

void
unsoot_day_block_free (UnsootDayBlock *block)
{
  if (block == NULL)
    return;
  g_free (block->status);
  g_free (block->title);
  g_free (block->plate);
  g_free (block->engine);
  g_free (block->customer);
  g_free (block->machine);
  g_free (block->technician);
  g_free (block->sides);
  g_free (block);
}

void
unsoot_day_free (UnsootDay *day)
{
  if (day == NULL)
    return;
  g_free (day->date);
  g_free (day->shut_reason);
  g_clear_pointer (&day->bays, g_ptr_array_unref);
  g_clear_pointer (&day->blocks, g_ptr_array_unref);
  g_clear_pointer (&day->hands, g_ptr_array_unref);
  g_free (day);
}

static const char blocks_sql[]
    = "SELECT b.id, j.id, j.number, COALESCE (b.bay_id, 0), b.starts_at, b.ends_at, j.status,"
      " c.name, m.name, t.name, s.sides, j.vehicle_id FROM bookings b JOIN jobs j ON j.id = b.job_id"
      " JOIN customers c ON c.id = j.customer_id JOIN services s ON s.id = j.service_id"
      " LEFT JOIN machines m ON m.id = b.machine_id LEFT JOIN staff t ON t.id = b.technician_id"
      " WHERE b.starts_at < $2 AND b.ends_at > $1 AND b.state <> 'dropped'"
      " ORDER BY b.starts_at, b.id";

static gboolean
set_progress (UnsootDb *db, UnsootDayBlock *block, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootRunRow) row = unsoot_job_run_of (db, block->job_id, &failed);

  block->progress = (double) NAN;
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (row == NULL)
    return TRUE;
  if (g_strcmp0 (row->outcome, "finished") == 0)
    {
      block->progress = 1.0;
      return TRUE;
    }
  g_autoptr (UnsootRun) run = unsoot_job_run_load (db, row->id, error);
  if (run == NULL)
    return FALSE;
  block->progress = unsoot_job_run_progress (run);
  block->halted = unsoot_run_state (run) == UNSOOT_RUN_STATE_HALTED;
  return TRUE;
}

static gboolean
set_vehicle (UnsootDb *db, UnsootDayBlock *block, gint64 vehicle_id, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, vehicle_id, error);

  if (vehicle == NULL)
    return FALSE;
  block->title = unsoot_hand_vehicle (vehicle);
  block->plate = g_strdup (vehicle->plate);
  block->engine = g_strdup (vehicle->engine);
  return TRUE;
}

static UnsootDayBlock *
read_block (UnsootQuery *row)
{
  UnsootDayBlock *block = g_new0 (UnsootDayBlock, 1);

  block->booking_id = unsoot_query_get_int (row, 0);
  block->job_id = unsoot_query_get_int (row, 1);
  block->job_number = unsoot_query_get_int (row, 2);
  block->bay_id = unsoot_query_get_int (row, 3);
  block->starts_at = unsoot_query_get_int (row, 4);
  block->ends_at = unsoot_query_get_int (row, 5);
  block->status = unsoot_query_dup_text (row, 6);
  block->customer = unsoot_query_dup_text (row, 7);
  block->machine = unsoot_query_dup_text (row, 8);
  block->technician = unsoot_query_dup_text (row, 9);
  block->sides = unsoot_query_dup_text (row, 10);
  return block;
}

static gboolean
load_blocks (UnsootDb *db, UnsootDay *day, GError **error)
{
  g_autoptr (UnsootQuery) row = unsoot_db_query (db, error, blocks_sql, unsoot_int (day->starts_at),
                                                 unsoot_int (day->ends_at));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (row != NULL && (step = unsoot_query_step (row, error)) == UNSOOT_STEP_ROW)
    {
      UnsootDayBlock *block = read_block (row);
      g_ptr_array_add (day->blocks, block);
      if (!set_vehicle (db, block, unsoot_query_get_int (row, 11), error)
          || !set_progress (db, block, error))
        return FALSE;
    }
  return step == UNSOOT_STEP_DONE;
}

/* From the first opening to the last closing; breaks between are not drawn. */
static void
set_hours (UnsootDay *day, const UnsootShopRow *shop, GPtrArray *hours, int number)
{
  for (guint i = 0; i < hours->len; i++)
    {
      const UnsootOpenHoursRow *row = hours->pdata[i];
      if (row->weekday != unsoot_day_weekday (number))
        continue;
      gint64 opens = unsoot_shop_instant (shop, number, (int) row->opens_minute);
      gint64 closes = unsoot_shop_instant (shop, number, (int) row->closes_minute);
      day->opens_at = day->opens_at == 0 ? opens : MIN (day->opens_at, opens);
      day->closes_at = MAX (day->closes_at, closes);
    }
}

static gboolean
load_hours (UnsootDb *db, UnsootDay *day, const UnsootShopRow *shop, int number, GError **error)
{
  g_autoptr (GPtrArray) hours = unsoot_open_hours_list (db, error);
  g_autoptr (GPtrArray) holidays = hours != NULL ? unsoot_holiday_list (db, error) : NULL;

  if (holidays == NULL)
    return FALSE;
  for (guint i = 0; i < holidays->len; i++)
    {
      const UnsootHolidayRow *holiday = holidays->pdata[i];
      if (g_strcmp0 (holiday->day, day->date) == 0 && day->shut_reason == NULL)
        day->shut_reason = g_strdup (holiday->name);
    }
  if (day->shut_reason == NULL)
    set_hours (day, shop, hours, number);
  return TRUE;
}

static int
worst_first (gconstpointer a, gconstpointer b)
{
  const UnsootHand *left = *(UnsootHand *const *) a;
  const UnsootHand *right = *(UnsootHand *const *) b;

  if (left->kind != right->kind)
    return left->kind < right->kind ? -1 : 1;
  if (left->urgency != right->urgency)
    return left->urgency > right->urgency ? -1 : 1;
  return left->target_id < right->target_id ? -1 : left->target_id > right->target_id;
}

static gboolean
load_hands (UnsootDb *db, UnsootDay *day, const UnsootShopRow *shop, gint64 now, GError **error)
{
  g_autofree char *date = unsoot_shop_date (shop, now);
  UnsootHandRound round = { db, shop, now, unsoot_hand_day (date), date, day->hands };

  if (!unsoot_hands_setup (&round, error) || !unsoot_hands_runs (&round, error)
      || !unsoot_hands_jobs (&round, error) || !unsoot_hands_fluids (&round, error)
      || !unsoot_hands_equipment (&round, error) || !unsoot_hands_customers (&round, error)
      || !unsoot_hands_calls (&round, error))
    return FALSE;
  g_ptr_array_sort (day->hands, worst_first);
  return TRUE;
}

static UnsootDay *
new_day (const UnsootShopRow *shop, const char *date, gint64 now)
{
  UnsootDay *day = g_new0 (UnsootDay, 1);

  day->date = date != NULL ? g_strdup (date) : unsoot_shop_date (shop, now);
  day->blocks = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_day_block_free);
  day->hands = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_hand_free);
  return day;
}

static gboolean
load (UnsootDb *db, UnsootDay *day, const UnsootShopRow *shop, gint64 now, GError **error)
{
  int number;

  if (!unsoot_day_parse (day->date, &number, error)
      || !unsoot_shop_day_start (shop, day->date, &day->starts_at, error))
    return FALSE;
  /* Not 24 hours later: twice a year a day is shorter or longer. */
  g_autofree char *next = unsoot_day_iso (number + 1);
  day->utc_offset_minutes = unsoot_shop_utc_offset (shop, now);
  day->bays = unsoot_rows_list (db, &unsoot_bay_row_type, error,
                                "WHERE active = 1 ORDER BY position, id");
  return day->bays != NULL && unsoot_shop_day_start (shop, next, &day->ends_at, error)
         && load_hours (db, day, shop, number, error) && load_blocks (db, day, error)
         && load_hands (db, day, shop, now, error);
}

UnsootDay *
unsoot_day_load (UnsootDb *db, const char *date, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  if (shop == NULL)
    return NULL;

  g_autoptr (UnsootDay) day = new_day (shop, date, now);
  return load (db, day, shop, now, error) ? g_steal_pointer (&day) : NULL;
}
