/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The way back: what was open before, newest last. */
typedef struct
{
  char *slug;
  gint64 record;
} UnsootTrailStop;

typedef struct _UnsootTrail UnsootTrail;

UnsootTrail *unsoot_trail_new (void);
void unsoot_trail_free (UnsootTrail *trail);

/* Goes there; going where one already is changes nothing. */
void unsoot_trail_go (UnsootTrail *trail, const char *slug, gint64 record);

/* Steps back and says where that is; NULL at the beginning. Borrowed. */
const UnsootTrailStop *unsoot_trail_back (UnsootTrail *trail);
gboolean unsoot_trail_can_back (const UnsootTrail *trail);

void unsoot_trail_forget (UnsootTrail *trail);
