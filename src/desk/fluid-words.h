/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-moves.h"
#include "supply.h"

/* A volume as markup, its unit lighter; "−1.5 L" below zero. The caller's to free. */
char *unsoot_volume_markup (gint64 ml);

/* The same with a plus where it is more than nothing. */
char *unsoot_volume_change_markup (gint64 ml);

/* "short", "low", "goes off", "fine" on a ground of its own. */
GtkWidget *unsoot_supply_mark_new (UnsootSupply state);

/* "Delivery", "Used" … for a stored kind of stock move; the kind itself where it is
 * not known. */
const char *unsoot_move_kind_words (const char *kind);

/* The whole of what a move was, in one plain line: "Count, lot 7714: −0.5 L". */
char *unsoot_move_words (const UnsootMoveLine *line);
