/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "photo-pair.h"

G_BEGIN_DECLS

/* The same place before and after, one over the other, with a divider that is dragged or moved by
 * the arrow keys: left of it is before, right of it after. Of a half that is missing nothing is
 * shown. A slider to a screen reader. */
#define UNSOOT_TYPE_PHOTO_PAIR_VIEW (unsoot_photo_pair_view_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPhotoPairView, unsoot_photo_pair_view, UNSOOT, PHOTO_PAIR_VIEW,
                      GtkWidget)

/* The pictures are decoded away from the main loop. */
GtkWidget *unsoot_photo_pair_view_new (const UnsootPhotoPair *pair);

/* Where the divider stands, from 0 to 1 of the width. */
double unsoot_photo_pair_view_get_split (UnsootPhotoPairView *self);
void unsoot_photo_pair_view_set_split (UnsootPhotoPairView *self, double split);

/* Whether all there is of it is decoded. */
gboolean unsoot_photo_pair_view_is_ready (UnsootPhotoPairView *self);

G_END_DECLS
