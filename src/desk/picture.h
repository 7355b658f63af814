/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Takes the frame away that a window draws around itself where there is no window manager, so that
 * its content has exactly the size asked for. Call it before the window is presented. */
void unsoot_picture_prepare (GtkWindow *window);

/* Draws what the window shows into a PNG file, as many pixels as it has. The window must be
 * mapped and drawn. Returns FALSE and sets a sentence where it isn't or the file can't be written. */
gboolean unsoot_picture_save (GtkWindow *window, const char *file, GError **error);
