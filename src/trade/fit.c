/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit.h"

#include <math.h>

/* Deviations from the means first: raw sums of squares lose the digits of points
 * that lie far from zero, as day numbers and odometers do. */
gboolean
unsoot_fit_line (const UnsootPoint *points, gsize n, UnsootTrend *fit)
{
  double x_mean = 0, y_mean = 0, xx = 0, xy = 0, rest = 0;
  for (gsize i = 0; i < n; i++)
    {
      x_mean += points[i].x / (double) n;
      y_mean += points[i].y / (double) n;
    }
  for (gsize i = 0; i < n; i++)
    {
      xx += (points[i].x - x_mean) * (points[i].x - x_mean);
      xy += (points[i].x - x_mean) * (points[i].y - y_mean);
    }
  if (n < 2 || !(xx > 0))
    return FALSE;
  *fit = (UnsootTrend){ .slope = xy / xx, .x_mean = x_mean, .x_spread = xx, .n = n };
  fit->intercept = y_mean - fit->slope * x_mean;
  for (gsize i = 0; i < n; i++)
    {
      double off = (points[i].y - y_mean) - fit->slope * (points[i].x - x_mean);
      rest += off * off;
    }
  fit->residual = n > 2 ? sqrt (rest / (double) (n - 2)) : 0;
  return TRUE;
}

double
unsoot_fit_at (const UnsootTrend *fit, double x)
{
  return fit->intercept + fit->slope * x;
}

double
unsoot_fit_error (const UnsootTrend *fit, double x)
{
  double away = x - fit->x_mean;
  return fit->residual * sqrt (1 / (double) fit->n + away * away / fit->x_spread);
}

double
unsoot_fit_scatter (const UnsootTrend *fit, double x)
{
  return hypot (fit->residual, unsoot_fit_error (fit, x));
}
