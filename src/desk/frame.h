/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "desk-place.h"
#include "session.h"

G_BEGIN_DECLS

/* What surrounds the one place that is open: the places down the side with the person at the
 * desk at their foot, and the bar with the way back, the find box and the menu above. */
#define UNSOOT_TYPE_FRAME (unsoot_frame_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFrame, unsoot_frame, UNSOOT, FRAME, AdwBin)

GtkWidget *unsoot_frame_new (UnsootSession *session);

/* Puts @view in front; places are kept, a record lasts until the next one. */
void unsoot_frame_show (UnsootFrame *self, const UnsootDeskPlace *place, UnsootView *view);

/* The place's view if it was made before, else NULL. */
UnsootView *unsoot_frame_find (UnsootFrame *self, const UnsootDeskPlace *place);
UnsootView *unsoot_frame_get_view (UnsootFrame *self);

/* The nth place of the present role, counted from 0; NULL if there are fewer. */
const UnsootDeskPlace *unsoot_frame_get_nth (UnsootFrame *self, guint n);

/* Puts the focus on the place that is open, where a fresh window begins. */
void unsoot_frame_focus_places (UnsootFrame *self);
void unsoot_frame_focus_find (UnsootFrame *self);
void unsoot_frame_open_menu (UnsootFrame *self);
void unsoot_frame_toggle_places (UnsootFrame *self);

G_END_DECLS
