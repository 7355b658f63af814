/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "runs.h"

G_BEGIN_DECLS

/* Runs between the book and the trade's state machine; for the store's own deeds. */

/* The run that a row and its UnsootRunEventRow give. Errors: DAMAGED. */
UnsootRun *unsoot_run_from_rows (const UnsootRunRow *row, GPtrArray *events, GError **error);

/* The same, with the machine after each event: UnsootTracePoint are appended to @points. */
UnsootRun *unsoot_run_from_rows_traced (const UnsootRunRow *row, GPtrArray *events, GArray *points,
                                        GError **error);

/* NULL where the row's kind or happening is unknown: then the run does not load. */
UnsootRunEvent *unsoot_run_event_from_row (const UnsootRunEventRow *row);

/* What an event of a step, on the list or off it, is called in a tank's own history: fill,
 * drain, flush, hold, found or run. */
const char *unsoot_run_event_tank_kind (const UnsootRun *run, const UnsootRunEvent *event);

/* Both tanks (UnsootTankState) as a run keeps them, a line each. */
char *unsoot_run_tanks_text (GPtrArray *tanks);

/* An event's lot exists and may be used today; sets the event's fluid. Errors: CONSTRAINT. */
gboolean unsoot_run_event_check_lot (UnsootDb *db, const UnsootActing *who, UnsootRunEvent *event,
                                     GError **error);

/* Applies @event to the run and stores it, in the caller's deed; its seq, at and staff are set
 * here. @after: (out) (optional). */
gboolean unsoot_run_event_add (UnsootDb *db, const UnsootActing *who, gint64 run_id,
                               UnsootRunEvent *event, UnsootRun **after, GError **error);

/* Applies @event, whose time and person are set, to @run and stores it as its next; in the
 * caller's deed. Errors: CONSTRAINT for a fill from no lot, or of more than its lot has left. */
gboolean unsoot_run_event_put (UnsootDb *db, gint64 run_id, UnsootRun *run, UnsootRunEvent *event,
                               GError **error);

G_END_DECLS
