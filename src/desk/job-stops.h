/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "path.h"

/* The way of one job as stops to be drawn: pure, without a widget. */

typedef enum
{
  UNSOOT_STOP_PASSED,  /* been there, with a time */
  UNSOOT_STOP_SKIPPED, /* went past without it: a walk-in is never booked */
  UNSOOT_STOP_HERE,
  UNSOOT_STOP_AHEAD,
  UNSOOT_STOP_OFF, /* here, but off the path: declined, cancelled, stopped */
} UnsootStopState;

typedef struct
{
  UnsootJobStatus status;
  UnsootStopState state;
  gint64 at; /* Unix seconds when it got there last, 0: not yet */
} UnsootJobStop;

#define UNSOOT_MAX_STOPS (UNSOOT_PATH_LENGTH + 1)

/**
 * unsoot_job_stops:
 * @current: the slug of the job's status
 * @history: (element-type UnsootJobStatusRow): oldest first
 * @stops: (out): room for UNSOOT_MAX_STOPS
 *
 * The seven stops of the path; where the job is off it, an eighth behind the last stop that it
 * reached. Returns how many there are, 0 for a status that there isn't.
 */
guint unsoot_job_stops (const char *current, const GPtrArray *history, UnsootJobStop *stops);
