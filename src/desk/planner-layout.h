/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "strip-layout.h"

/* What is taken hold of on the planner, and where it goes: pure geometry, without a widget. */

#define UNSOOT_PLANNER_STEP 900 /* seconds: bookings keep to quarters of an hour */

typedef enum
{
  UNSOOT_GRIP_NONE,
  UNSOOT_GRIP_BODY,  /* moves the whole */
  UNSOOT_GRIP_START, /* stretches from the start */
  UNSOOT_GRIP_END,
} UnsootGrip;

/* The moment at @x, within the strip. */
gint64 unsoot_planner_time_at (const UnsootStripScale *scale, double x);

/* The lane at @y, or the nearest one; -1 where there is none. */
int unsoot_planner_lane_at (const UnsootStripScale *scale, int n_lanes, double y);

/* The block at a point and how it is held there; @block is its number. */
UnsootGrip unsoot_planner_hit (const UnsootStripRect *rects, gsize n, double x, double y,
                               guint *block);

/* Seconds, rounded to whole steps of @midnight's clock. */
gint64 unsoot_planner_snap (gint64 at, gint64 midnight);

/**
 * unsoot_planner_pull:
 * @seconds: how far it is pulled, before it keeps to the grid
 * @lane: over which it is held; only a whole block changes lanes
 *
 * Where @span comes to stand: on the grid, at least one step long, within the day.
 */
UnsootStripSpan unsoot_planner_pull (UnsootStripSpan span, UnsootGrip grip, gint64 seconds,
                                     int lane, gint64 midnight);
