/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run.h"

/* The machine during a run, as its events tell: what both tanks held and what the two gauges were
 * set to, from that moment until the next. */
typedef struct
{
  gint64 at;               /* Unix seconds */
  gint64 ml[UNSOOT_SIDES]; /* by side */
  double pressure_pa;      /* of the supply; 0 is minimum */
  double air_pa;           /* of the atomiser; 0 is none */
} UnsootTracePoint;

/* Appends how it stands after an event that was done @at. */
void unsoot_run_trace_add (GArray *points, const UnsootRun *run, gint64 at);
