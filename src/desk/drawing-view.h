/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "drawing.h"

#define UNSOOT_TYPE_DRAWING_VIEW (unsoot_drawing_view_get_type ())
G_DECLARE_FINAL_TYPE (UnsootDrawingView, unsoot_drawing_view, UNSOOT, DRAWING_VIEW, GtkWidget)

/* Works out the picture for a size in pixels. */
typedef UnsootDrawing *(*UnsootDrawingMaker) (gconstpointer data, double width, double height);

/* A picture that is worked out again for every size: what is at the pointer is said in a tooltip,
 * and all of it to a screen reader. @height is fixed, @width is what it would like. Takes @data. */
GtkWidget *unsoot_drawing_view_new (const char *name, int width, int height,
                                    UnsootDrawingMaker make, gpointer data,
                                    GDestroyNotify free_data);
