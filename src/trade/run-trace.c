/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-trace.h"

/* A step stamped late may have been done before the one that was recorded before it; the trace does
 * not run backwards. */
void
unsoot_run_trace_add (GArray *points, const UnsootRun *run, gint64 at)
{
  const UnsootRig *rig = unsoot_run_rig (run);
  UnsootTracePoint point
      = { at,
          { 0, rig->tank[UNSOOT_SIDE_FUEL].ml, rig->tank[UNSOOT_SIDE_INTAKE].ml },
          rig->pressure_pa,
          rig->air_pa };

  if (points->len > 0)
    point.at = MAX (at, g_array_index (points, UnsootTracePoint, points->len - 1).at);
  g_array_append_val (points, point);
}
