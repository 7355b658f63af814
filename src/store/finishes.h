/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"

G_BEGIN_DECLS

/* Sentences (char *) on what still forbids the job to be finished; empty: nothing. */
GPtrArray *unsoot_job_finish_faults (UnsootDb *db, gint64 job_id, GError **error);

/**
 * unsoot_job_finish:
 * @signature: who signs that the engine is whole
 *
 * One deed: the run is signed, the fluid poured is taken out of its lots, what each tank
 * holds is recorded, the status goes to done, the next service is reckoned.
 *
 * Errors: NOT_ALLOWED; CONSTRAINT with everything that forbids it.
 */
gboolean unsoot_job_finish (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                            const char *signature, GError **error);

/**
 * unsoot_job_release:
 * @signature: who takes it on
 * @reason: why it leaves, or stays, in pieces
 *
 * The vehicle is released incomplete: its tag says what is off, what is in the tanks and
 * the next safe step. Fluid and tanks are posted up to here; unsoot_job_run_resume() goes on.
 */
gboolean unsoot_job_release (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                             const char *signature, const char *reason, GError **error);

G_END_DECLS
