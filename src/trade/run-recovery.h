/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run.h"

/* The way back after a halt, or out of what was passed over. */
typedef struct
{
  GPtrArray *acts;   /* of UnsootStep: to be done first, in order, as EXTRA events */
  int first;         /* steps first … until - 1 are already so: to be passed over */
  int until;         /* the step that the run then goes on with */
  UnsootFault fault; /* rule NONE: the rest of the procedure is accepted after it */
} UnsootRecovery;

/* Works out the acts that bring the rig from where it is to what the current
 * step and the rest need: drain, oil, lines, tanks, pump, pressure, key, look,
 * engine, air, look, atomiser. A tank that is filled next and is not clean is
 * drained and flushed. Each is accepted by the same rules as the procedure's own
 * steps. What can't be had yet (a look that needs the engine running) is asked for
 * when its turn comes: wherever the current step is refused, ask here again. */
UnsootRecovery *unsoot_run_recovery (const UnsootRun *run);
void unsoot_recovery_free (UnsootRecovery *recovery);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootRecovery, unsoot_recovery_free)
