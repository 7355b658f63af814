/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"
#include "paper-readings.h"

G_BEGIN_DECLS

/* One visit's readings of a kind; rows are borrowed, either may be NULL. */
typedef struct
{
  gint64 job_id;
  const UnsootReadingRow *before;
  const UnsootReadingRow *after;
} UnsootReadingVisit;

/* What one kind of reading did over a vehicle's visits. */
typedef struct
{
  UnsootReadingKind kind;
  GArray *visits; /* UnsootReadingVisit, oldest first */
} UnsootReadingHistory;

/* @rows, UnsootReadingRow of all of a vehicle's jobs, parted by kind in the trade's order: the
 * latest of each stage. Returns UnsootReadingHistory; rows of an unknown kind are left out. */
GPtrArray *unsoot_reading_histories (const GPtrArray *rows);

/**
 * unsoot_reading_history_draw:
 * @history: one kind
 * @zone: the shop's, for the dates under the visits
 *
 * A small picture: each visit before (a ring) and after (a disc) joined by a line, each with a
 * whisker as long as its instrument may err either way.
 */
UnsootDrawing *unsoot_reading_history_draw (const UnsootReadingHistory *history, GTimeZone *zone,
                                            double width, double height);

G_END_DECLS
