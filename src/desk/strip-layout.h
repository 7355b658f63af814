/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Where the blocks of a day stand on its strip: pure geometry, without a widget. Times are Unix
 * seconds, lengths pixels, lanes counted from 0. */

typedef struct
{
  gint64 from;
  gint64 to;
  int lane;
} UnsootStripSpan;

typedef struct
{
  double x;
  double y;
  double width;
  double height;
} UnsootStripRect;

typedef struct
{
  gint64 from; /* left edge */
  gint64 to;   /* right edge */
  double left; /* room for the lanes' names */
  double top;  /* room for the hours */
  double width;
  double lane_height;
  double gap; /* between lanes, and between blocks that stand on one another */
} UnsootStripScale;

/* The span of whole hours, counted from @midnight, that holds the opening time and every block;
 * at least one hour. */
void unsoot_strip_hours (gint64 midnight, gint64 opens, gint64 closes, const UnsootStripSpan *spans,
                         gsize n, gint64 *from, gint64 *to);

/* The place of a moment; clamped to the strip's edges. */
double unsoot_strip_x (const UnsootStripScale *scale, gint64 at);

/* Places every block. Those that overlap within a lane share its height. */
void unsoot_strip_place (const UnsootStripScale *scale, const UnsootStripSpan *spans, gsize n,
                         UnsootStripRect *rects);

/* Hours between two labels so that labels of that width don't touch: 1, 2, 3, 4, 6 or 12. */
int unsoot_strip_hour_step (const UnsootStripScale *scale, double label_width);
