/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "format.h"
#include "path.h"

char *
unsoot_planner_hours_words (const UnsootDay *day, GTimeZone *zone)
{
  g_autofree char *from = unsoot_format_clock (day->opens_at, zone);
  g_autofree char *to = unsoot_format_clock (day->closes_at, zone);

  if (day->opens_at != 0)
    /* Translators: the shop's hours of a day */
    return g_strdup_printf (_ ("open %s–%s"), from, to);
  if (day->shut_reason != NULL)
    return g_strdup_printf (_ ("shut: %s"), day->shut_reason);
  return g_strdup (_ ("shut on this day"));
}

char *
unsoot_planner_block_name (const UnsootDayBlock *block, const char *lane, GTimeZone *zone)
{
  g_autofree char *from = unsoot_format_clock (block->starts_at, zone);
  g_autofree char *to = unsoot_format_clock (block->ends_at, zone);
  UnsootJobStatus status = UNSOOT_JOB_BOOKED;

  unsoot_job_status_find (block->status, &status);
  /* Translators: a booking on the planner: its lane, job number, vehicle, customer, from and to,
     where the job stands */
  return g_strdup_printf (_ ("%s, job %d, %s, %s, %s to %s, %s"), lane, (int) block->job_number,
                          block->title, block->customer, from, to,
                          unsoot_job_status_words (status));
}

static UnsootStripState
state_of (const UnsootDayBlock *block, UnsootJobStatus status)
{
  switch (status)
    {
    case UNSOOT_JOB_QUOTED:
    case UNSOOT_JOB_BOOKED:
    case UNSOOT_JOB_DECLINED:
    case UNSOOT_JOB_CANCELLED:
      return UNSOOT_STRIP_PLANNED;
    case UNSOOT_JOB_ARRIVED:
      return UNSOOT_STRIP_HERE;
    case UNSOOT_JOB_IN_BAY:
      return block->halted ? UNSOOT_STRIP_STOPPED : UNSOOT_STRIP_RUNNING;
    case UNSOOT_JOB_STOPPED:
      return UNSOOT_STRIP_STOPPED;
    case UNSOOT_JOB_DONE:
    case UNSOOT_JOB_INVOICED:
    case UNSOOT_JOB_PAID:
      return UNSOOT_STRIP_DONE;
    }
  g_return_val_if_reached (UNSOOT_STRIP_PLANNED);
}

UnsootStripItem
unsoot_planner_strip_item (const UnsootDayBlock *block, int lane, const char *name)
{
  UnsootJobStatus status = UNSOOT_JOB_BOOKED;
  gboolean under_way;

  unsoot_job_status_find (block->status, &status);
  under_way = status == UNSOOT_JOB_IN_BAY || status == UNSOOT_JOB_STOPPED;
  return (UnsootStripItem){
    .job_id = block->job_id,
    .from = block->starts_at,
    .to = block->ends_at,
    .lane = lane,
    .title = block->plate != NULL ? block->plate : block->title,
    .detail = block->plate != NULL ? block->title : block->customer,
    .sides = block->sides,
    .name = name,
    .state = state_of (block, status),
    /* A finished job is full anyway; only one under way shows how far it is. */
    .progress = under_way && !isnan (block->progress) ? block->progress : 0,
  };
}

static void
append_lane (GString *text, const UnsootPlannerLane *lane, const GArray *free, GTimeZone *zone)
{
  gboolean begun = FALSE;

  for (guint i = 0; i < free->len; i++)
    {
      const UnsootPlannerFree *time = &g_array_index (free, UnsootPlannerFree, i);
      g_autofree char *from = unsoot_format_clock (time->from, zone);
      g_autofree char *to = unsoot_format_clock (time->to, zone);

      if (time->bay_id != lane->id)
        continue;
      if (!begun)
        g_string_append_printf (text, "%s%s ", text->len > 0 ? "; " : "", lane->name);
      g_string_append_printf (text, "%s%s–%s", begun ? ", " : "", from, to);
      begun = TRUE;
    }
}

char *
unsoot_planner_free_words (const GArray *free, const GPtrArray *lanes, GTimeZone *zone)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < lanes->len; i++)
    {
      const UnsootPlannerLane *lane = g_ptr_array_index (lanes, i);
      if (lane->kind == UNSOOT_LANE_BAY)
        append_lane (text, lane, free, zone);
    }
  if (text->len == 0)
    return g_strdup (_ ("Nothing is free on this day for that service."));
  /* Translators: the bays with their free times */
  return g_strdup_printf (_ ("Free: %s."), text->str);
}
