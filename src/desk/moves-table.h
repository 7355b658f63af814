/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-moves.h"
#include "session.h"

/* Stock moves, newest first, at most @limit of them: when, what and why, how much, who; each can
 * be taken back with a reason. @lines: UnsootMoveLine, oldest first. @with_lot: says which lot. */
GtkWidget *unsoot_moves_table_new (GPtrArray *lines, guint limit, gboolean with_lot,
                                   UnsootSession *session);
