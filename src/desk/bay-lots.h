/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The lot that is poured: chosen from the shelf, where the first to expire that holds enough is
 * proposed, or scanned. Signals "scanned" (the code) and "refused" (the sentence why a lot on
 * the shelf may not be used). */
#define UNSOOT_TYPE_BAY_LOTS (unsoot_bay_lots_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayLots, unsoot_bay_lots, UNSOOT, BAY_LOTS, GtkBox)

/* @stocks: UnsootLotStock, first to expire first; borrowed for the call. @today: ISO date. */
GtkWidget *unsoot_bay_lots_new (const GPtrArray *stocks, gint64 ml, const char *today);

/* The row with the field to scan into; there is room for the amount beside it. */
GtkBox *unsoot_bay_lots_get_row (UnsootBayLots *self);

/* The lot chosen; 0: none. */
gint64 unsoot_bay_lots_get (UnsootBayLots *self);

/* Chooses a lot that was scanned, on the shelf or not. */
void unsoot_bay_lots_choose (UnsootBayLots *self, gint64 lot_id, const char *code);

/* As if @code had been scanned. */
void unsoot_bay_lots_scan (UnsootBayLots *self, const char *code);

G_END_DECLS
