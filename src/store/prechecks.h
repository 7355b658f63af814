/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "precheck-row.h"
#include "precheck.h"
#include "rows.h"

G_BEGIN_DECLS

/* The checks before the work. Only answers given since the vehicle last arrived count. */

/* UnsootPrecheckRow: the answer that counts of each check, in the trade's order; those without
 * one are missing. */
GPtrArray *unsoot_job_prechecks (UnsootDb *db, gint64 job_id, GError **error);

/**
 * unsoot_job_precheck_answer:
 * @overridden: the run may begin in spite of a no: the lead technician's word
 * @reason: (nullable): for an override and for "not applicable"
 *
 * Errors: NOT_ALLOWED; CONSTRAINT for a job whose vehicle is not here, or what the trade
 * refuses (precheck.h).
 */
gboolean unsoot_job_precheck_answer (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                     UnsootPrecheck check, UnsootPrecheckAnswer answer,
                                     gboolean overridden, const char *reason, GError **error);

/* Answers every check that has none with yes, in one deed. */
gboolean unsoot_job_precheck_rest (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                                   GError **error);

/* Whether a run may begin. Errors: CONSTRAINT, with every check that is missing or bad. */
gboolean unsoot_job_precheck_gate (UnsootDb *db, gint64 job_id, GError **error);

G_END_DECLS
