/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Where things stand in the picture of a fluid's stock: pure geometry, without a widget. Times
 * are Unix seconds, volumes mL, lengths pixels from the upper left. */

typedef struct
{
  gint64 from;
  gint64 to;
  double left; /* of the plot within the widget */
  double top;
  double width; /* of the plot */
  double height;
  double most_ml; /* at the top */
} UnsootStockScale;

typedef struct
{
  double x;
  double y;
} UnsootStockPoint;

typedef struct
{
  gint64 at;
  gint64 ml; /* in or, negative, out */
} UnsootStockStep;

/* Clamped to the plot. */
double unsoot_stock_x (const UnsootStockScale *scale, gint64 at);
double unsoot_stock_y (const UnsootStockScale *scale, double ml);

/* mL between two lines across, 1, 2 or 5 times a power of ten, so that there are two to five
 * lines up to @most_ml; and the height of the plot in mL, a whole number of them. */
double unsoot_stock_grid (double most_ml);
double unsoot_stock_top (double most_ml);

/* The most there was between, with @before_ml at the start. */
gint64 unsoot_stock_most (gint64 before_ml, const UnsootStockStep *steps, gsize n);

/**
 * unsoot_stock_steps:
 * @steps: by time, from the scale's start on
 * @until: where the line ends
 *
 * The corners of a line that goes level, then straight up or down.
 * Returns: (element-type UnsootStockPoint): 2n + 2 of them
 */
GArray *unsoot_stock_steps (const UnsootStockScale *scale, gint64 before_ml,
                            const UnsootStockStep *steps, gsize n, gint64 until);

/* How much of a bar is filled: days left against the longest that it shows, 0 to 1. */
double unsoot_days_share (double days, double longest);
