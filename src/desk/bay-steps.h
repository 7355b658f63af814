/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "run.h"

G_BEGIN_DECLS

/* The steps of the phase that runs: those done, the one that is on, those to come. It keeps the
 * present one in view. */
#define UNSOOT_TYPE_BAY_STEPS (unsoot_bay_steps_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBaySteps, unsoot_bay_steps, UNSOOT, BAY_STEPS, GtkBox)

void unsoot_bay_steps_show (UnsootBaySteps *self, const UnsootRun *run);

G_END_DECLS
