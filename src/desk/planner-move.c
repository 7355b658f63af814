/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-move.h"

#include "booking-conflicts.h"

UnsootPlannerMove *
unsoot_planner_move_new (const UnsootPlannerBooking *booking, const UnsootActing *who)
{
  UnsootPlannerMove *move = g_new0 (UnsootPlannerMove, 1);

  move->who = *who;
  move->wish.booking_id = booking->block->booking_id;
  move->wish.job_id = booking->block->job_id;
  move->wish.bay_id = booking->block->bay_id;
  move->wish.machine_id = booking->machine_id;
  move->wish.technician_id = booking->technician_id;
  move->wish.starts_at = booking->block->starts_at;
  move->wish.ends_at = booking->block->ends_at;
  return move;
}

void
unsoot_planner_move_to (UnsootPlannerMove *move, const UnsootPlannerLane *from,
                        const UnsootPlannerLane *to, const UnsootStripSpan *span)
{
  move->wish.starts_at = span->from;
  move->wish.ends_at = span->to;
  if (to->kind != from->kind)
    return;
  switch (to->kind)
    {
    case UNSOOT_LANE_BAY:
      move->wish.bay_id = to->id;
      break;
    case UNSOOT_LANE_MACHINE:
      move->wish.machine_id = to->id;
      break;
    case UNSOOT_LANE_TECHNICIAN:
      move->wish.technician_id = to->id;
      break;
    case UNSOOT_LANE_ADAPTER:
      /* Which adapter fits is not chosen by hand. */
      break;
    }
}

void
unsoot_planner_verdict_free (UnsootPlannerVerdict *verdict)
{
  g_clear_pointer (&verdict->breaks, g_ptr_array_unref);
  g_clear_pointer (&verdict->warnings, g_ptr_array_unref);
  g_free (verdict);
}

/* The wish with the adapters that the booking holds. */
static GArray *
fill_items (UnsootDb *db, UnsootPlannerMove *move, GError **error)
{
  GArray *items = unsoot_booking_items (db, move->wish.booking_id, error);

  if (items != NULL)
    {
      move->wish.items = (const gint64 *) (gconstpointer) items->data;
      move->wish.n_items = items->len;
    }
  return items;
}

gpointer
unsoot_planner_move_ask (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootPlannerMove *move = data;
  g_autoptr (GArray) items = fill_items (db, move, error);
  UnsootPlannerVerdict *verdict;

  if (items == NULL)
    return NULL;
  verdict = g_new0 (UnsootPlannerVerdict, 1);
  verdict->breaks = unsoot_booking_find_conflicts (db, &move->wish, FALSE, move->who.now, error);
  if (verdict->breaks != NULL)
    verdict->warnings = unsoot_booking_find_conflicts (db, &move->wish, TRUE, move->who.now, error);
  if (verdict->warnings == NULL)
    g_clear_pointer (&verdict, unsoot_planner_verdict_free);
  return verdict;
}

gpointer
unsoot_planner_move_do (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootPlannerMove *move = data;
  g_autoptr (GArray) items = fill_items (db, move, error);

  if (items != NULL)
    unsoot_job_book (db, &move->who, &move->wish, error);
  return NULL;
}
