/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "machine-plan.h"

G_BEGIN_DECLS

/* The machine as it is now: two tanks with what is in them, pump, atomiser, air, engine, and the
 * hoses with what moves in them. A part that must not be switched over carries a lock; touched,
 * each says what it is and why it is locked. */
#define UNSOOT_TYPE_MACHINE_DRAWING (unsoot_machine_drawing_get_type ())
G_DECLARE_FINAL_TYPE (UnsootMachineDrawing, unsoot_machine_drawing, UNSOOT, MACHINE_DRAWING,
                      GtkWidget)

/* Borrowed for the call. */
void unsoot_machine_drawing_show (UnsootMachineDrawing *self, const UnsootRun *run);

/* Whether its picture is kept moving: something flows, it is seen, animations are on. */
gboolean unsoot_machine_drawing_is_moving (UnsootMachineDrawing *self);

G_END_DECLS
