/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "planner-file.h"
#include "strip-block.h"

/* How a day's bookings are told on the strip; returned strings are the caller's to free. */

/* "open 08:00–17:00", "shut: Founders' Day". */
char *unsoot_planner_hours_words (const UnsootDay *day, GTimeZone *zone);

/* A block for a screen reader: number, vehicle, customer, from and to, state, and its lane. */
char *unsoot_planner_block_name (const UnsootDayBlock *block, const char *lane, GTimeZone *zone);

/* The block as the strip shows it; refers to @block and @name. */
UnsootStripItem unsoot_planner_strip_item (const UnsootDayBlock *block, int lane, const char *name);

/* "Bay 1 10:30–12:00, 14:00–17:00; Bay 2 …", or that there is none. */
char *unsoot_planner_free_words (const GArray *free, const GPtrArray *lanes, GTimeZone *zone);
