/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-layout.h"

#include <math.h>

enum
{
  EDGE = 8,            /* pixels at either end that stretch instead of moving */
  ROOM_FOR_EDGES = 36, /* a narrower block is only moved */
  DAY = 86400
};

gint64
unsoot_planner_time_at (const UnsootStripScale *scale, double x)
{
  const double share = (x - scale->left) / (scale->width - scale->left);

  return scale->from + llround (CLAMP (share, 0.0, 1.0) * (double) (scale->to - scale->from));
}

int
unsoot_planner_lane_at (const UnsootStripScale *scale, int n_lanes, double y)
{
  const int lane
      = (int) floor ((y - scale->top + scale->gap / 2) / (scale->lane_height + scale->gap));

  return n_lanes > 0 ? CLAMP (lane, 0, n_lanes - 1) : -1;
}

static UnsootGrip
grip_at (const UnsootStripRect *rect, double x)
{
  if (rect->width < ROOM_FOR_EDGES)
    return UNSOOT_GRIP_BODY;
  if (x < rect->x + EDGE)
    return UNSOOT_GRIP_START;
  return x >= rect->x + rect->width - EDGE ? UNSOOT_GRIP_END : UNSOOT_GRIP_BODY;
}

UnsootGrip
unsoot_planner_hit (const UnsootStripRect *rects, gsize n, double x, double y, guint *block)
{
  for (gsize i = 0; i < n; i++)
    if (x >= rects[i].x && x < rects[i].x + rects[i].width && y >= rects[i].y
        && y < rects[i].y + rects[i].height)
      {
        *block = (guint) i;
        return grip_at (&rects[i], x);
      }
  return UNSOOT_GRIP_NONE;
}

gint64
unsoot_planner_snap (gint64 at, gint64 midnight)
{
  const double steps = (double) (at - midnight) / UNSOOT_PLANNER_STEP;

  return midnight + (gint64) round (steps) * UNSOOT_PLANNER_STEP;
}

UnsootStripSpan
unsoot_planner_pull (UnsootStripSpan span, UnsootGrip grip, gint64 seconds, int lane,
                     gint64 midnight)
{
  const gint64 length = span.to - span.from;

  switch (grip)
    {
    case UNSOOT_GRIP_NONE:
      break;
    case UNSOOT_GRIP_BODY:
      span.from = unsoot_planner_snap (span.from + seconds, midnight);
      span.from = CLAMP (span.from, midnight, MAX (midnight, midnight + DAY - length));
      span.to = span.from + length;
      span.lane = lane;
      break;
    case UNSOOT_GRIP_START:
      span.from = unsoot_planner_snap (span.from + seconds, midnight);
      span.from = CLAMP (span.from, midnight, MAX (midnight, span.to - UNSOOT_PLANNER_STEP));
      break;
    case UNSOOT_GRIP_END:
      span.to = unsoot_planner_snap (span.to + seconds, midnight);
      span.to = CLAMP (span.to, span.from + UNSOOT_PLANNER_STEP,
                       MAX (midnight + DAY, span.from + UNSOOT_PLANNER_STEP));
      break;
    }
  return span;
}
