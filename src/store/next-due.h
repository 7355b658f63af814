/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* Sets the job's next service by the shop's intervals and the vehicle's own readings; the
 * caller saves the job. */
gboolean unsoot_job_set_next_due (UnsootDb *db, UnsootJobRow *job, gint64 now, GError **error);

G_END_DECLS
