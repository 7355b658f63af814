/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "drawing.h"
#include "page-kit.h"

G_BEGIN_DECLS

/* Paints @drawing, which was worked out for the page's width, at kit->y, on a new page where it
 * does not fit whole, and moves kit->y below it. */
void unsoot_page_drawing (UnsootPageKit *kit, const UnsootDrawing *drawing);

G_END_DECLS
