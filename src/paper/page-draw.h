/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fit.h"
#include "page-kit.h"

G_BEGIN_DECLS

/* Lines and areas; y runs down the page. All are silent while the kit only measures. */

void unsoot_page_rule (UnsootPageKit *kit, double from, double to, double y, double weight,
                       const UnsootTone *tone);
void unsoot_page_line (UnsootPageKit *kit, double x1, double y1, double x2, double y2,
                       double weight, const UnsootTone *tone);
/* @fill or @stroke may be NULL; the corners are rounded by @radius. */
void unsoot_page_box (UnsootPageKit *kit, double x, double y, double width, double height,
                      double radius, const UnsootTone *fill, const UnsootTone *stroke,
                      double weight);
/* Slanting lines, @gap apart, inside a rectangle: tells areas apart without colour. */
void unsoot_page_hatch (UnsootPageKit *kit, double x, double y, double width, double height,
                        double gap, double weight, const UnsootTone *tone);

/* Through @n points, with round joins; dashes are 4 points long. */
void unsoot_page_path (UnsootPageKit *kit, const UnsootPoint *points, gsize n, double weight,
                       gboolean dashed, const UnsootTone *tone);
/* The area within @n points, filled, or hatched as a rectangle is. */
void unsoot_page_area (UnsootPageKit *kit, const UnsootPoint *points, gsize n,
                       const UnsootTone *fill);
void unsoot_page_hatch_area (UnsootPageKit *kit, const UnsootPoint *points, gsize n, double gap,
                             double weight, const UnsootTone *tone);

/* A figure given as path text: M x y, L x y, C x1 y1 x2 y2 x y, Z, each number and letter
 * parted by a space, on a field of 100 × 100 with y down. The field's top left corner comes
 * to @x, @y and its side is @side points. Areas in areas are holes (even-odd). */
void unsoot_page_figure (UnsootPageKit *kit, const char *path, double x, double y, double side,
                         const UnsootTone *fill);
/* The same, drawn as a line of @weight field units with round ends. */
void unsoot_page_outline (UnsootPageKit *kit, const char *path, double x, double y, double side,
                          double weight, const UnsootTone *tone);

G_END_DECLS
