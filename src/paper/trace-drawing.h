/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"
#include "run-trace.h"

G_BEGIN_DECLS

/* One run; its points are borrowed. */
typedef struct
{
  gint64 began_at;      /* Unix seconds */
  const GArray *points; /* UnsootTracePoint, in order */
} UnsootTraceLine;

/**
 * unsoot_trace_drawing_new:
 * @lines: the run itself first, then earlier ones that it is seen against
 *
 * What both tanks held and what the supply and the air were set to, against the minutes since each
 * run began: the earlier runs are thin and grey.
 */
UnsootDrawing *unsoot_trace_drawing_new (const UnsootTraceLine *lines, gsize n, double width,
                                         double height);

G_END_DECLS
