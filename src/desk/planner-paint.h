/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "planner-board.h"

/* What the planner's board draws besides the strip, in the colours of @widget's style. */

/* Free times (UnsootStripSpan), behind the blocks. */
void unsoot_planner_paint_free (GtkWidget *widget, GtkSnapshot *snapshot,
                                const UnsootStripScale *scale, const GArray *spans);

/* The place over which a block is held, by what is known of it. */
void unsoot_planner_paint_held (GtkWidget *widget, GtkSnapshot *snapshot,
                                const UnsootStripScale *scale, const UnsootStripSpan *span,
                                UnsootVerdict verdict);
