/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "machines.h"

G_BEGIN_DECLS

/* A tank drawn as full as it is: the fuel side's solid, the intake side's hatched; a line says
 * where the low-level switch stands. What nobody knows is drawn as a question mark. */
#define UNSOOT_TYPE_TANK_PICTURE (unsoot_tank_picture_get_type ())
G_DECLARE_FINAL_TYPE (UnsootTankPicture, unsoot_tank_picture, UNSOOT, TANK_PICTURE, GtkWidget)

GtkWidget *unsoot_tank_picture_new (const UnsootTankState *state);

G_END_DECLS
