/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trail.h"

enum
{
  LONGEST = 100
};

struct _UnsootTrail
{
  GQueue stops;
};

static void
stop_free (gpointer data)
{
  UnsootTrailStop *stop = data;

  g_free (stop->slug);
  g_free (stop);
}

UnsootTrail *
unsoot_trail_new (void)
{
  UnsootTrail *trail = g_new0 (UnsootTrail, 1);

  g_queue_init (&trail->stops);
  return trail;
}

void
unsoot_trail_free (UnsootTrail *trail)
{
  unsoot_trail_forget (trail);
  g_free (trail);
}

void
unsoot_trail_go (UnsootTrail *trail, const char *slug, gint64 record)
{
  const UnsootTrailStop *here = g_queue_peek_tail (&trail->stops);
  UnsootTrailStop *stop;

  if (here != NULL && g_str_equal (here->slug, slug) && here->record == record)
    return;
  stop = g_new0 (UnsootTrailStop, 1);
  stop->slug = g_strdup (slug);
  stop->record = record;
  g_queue_push_tail (&trail->stops, stop);
  if (trail->stops.length > LONGEST)
    stop_free (g_queue_pop_head (&trail->stops));
}

gboolean
unsoot_trail_can_back (const UnsootTrail *trail)
{
  return trail->stops.length > 1;
}

const UnsootTrailStop *
unsoot_trail_back (UnsootTrail *trail)
{
  if (!unsoot_trail_can_back (trail))
    return NULL;
  stop_free (g_queue_pop_tail (&trail->stops));
  return g_queue_peek_tail (&trail->stops);
}

void
unsoot_trail_forget (UnsootTrail *trail)
{
  g_queue_clear_full (&trail->stops, stop_free);
}
