/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "call.h"
#include "run.h"

G_BEGIN_DECLS

/* Where a run stands at @now and what it offers next: the step, its cautions, its window and
 * why, or the rule by which it is refused. */
void unsoot_show_run (UnsootCall *call, const UnsootRun *run);

/* "10.0 psi" in the step's own unit, "0" where it sets nothing else; NULL: no value. Free it. */
char *unsoot_show_step_value (const UnsootStep *step);

G_END_DECLS
