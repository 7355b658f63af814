/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "session.h"

G_BEGIN_DECLS

/* Listens for the alarms of every run in the book, whichever page is shown, and rings. A run
 * that was carried out at this desk keeps the program alive until its alarm was heard, even with
 * the window closed. Signal "changed": what rings, or how late it is. */
#define UNSOOT_TYPE_BAY_WATCH (unsoot_bay_watch_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayWatch, unsoot_bay_watch, UNSOOT, BAY_WATCH, GObject)

/* An alarm that rings. */
typedef struct
{
  gint64 run_id;
  gint64 job_id;
  gint64 job_number;
  gint64 due; /* Unix seconds */
  char *step; /* what was to end */
} UnsootBayAlarm;

/* The session's own; made when it is first asked for. Borrowed. */
UnsootBayWatch *unsoot_bay_watch_of (UnsootSession *session);

/* The alarm that rings longest; NULL: none. */
const UnsootBayAlarm *unsoot_bay_watch_ringing (UnsootBayWatch *self);

/* This desk is where the run is carried out. */
void unsoot_bay_watch_follow (UnsootBayWatch *self, gint64 run_id);

/* Whether it is, since this program was started: what went on before, it has not seen. */
gboolean unsoot_bay_watch_follows (UnsootBayWatch *self, gint64 run_id);

/* Whether the program is kept alive for it. */
gboolean unsoot_bay_watch_holds (UnsootBayWatch *self);

G_END_DECLS
