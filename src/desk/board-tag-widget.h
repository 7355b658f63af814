/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "adapter-board.h"

G_BEGIN_DECLS

/* An adapter on the board: its tag as a button that opens it, with its side and where it is in
 * a word, so that no state is told by colour alone. */
#define UNSOOT_TYPE_BOARD_TAG_WIDGET (unsoot_board_tag_widget_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBoardTagWidget, unsoot_board_tag_widget, UNSOOT, BOARD_TAG_WIDGET,
                      GtkButton)

GtkWidget *unsoot_board_tag_widget_new (const UnsootBoardTag *tag);

G_END_DECLS
