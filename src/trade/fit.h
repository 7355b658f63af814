/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A straight line through points, by least squares. */

typedef struct
{
  double x;
  double y;
} UnsootPoint;

/**
 * UnsootTrend:
 * @residual: standard deviation of what the line leaves, n − 2 degrees of freedom;
 *   0 for two points
 * @x_mean, @x_spread: mean of x and sum of its squared deviations, for the band
 */
typedef struct
{
  double intercept;
  double slope;
  double residual;
  double x_mean;
  double x_spread;
  gsize n;
} UnsootTrend;

/* FALSE where there are fewer than two points or all share one x. */
gboolean unsoot_fit_line (const UnsootPoint *points, gsize n, UnsootTrend *fit);

double unsoot_fit_at (const UnsootTrend *fit, double x);

/* Standard error of the line itself at x: the band's half width before it is
 * multiplied by Student's t. */
double unsoot_fit_error (const UnsootTrend *fit, double x);

/* Standard error of one more reading at x: of the line, and of a reading about it. */
double unsoot_fit_scatter (const UnsootTrend *fit, double x);
