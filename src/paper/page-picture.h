/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"

G_BEGIN_DECLS

/* Draws a picture as large as it fits into a field of @width × @height, at its top left;
 * one that can't be read is said in a frame in its place, and remarked. @what names it. */
void unsoot_page_picture (UnsootPageKit *kit, GBytes *data, const char *what, double x, double y,
                          double width, double height);

G_END_DECLS
