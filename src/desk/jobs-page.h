/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records-page.h"

G_BEGIN_DECLS

/* All jobs, the newest first, or those in one status. */
#define UNSOOT_TYPE_JOBS_PAGE (unsoot_jobs_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootJobsPage, unsoot_jobs_page, UNSOOT, JOBS_PAGE, UnsootRecordsPage)

G_END_DECLS
