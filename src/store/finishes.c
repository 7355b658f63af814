/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finishes.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "booking-states.h"
#include "deed.h"
#include "job-status.h"
#include "jobs.h"
#include "next-due.h"
#include "run-postings.h"
#include "run-rows.h"

/* The job's run that goes on. Errors: CONSTRAINT where there is none. */
static UnsootRunRow *
run_going_on (UnsootDb *db, const UnsootJobRow *job, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootRunRow) row = unsoot_job_run_of (db, job->id, &failed);

  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (row == NULL || row->outcome != NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("Job %" PRId64 " has no run that goes on."), job->number);
  else
    return g_steal_pointer (&row);
  return NULL;
}

static GPtrArray *
faults_of (const UnsootRun *run)
{
  GPtrArray *sentences = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GArray) faults = unsoot_faults_new ();

  unsoot_run_finish_faults (run, faults);
  for (guint i = 0; i < faults->len; i++)
    g_ptr_array_add (sentences, unsoot_fault_sentence (&g_array_index (faults, UnsootFault, i)));
  return sentences;
}

GPtrArray *
unsoot_job_finish_faults (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, job_id, error);
  g_autoptr (UnsootRunRow) row = job != NULL ? run_going_on (db, job, error) : NULL;
  g_autoptr (UnsootRun) run = row != NULL ? unsoot_job_run_load (db, row->id, error) : NULL;

  return run != NULL ? faults_of (run) : NULL;
}

static gboolean
check_whole (UnsootDb *db, const UnsootRunRow *row, GError **error)
{
  g_autoptr (UnsootRun) run = unsoot_job_run_load (db, row->id, error);
  if (run == NULL)
    return FALSE;

  g_autoptr (GPtrArray) faults = faults_of (run);
  if (faults->len > 0)
    {
      g_autofree char *lines = unsoot_deed_lines (faults);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", lines);
    }
  return TRUE;
}

/* Ends the run in the book, with all that it did to lots and tanks. */
static gboolean
end_run (UnsootDb *db, const UnsootActing *who, UnsootRunRow *row, UnsootRunEventKind kind,
         const char *text, const char *signature, UnsootRun **after, GError **error)
{
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (kind, who->now);

  event->text = g_strdup (text);
  if (!unsoot_run_event_add (db, who, row->id, event, after, error)
      || !unsoot_run_post_fluids (db, who, row, &row->fuel_lot_id, &row->intake_lot_id, error))
    return FALSE;
  row->ended_at = who->now;
  g_free (row->outcome);
  row->outcome = g_strdup (kind == UNSOOT_RUN_SIGNED ? "finished" : "released");
  g_free (row->signature);
  row->signature = g_strdup (signature);
  return TRUE;
}

static gboolean
finish (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, UnsootRunRow *row,
        const char *signature, GError **error)
{
  g_clear_pointer (&row->tag, g_free);
  return check_whole (db, row, error)
         && end_run (db, who, row, UNSOOT_RUN_SIGNED, signature, signature, NULL, error)
         && unsoot_rows_update (db, &unsoot_run_row_type, row, who, error)
         && unsoot_job_set_next_due (db, job, who->now, error)
         && unsoot_job_move (db, who, job, UNSOOT_JOB_DONE, NULL, error)
         && unsoot_job_keep_booking (db, who, job->id, error);
}

static gboolean
check_signature (const char *signature, GError **error)
{
  if (unsoot_deed_blank (signature))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Enter who signs."));
  return TRUE;
}

gboolean
unsoot_job_finish (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *signature,
                   GError **error)
{
  if (!check_signature (signature, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_FINISH, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;
  g_autoptr (UnsootRunRow) row = job != NULL ? run_going_on (db, job, error) : NULL;

  if (row == NULL)
    return FALSE;
  return unsoot_deed_end (&deed, finish (db, who, job, row, signature, error), error);
}

static gboolean
release (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, UnsootRunRow *row,
         const char *signature, const char *reason, GError **error)
{
  g_autoptr (UnsootRun) run = NULL;

  if (!end_run (db, who, row, UNSOOT_RUN_RELEASED, reason, signature, &run, error))
    return FALSE;
  g_free (row->tag);
  row->tag = unsoot_run_tag (run);
  return unsoot_rows_update (db, &unsoot_run_row_type, row, who, error)
         && unsoot_job_move (db, who, job, UNSOOT_JOB_STOPPED, reason, error)
         && unsoot_job_keep_booking (db, who, job->id, error);
}

gboolean
unsoot_job_release (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *signature,
                    const char *reason, GError **error)
{
  if (!check_signature (signature, error))
    return FALSE;
  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why the vehicle leaves, or stays, in pieces."));
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RELEASE_INCOMPLETE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;
  g_autoptr (UnsootRunRow) row = job != NULL ? run_going_on (db, job, error) : NULL;

  if (row == NULL)
    return FALSE;
  return unsoot_deed_end (&deed, release (db, who, job, row, signature, reason, error), error);
}
