/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"
#include "unit.h"

/* When a vehicle should come back: by months, distance or engine hours since its
 * last service, whichever comes first. Days as in civil.h, distance in metres,
 * engine hours in seconds. */

typedef enum
{
  UNSOOT_DUE_NEVER, /* no interval applies */
  UNSOOT_DUE_MONTHS,
  UNSOOT_DUE_DISTANCE,
  UNSOOT_DUE_HOURS,
} UnsootDueBy;

extern const UnsootSlug unsoot_due_by[];

/* 0 where the shop sets no such interval. */
typedef struct
{
  int months;
  gint64 metres;
  gint64 seconds;
} UnsootDueInterval;

typedef struct
{
  int day;
  gint64 value;
} UnsootMeterPoint;

/**
 * UnsootMeter:
 * @at_service: the meter at the last service, or −1 where it was not read
 * @points: readings in any order, meter changes already added up
 * @fleet_rate: what like vehicles add in a day, used below three readings; 0 for unknown
 */
typedef struct
{
  gint64 at_service;
  const UnsootMeterPoint *points;
  gsize n_points;
  double fleet_rate;
} UnsootMeter;

/**
 * UnsootDue:
 * @day: 0 with NEVER
 * @rate: metres or seconds a day that the day was reckoned from; 0 with MONTHS
 *   and where the interval is over already
 * @from_fleet: the rate is the fleet's, not the vehicle's own
 * @sentence: (transfer full): the day and its reason
 */
typedef struct
{
  UnsootDueBy by;
  int day;
  double rate;
  gboolean from_fleet;
  char *sentence;
} UnsootDue;

/* Metres or seconds a day: the slope of the vehicle's own readings where there are
 * three on two days or more and it grows, else the fleet's; 0 where neither is known. */
double unsoot_due_rate (const UnsootMeter *meter, gboolean *from_fleet);

/* @distance is the unit that the shop reads distance in: miles or kilometres. */
UnsootDue unsoot_due_next (int last_service, const UnsootDueInterval *interval,
                           const UnsootMeter *odometer, const UnsootMeter *hours,
                           UnsootUnit distance);

/**
 * unsoot_due_window:
 * @target: metres or seconds on the meter when the next service is due
 * @share: of all cases in which the day is to lie within, 0.9 for nine of ten
 * @first, @last: (out): the days between which the meter passes @target; @last is 0 where that
 *   may take longer than ten years from @today on
 *
 * By the line through the vehicle's own readings and Student's t, as for one more reading.
 *
 * Returns: FALSE below three readings, where the meter does not grow, and where it is past already
 */
gboolean unsoot_due_window (const UnsootMeter *meter, gint64 target, int today, double share,
                            int *first, int *last);

void unsoot_due_clear (UnsootDue *due);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootDue, unsoot_due_clear)
