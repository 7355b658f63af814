/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run-trace.h"
#include "runs.h"

G_BEGIN_DECLS

/* A run as the machine went through it. */
typedef struct
{
  gint64 job_number;
  gint64 began_at;
  GArray *points; /* UnsootTracePoint, in order */
} UnsootRunTrace;

/**
 * unsoot_run_traces:
 * @most: how many earlier ones at most
 *
 * Returns: UnsootRunTrace: the run's own first, then the finished ones before it of the same engine
 * family and sides, newest first. Errors: NOT_FOUND; DAMAGED.
 */
GPtrArray *unsoot_run_traces (UnsootDb *db, gint64 run_id, int most, GError **error);

G_END_DECLS
