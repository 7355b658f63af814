/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* How long a stock lasts, as a bar; a notch says how long a delivery takes. */
#define UNSOOT_TYPE_DAYS_BAR (unsoot_days_bar_get_type ())
G_DECLARE_FINAL_TYPE (UnsootDaysBar, unsoot_days_bar, UNSOOT, DAYS_BAR, GtkWidget)

/* @days: NAN where nothing is used; @lead: 0 where it is not known. */
void unsoot_days_bar_set (UnsootDaysBar *self, double days, double lead);

G_END_DECLS
