/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "window.h"

G_BEGIN_DECLS

/* What stands in the window while no shop is open: a new shop, the invented one, or a shop's
 * file. */
#define UNSOOT_TYPE_FIRST_START (unsoot_first_start_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFirstStart, unsoot_first_start, UNSOOT, FIRST_START, AdwBin)

/* @trouble: (nullable): a sentence about what could not be opened. */
GtkWidget *unsoot_first_start_new (UnsootWindow *window, const char *trouble);

/* Begins to make the invented shop, or opens the one made lately, as its row does. */
void unsoot_first_start_demo (UnsootFirstStart *self);

G_END_DECLS
