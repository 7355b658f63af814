/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gdk-pixbuf/gdk-pixbuf.h>

G_BEGIN_DECLS

/**
 * unsoot_demo_picture:
 * @soot: 0 clean to 1 crusted
 * @port: which port; pictures of the same one make a pair
 * @width, @height: (out): in pixels
 *
 * Returns: a drawn look into an intake port as JPEG bytes, NULL on error.
 */
GBytes *unsoot_demo_picture (double soot, guint port, int *width, int *height, GError **error);

G_END_DECLS
