/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "session.h"
#include "view.h"

G_BEGIN_DECLS

/* The one window: the frame of a shop once one is open, the first start until then. */
#define UNSOOT_TYPE_WINDOW (unsoot_window_get_type ())
G_DECLARE_FINAL_TYPE (UnsootWindow, unsoot_window, UNSOOT, WINDOW, AdwApplicationWindow)

UnsootWindow *unsoot_window_new (GtkApplication *application);

/* Shows that shop. Where nobody is at the desk yet, it asks who is. */
void unsoot_window_set_session (UnsootWindow *self, UnsootSession *session);
UnsootSession *unsoot_window_get_session (UnsootWindow *self);

/* No shop is open: the first start, with @trouble (nullable) said in it. */
void unsoot_window_show_start (UnsootWindow *self, const char *trouble);

/* Opens a place or record as the action win.open does. FALSE for a slug that there isn't. */
gboolean unsoot_window_open (UnsootWindow *self, const char *slug, gint64 record);

/* What is in front, NULL at the first start. */
UnsootView *unsoot_window_get_view (UnsootWindow *self);

/* A short word about what happened; plain text. */
void unsoot_window_toast (UnsootWindow *self, const char *text);

G_END_DECLS
