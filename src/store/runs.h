/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "run-row.h"
#include "run.h"

G_BEGIN_DECLS

/* A run as it is stored. The trade's state machine alone decides what may be stored: the
 * run here is always the one that its events, read back, give. */

/**
 * unsoot_job_run_begin:
 * @machine_id: 0: the booking's
 *
 * The vehicle goes into the bay. Keeps the procedure's version, the family's facts and
 * what both tanks hold as they are now.
 *
 * Errors: NOT_ALLOWED; CONSTRAINT for a job that has not arrived, that nobody authorised or that
 * has outgrown what was (authorise.h), a check before the work that is unanswered or bad
 * (prechecks.h), a machine that another run has, a procedure that is missing or stopped, a family
 * without a pressure window, a dose that is missing.
 *
 * Returns: the run's id, 0 on error.
 */
gint64 unsoot_job_run_begin (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                             gint64 machine_id, GError **error);

/* The run as it stands, by its events. Errors: NOT_FOUND; DAMAGED where they don't replay. */
UnsootRun *unsoot_job_run_load (UnsootDb *db, gint64 run_id, GError **error);

/* Its row; the run of a job (the latest) or in a bay (going on), NULL without an error
 * where there is none; and UnsootRunRow of all that go on. */
UnsootRunRow *unsoot_job_run_row (UnsootDb *db, gint64 run_id, GError **error);
UnsootRunRow *unsoot_job_run_of (UnsootDb *db, gint64 job_id, GError **error);
UnsootRunRow *unsoot_bay_run (UnsootDb *db, gint64 bay_id, GError **error);
GPtrArray *unsoot_job_run_list (UnsootDb *db, GError **error);

/**
 * unsoot_job_run_post:
 * @event: seq, at and staff_id are set here, the fluid's side by the lot; done_at of 0 is now
 * @after: (out) (optional): the run with the event applied
 *
 * Stores one event, where the trade takes it. SIGNED and RELEASED have deeds of their own
 * (finishes.h) and are refused here.
 *
 * Errors: NOT_ALLOWED; UNSOOT_RUN_ERROR, with nothing stored; CONSTRAINT for a lot that may
 * not be used, or that holds less.
 */
gboolean unsoot_job_run_post (UnsootDb *db, const UnsootActing *who, gint64 run_id,
                              UnsootRunEvent *event, UnsootRun **after, GError **error);

/**
 * unsoot_job_run_post_all:
 * @events: (element-type UnsootRunEvent): in order, each with its own time
 *
 * One deed for many events that were noted elsewhere: all of them, or none. As
 * unsoot_job_run_post() otherwise.
 */
gboolean unsoot_job_run_post_all (UnsootDb *db, const UnsootActing *who, gint64 run_id,
                                  GPtrArray *events, GError **error);

/* On again after a halt or from a vehicle released in pieces: posts RESUMED and has the job
 * in the bay. A run that was only cut off (power, program) needs nothing: load it. */
gboolean unsoot_job_run_resume (UnsootDb *db, const UnsootActing *who, gint64 run_id,
                                UnsootRun **after, GError **error);

/* UnsootRunEventRow in order. */
GPtrArray *unsoot_job_run_events (UnsootDb *db, gint64 run_id, GError **error);

/* Share of the steps that are done or passed over, 0 to 1. */
double unsoot_job_run_progress (const UnsootRun *run);

G_END_DECLS
