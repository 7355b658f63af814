/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reorder.h"
#include "stock.h"

/* How a fluid's stock stands against what it is needed for, what it is expected to do, and
 * what to order. Volumes are mL, days count from today, which is 0. */

/* From the worst to the best. */
typedef enum
{
  UNSOOT_SUPPLY_SHORT,    /* a booked dose can't be poured */
  UNSOOT_SUPPLY_LOW,      /* at the reorder point or below, with what is on order */
  UNSOOT_SUPPLY_ON_ORDER, /* above it once what is on order is here */
  UNSOOT_SUPPLY_GOES_OFF, /* some will expire before it is used */
  UNSOOT_SUPPLY_FINE,
} UnsootSupply;

/* "short", "low", "on order", "goes off", "fine". */
const char *unsoot_supply_words (UnsootSupply supply);

/* @short_ml: what booked doses lack; @point: the reorder point, NAN where it can't be told. What
 * is on order pours no dose that is booked, but nobody has to order it again. */
UnsootSupply unsoot_supply (gint64 short_ml, gint64 free_ml, gint64 on_order_ml, double point,
                            gint64 going_off_ml);

/**
 * unsoot_demand_of_weeks:
 * @weeks: what was used in each of @n whole weeks
 *
 * Mean and standard deviation of a day's use, taking days for independent (a week's deviation
 * is √7 of a day's). FALSE below two weeks.
 */
gboolean unsoot_demand_of_weeks (const gint64 *weeks, gsize n, double *demand, double *demand_sd);

/* What of the usable lots will not be used by its last day, for lots whose last day comes
 * within @horizon days: each day takes @demand from the lot that expires first. */
gint64 unsoot_supply_going_off (const UnsootStockLot *lots, gsize n, const char *today,
                                double demand, int horizon);

/* Days of use that an order brings beyond the reorder point. Common practice, no source. */
#define UNSOOT_SUPPLY_COVER_DAYS 28

/**
 * UnsootSuggestion:
 * @point: reorder point, of which @safety is safety stock
 * @target: what there is to be once the order is here: the point and the cover's use
 * @wanted_ml: from what is free and on order up to the target; 0 while that is above the point
 */
typedef struct
{
  double point;
  double safety;
  double target;
  gint64 wanted_ml;
} UnsootSuggestion;

/* @on_order_ml: ordered and not here yet; it counts as if it were, so that nothing is suggested
 * twice. Errors: those of unsoot_reorder_point (). */
gboolean unsoot_supply_suggest (const UnsootReorder *reorder, gint64 free_ml, gint64 on_order_ml,
                                UnsootSuggestion *suggestion, GError **error);

/* A size in which the fluid is bought. */
typedef struct
{
  gint64 ml;
  gint64 cost_minor; /* each */
} UnsootPack;

typedef struct
{
  gsize pack; /* index into the packs given */
  gint64 count;
  gint64 ml;
  gint64 cost_minor;
} UnsootPackOrder;

/* As many packs of one size as hold at least @ml: those that cost least together, of equal
 * ones the smaller amount. FALSE where there is no pack or nothing is wanted. */
gboolean unsoot_pack_order (const UnsootPack *packs, gsize n, gint64 ml, UnsootPackOrder *order);

/* A booked dose, or an arrival, on a day ahead. */
typedef struct
{
  int day;
  gint64 ml;
} UnsootOutlookNeed;

/* What of @arrivals is here by the end of @day, those of that day with it. */
gint64 unsoot_arrived_by (const UnsootOutlookNeed *arrivals, gsize n, int day);

/* The stock expected at the end of a day, never below zero. */
typedef struct
{
  double ml;
  double low;
  double high;
} UnsootOutlookDay;

/**
 * unsoot_outlook:
 * @needs: in any order; those of days before today count today
 * @arrivals: in any order: what is on order, by the day it is expected; likewise
 * @z: how wide the band is, in standard deviations
 * @days: (array length=n_days): filled in, the first for today
 *
 * By the end of each day is used what is booked until then, or the mean use if that is more:
 * jobs that are booked are part of the usual use, not on top of it. The band grows with the
 * root of time, and is nothing at the start.
 */
void unsoot_outlook (gint64 usable, const UnsootOutlookNeed *needs, gsize n,
                     const UnsootOutlookNeed *arrivals, gsize n_arrivals, double demand,
                     double demand_sd, double z, UnsootOutlookDay *days, gsize n_days);
