/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "invoices.h"
#include "session.h"

G_BEGIN_DECLS

/* What is owed by how long it has been: the total, and for each age the amount over a bar that
 * shows its share. */
#define UNSOOT_TYPE_OWED_BAR (unsoot_owed_bar_get_type ())
G_DECLARE_FINAL_TYPE (UnsootOwedBar, unsoot_owed_bar, UNSOOT, OWED_BAR, GtkBox)

GtkWidget *unsoot_owed_bar_new (void);
void unsoot_owed_bar_show (UnsootOwedBar *self, const UnsootOwes *owes, UnsootSession *session);

G_END_DECLS
