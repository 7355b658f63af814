/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"
#include "side.h"

G_BEGIN_DECLS

/* The lot that is poured: chosen from the shelf, where the first to expire that holds enough is
 * proposed, scanned, or typed. Signals "refused" (why a lot may not be used; NULL takes that away)
 * and "activate" (Return, where no code waits to be looked up). */
#define UNSOOT_TYPE_BAY_LOTS (unsoot_bay_lots_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayLots, unsoot_bay_lots, UNSOOT, BAY_LOTS, GtkBox)

/* For @ml into the tank of @side. @stocks: UnsootLotStock, first to expire first; borrowed for the
 * call. */
GtkWidget *unsoot_bay_lots_new (UnsootSession *session, UnsootSide side, const GPtrArray *stocks,
                                gint64 ml);

/* The row with the field to scan into; there is room for the amount beside it. */
GtkBox *unsoot_bay_lots_get_row (UnsootBayLots *self);

/* The lot chosen; 0: none. */
gint64 unsoot_bay_lots_get (UnsootBayLots *self);

/* @code was scanned: the lot called so is chosen, on the shelf or not, or refused. */
void unsoot_bay_lots_scan (UnsootBayLots *self, const char *code);

/* Puts the keyboard where a code is typed. */
void unsoot_bay_lots_focus (UnsootBayLots *self);

G_END_DECLS
