/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-stops.h"

#include "job-row.h"

static gint64
last_time (UnsootJobStatus status, const GPtrArray *history)
{
  const char *slug = unsoot_job_status_slug (status);
  gint64 at = 0;

  for (guint i = 0; i < history->len; i++)
    {
      const UnsootJobStatusRow *row = g_ptr_array_index (history, i);
      if (g_strcmp0 (row->status, slug) == 0)
        at = row->at;
    }
  return at;
}

/* The furthest stop of the path with a time, -1 for none. */
static int
furthest (const GPtrArray *history)
{
  int position = UNSOOT_PATH_LENGTH - 1;

  while (position >= 0 && last_time ((UnsootJobStatus) position, history) == 0)
    position--;
  return position;
}

static UnsootStopState
state_at (int position, int reached, gboolean off, gint64 at)
{
  if (position > reached)
    return UNSOOT_STOP_AHEAD;
  if (position == reached && !off)
    return UNSOOT_STOP_HERE;
  return at != 0 ? UNSOOT_STOP_PASSED : UNSOOT_STOP_SKIPPED;
}

guint
unsoot_job_stops (const char *current, const GPtrArray *history, UnsootJobStop *stops)
{
  UnsootJobStatus status;
  gboolean off;
  int reached;
  guint n = 0;

  if (!unsoot_job_status_find (current, &status))
    return 0;
  off = unsoot_path_position (status) < 0;
  reached = off ? furthest (history) : unsoot_path_position (status);
  if (off && reached < 0)
    stops[n++] = (UnsootJobStop){ status, UNSOOT_STOP_OFF, last_time (status, history) };
  for (int position = 0; position < UNSOOT_PATH_LENGTH; position++)
    {
      const UnsootJobStatus here = (UnsootJobStatus) position;
      /* A time ahead of the present stop is from before the job came back to it. */
      const gint64 at = position <= reached ? last_time (here, history) : 0;

      stops[n++] = (UnsootJobStop){ here, state_at (position, reached, off, at), at };
      if (off && position == reached)
        stops[n++] = (UnsootJobStop){ status, UNSOOT_STOP_OFF, last_time (status, history) };
    }
  return n;
}
