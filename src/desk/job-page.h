/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* One job: its path, what and why, when and with what, readings, lines and total, papers. Its
 * slug may be "estimate" too: then the record is one of the job's. */
#define UNSOOT_TYPE_JOB_PAGE (unsoot_job_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootJobPage, unsoot_job_page, UNSOOT, JOB_PAGE, UnsootView)

G_END_DECLS
