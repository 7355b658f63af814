/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-file.h"

G_BEGIN_DECLS

/* The bay where no run goes on: signed, released in pieces with its tag, or not here yet.
 * Signal "take-up" (a vehicle in pieces comes in again). */
#define UNSOOT_TYPE_BAY_OVER (unsoot_bay_over_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayOver, unsoot_bay_over, UNSOOT, BAY_OVER, GtkBox)

/* Borrowed for the call. */
void unsoot_bay_over_show (UnsootBayOver *self, const UnsootBayFile *file);

/* Why it can't be taken up; NULL takes it away. */
void unsoot_bay_over_say (UnsootBayOver *self, const char *sentence);

G_END_DECLS
