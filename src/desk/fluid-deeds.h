/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-supply.h"
#include "session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is done with fluids and lots. */
typedef enum
{
  UNSOOT_FLUID_RECEIVE,
  UNSOOT_FLUID_OPEN,
  UNSOOT_FLUID_COUNT,
  UNSOOT_FLUID_WASTE,
  UNSOOT_FLUID_ADJUST,
} UnsootFluidDeed;
#define UNSOOT_FLUID_DEEDS 5

/* A button for it, without a handler. */
GtkWidget *unsoot_fluid_deed_button_new (UnsootFluidDeed deed, UnsootSession *session);

/**
 * unsoot_fluid_deed_open:
 * @lots: UnsootLotStock that may be chosen
 * @lot_id: chosen at first; 0: the first
 * @text: (nullable): a volume to begin with
 */
void unsoot_fluid_deed_open (UnsootFluidDeed deed, GtkWidget *over, UnsootSession *session,
                             const UnsootFluidRow *fluid, GPtrArray *lots, gint64 lot_id,
                             const char *text);

/* A stop-use on a lot, its lifting, and a move that is taken back. */
void unsoot_lot_stop_open (GtkWidget *over, UnsootSession *session, const UnsootLotRow *lot);
void unsoot_lot_release (GtkWidget *over, UnsootSession *session, const UnsootLotRow *lot);
void unsoot_move_back_open (GtkWidget *over, UnsootSession *session, gint64 move_id,
                            const char *what);
void unsoot_container_empty (GtkWidget *over, UnsootSession *session, gint64 container_id);

G_END_DECLS
