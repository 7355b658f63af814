/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Draws what the window shows into a PNG file, as many pixels as it has. The window must be
 * mapped and drawn. Returns FALSE and sets a sentence where it isn't or the file can't be written. */
gboolean unsoot_picture_save (GtkWindow *window, const char *file, GError **error);
