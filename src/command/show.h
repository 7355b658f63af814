/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "call.h"

G_BEGIN_DECLS

/* What several commands tell of a job. */

/* A status by its slug, for scripts and in words. */
UnsootCell unsoot_show_status_cell (const char *slug);

/* A deed's sentence (taken), then the job's number and where it stands now. */
gboolean unsoot_show_deed (UnsootCall *call, gint64 job_id, char *sentence, GError **error);

/* Lines of a job (UnsootJobLineRow) under "lines". */
void unsoot_show_lines (UnsootCall *call, GPtrArray *lines);

/* Net, tax by rate, and total. */
void unsoot_show_bill (UnsootCall *call, const UnsootBill *bill);

/* Everything about one job. */
gboolean unsoot_show_job (UnsootCall *call, gint64 job_id, GError **error);

/* The number of a job or invoice by its id. */
gboolean unsoot_show_job_number (UnsootCall *call, gint64 job_id, gint64 *number, GError **error);

G_END_DECLS
