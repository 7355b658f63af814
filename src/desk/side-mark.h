/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "side.h"

G_BEGIN_DECLS

/* The mark of one side of the engine: a drop on a solid ground for the fuel side, three waves
 * on a hatched ground for the intake side, with an amount where there is one. */
#define UNSOOT_TYPE_SIDE_MARK (unsoot_side_mark_get_type ())
G_DECLARE_FINAL_TYPE (UnsootSideMark, unsoot_side_mark, UNSOOT, SIDE_MARK, GtkWidget)

/* @ml: the amount shown beside the mark, 0 for none. */
GtkWidget *unsoot_side_mark_new (UnsootSide side, gint64 ml);

/* The mark alone, without ground or amount, where there is little room. */
GtkWidget *unsoot_side_mark_new_plain (UnsootSide side);

/* Appends a mark for each side in @sides ("fuel", "intake" or "both"). */
void unsoot_side_marks_append (GtkBox *box, const char *sides);

/* The same in words, translated: "Both sides". */
const char *unsoot_sides_words (const char *sides);

G_END_DECLS
