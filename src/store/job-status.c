/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-status.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "deed.h"

UnsootJobStatus
unsoot_job_row_status (const UnsootJobRow *job)
{
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  unsoot_job_status_find (job->status, &status);
  return status;
}

gboolean
unsoot_job_post_status (UnsootDb *db, const UnsootActing *who, const UnsootJobRow *job,
                        const char *note, GError **error)
{
  g_autoptr (UnsootJobStatusRow) row = unsoot_job_status_row_new ();

  row->job_id = job->id;
  row->status = g_strdup (job->status);
  row->at = who->now;
  row->staff_id = who->staff_id;
  row->note = g_strdup (note);
  return unsoot_rows_post (db, &unsoot_job_status_row_type, row, error);
}

gboolean
unsoot_job_move (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, UnsootJobStatus to,
                 const char *note, GError **error)
{
  g_autofree char *refusal = unsoot_path_refusal (unsoot_job_row_status (job), to);

  if (refusal != NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("Job %" PRId64 ": %s"),
                             job->number, refusal);
  g_free (job->status);
  job->status = g_strdup (unsoot_job_status_slug (to));
  return unsoot_rows_update (db, &unsoot_job_row_type, job, who, error)
         && unsoot_job_post_status (db, who, job, note, error);
}

gboolean
unsoot_job_check_open (const UnsootJobRow *job, GError **error)
{
  UnsootJobStatus status = unsoot_job_row_status (job);

  if (status == UNSOOT_JOB_INVOICED || status == UNSOOT_JOB_PAID)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Job %" PRId64
                                " is invoiced: what was billed stands. Credit the invoice "
                                "first."),
                             job->number);
  return TRUE;
}
