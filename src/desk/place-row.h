/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "desk-place.h"

G_BEGIN_DECLS

/* A place down the side: icon, name, and a badge that counts what needs a hand there. */
#define UNSOOT_TYPE_PLACE_ROW (unsoot_place_row_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPlaceRow, unsoot_place_row, UNSOOT, PLACE_ROW, GtkListBoxRow)

GtkWidget *unsoot_place_row_new (const UnsootDeskPlace *place);
const UnsootDeskPlace *unsoot_place_row_get_place (UnsootPlaceRow *self);

/* 0 takes the badge away. */
void unsoot_place_row_set_count (UnsootPlaceRow *self, guint count);

G_END_DECLS
