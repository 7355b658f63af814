/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Cards in two columns where there is room, else in one: each child goes to the column that is
 * shorter so far. Children are added as to a box, in templates too. */
#define UNSOOT_TYPE_COLUMNS (unsoot_columns_get_type ())
G_DECLARE_FINAL_TYPE (UnsootColumns, unsoot_columns, UNSOOT, COLUMNS, GtkWidget)

/* From this width on there are two columns. */
#define UNSOOT_COLUMNS_SPLIT 700

G_END_DECLS
