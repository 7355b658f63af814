/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-card.h"

G_BEGIN_DECLS

/* A run as it goes on: the phase above, its steps at the left, the card in the middle, the
 * machine and what is off the engine at the right, STOP below. Signals "stop" and "release". */
#define UNSOOT_TYPE_BAY_RUN (unsoot_bay_run_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayRun, unsoot_bay_run, UNSOOT, BAY_RUN, GtkBox)

/* @cut_off: see unsoot_bay_task_new(). Borrowed for the call. */
void unsoot_bay_run_show (UnsootBayRun *self, const UnsootBayFile *file, UnsootSession *session,
                          gboolean cut_off);

/* Turns the clocks on. */
void unsoot_bay_run_tick (UnsootBayRun *self, const UnsootBayFile *file, gint64 now);

UnsootBayCard *unsoot_bay_run_get_card (UnsootBayRun *self);

G_END_DECLS
