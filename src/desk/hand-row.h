/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "days.h"
#include "session.h"

G_BEGIN_DECLS

/* One line of Needs a hand: a sentence, the thing in it bold, and one button. */
#define UNSOOT_TYPE_HAND_ROW (unsoot_hand_row_get_type ())
G_DECLARE_FINAL_TYPE (UnsootHandRow, unsoot_hand_row, UNSOOT, HAND_ROW, GtkListBoxRow)

GtkWidget *unsoot_hand_row_new (const UnsootHand *hand, UnsootSession *session);

G_END_DECLS
