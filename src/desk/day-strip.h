/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "strip-block.h"
#include "strip-layout.h"

G_BEGIN_DECLS

/* The strip of the day: hours from left to right, a lane for each bay, a block for each job, a
 * line for now. */
#define UNSOOT_TYPE_DAY_STRIP (unsoot_day_strip_get_type ())
G_DECLARE_FINAL_TYPE (UnsootDayStrip, unsoot_day_strip, UNSOOT, DAY_STRIP, GtkWidget)

GtkWidget *unsoot_day_strip_new (void);

/**
 * unsoot_day_strip_set_day:
 * @lanes: (array zero-terminated): the bays' names
 * @midnight: when the shop's day begins, Unix seconds
 * @opens, @closes: the shop's hours of that day
 * @zone: for the hours' labels
 *
 * Shows that day; the blocks that stood before are gone.
 */
void unsoot_day_strip_set_day (UnsootDayStrip *self, const char *const *lanes, gint64 midnight,
                               gint64 opens, gint64 closes, GTimeZone *zone,
                               const UnsootStripItem *items, gsize n_items);

/* Where everything stands, for what is drawn over it or taken hold of: pixels of the strip. The
 * blocks are counted as their items were given. */
const UnsootStripScale *unsoot_day_strip_get_scale (UnsootDayStrip *self);
const UnsootStripSpan *unsoot_day_strip_get_spans (UnsootDayStrip *self, guint *n);
GtkWidget *unsoot_day_strip_get_block (UnsootDayStrip *self, guint block);
guint unsoot_day_strip_get_n_lanes (UnsootDayStrip *self);

/* Moves the line; outside the strip's hours there is none. */
void unsoot_day_strip_set_now (UnsootDayStrip *self, gint64 now);

G_END_DECLS
