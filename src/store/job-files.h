/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"
#include "job-file.h"

G_BEGIN_DECLS

/* Everything that belongs to one job, in one consistent reading. Errors: NOT_FOUND. */
UnsootJobFile *unsoot_job_file_load (UnsootDb *db, gint64 job_id, GError **error);

G_END_DECLS
