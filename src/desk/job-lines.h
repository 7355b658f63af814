/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lists.h"

/* UnsootJobLine for each of these job ids (gint64), in their order, as they stand in lists.
 * On the worker; for records that name jobs. */
GPtrArray *unsoot_job_lines_of (UnsootDb *db, const GArray *ids, GError **error);
