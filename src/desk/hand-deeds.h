/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "days.h"
#include "session.h"

/**
 * unsoot_hand_deed_open:
 * @over: a widget of the window, over whose front page the dialog comes
 *
 * Opens the deed that a line of Needs a hand asks for: the order, the check, the new hoses, the
 * invoice, the waste. Where the line asks for a look only, where the person at the desk may not do
 * it, or where it was done meanwhile, nothing opens: the record in front says so.
 */
void unsoot_hand_deed_open (GtkWidget *over, UnsootSession *session, UnsootHandKind kind,
                            gint64 target_id);
