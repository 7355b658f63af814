/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-row.h"
#include "path.h"
#include "rows.h"

G_BEGIN_DECLS

/* Moves @job along its path, with its posting, in the caller's deed. @job is saved with
 * whatever else was changed in it. Errors: CONSTRAINT with the path's sentence. */
gboolean unsoot_job_move (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job,
                          UnsootJobStatus to, const char *note, GError **error);

/* The status a job is in; quoted for a slug that is none. */
UnsootJobStatus unsoot_job_row_status (const UnsootJobRow *job);

/* A posting of the status it is in: for a job's first. */
gboolean unsoot_job_post_status (UnsootDb *db, const UnsootActing *who, const UnsootJobRow *job,
                                 const char *note, GError **error);

/* Errors: CONSTRAINT where the job is already invoiced: what was billed stands. */
gboolean unsoot_job_check_open (const UnsootJobRow *job, GError **error);

/* Lines that are offered are authorised, in the caller's deed. */
gboolean unsoot_job_lines_authorise (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                     GError **error);

G_END_DECLS
