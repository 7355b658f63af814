/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "window.h"

/* What the window does where it is run for a script: for pictures and for the bench. */
typedef struct
{
  char *place;          /* slug; NULL: today */
  gint64 record;        /* 0: the first that there is */
  char *picture;        /* file to draw into; NULL: none */
  gboolean first_frame; /* say on stdout when the first frame with data is drawn */
} UnsootPortrait;

/**
 * unsoot_portrait_begin:
 * @portrait: borrowed until the window closes
 *
 * Opens the place, waits until it shows its data and has been drawn, then draws the picture or
 * prints the monotonic time in microseconds, and closes the window. *@status is EXIT_FAILURE
 * where that failed.
 */
void unsoot_portrait_begin (UnsootWindow *window, const UnsootPortrait *portrait, int *status);
