/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* Everything the window can show: the places down the side, and the records that stand under
 * one. Both are opened with the action win.open ("slug", id). */
typedef struct
{
  const char *slug;
  const char *under; /* for a record: the slug of its place */
  const char *title; /* N_ (); of a place */
  const char *icon;
  guint roles; /* bit 1 << UnsootRole: who has this place at the side */
  GType (*get_type) (void);
} UnsootDeskPlace;

/* All of them, places first and in order. */
const UnsootDeskPlace *unsoot_desk_places (gsize *n);
const UnsootDeskPlace *unsoot_desk_place_find (const char *slug);

/* Whether it stands at the side of someone in @role. */
gboolean unsoot_desk_place_is_of (const UnsootDeskPlace *place, UnsootRole role);

/* A new view of it. */
UnsootView *unsoot_desk_place_create (const UnsootDeskPlace *place, UnsootSession *session,
                                      gint64 record);

G_END_DECLS
