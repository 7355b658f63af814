/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stock-chart.h"

#include <math.h>

double
unsoot_stock_x (const UnsootStockScale *scale, gint64 at)
{
  const double share = (double) (at - scale->from) / (double) (scale->to - scale->from);

  return scale->left + CLAMP (share, 0, 1) * scale->width;
}

double
unsoot_stock_y (const UnsootStockScale *scale, double ml)
{
  const double share = scale->most_ml > 0 ? ml / scale->most_ml : 0;

  return scale->top + (1 - CLAMP (share, 0, 1)) * scale->height;
}

double
unsoot_stock_grid (double most_ml)
{
  static const double steps[] = { 1, 2, 5, 10 };
  const double most = MAX (most_ml, 1);
  const double decade = pow (10, floor (log10 (most / 5)));

  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (most / (steps[i] * decade) <= 5)
      return steps[i] * decade;
  return 10 * decade;
}

double
unsoot_stock_top (double most_ml)
{
  const double grid = unsoot_stock_grid (most_ml);

  return MAX (ceil (most_ml / grid), 1) * grid;
}

gint64
unsoot_stock_most (gint64 before_ml, const UnsootStockStep *steps, gsize n)
{
  gint64 there = before_ml, most = before_ml;

  for (gsize i = 0; i < n; i++)
    {
      there += steps[i].ml;
      most = MAX (most, there);
    }
  return most;
}

static void
add_point (GArray *points, double x, double y)
{
  const UnsootStockPoint point = { x, y };

  g_array_append_val (points, point);
}

GArray *
unsoot_stock_steps (const UnsootStockScale *scale, gint64 before_ml, const UnsootStockStep *steps,
                    gsize n, gint64 until)
{
  GArray *points = g_array_new (FALSE, FALSE, sizeof (UnsootStockPoint));
  gint64 there = before_ml;

  add_point (points, unsoot_stock_x (scale, scale->from), unsoot_stock_y (scale, (double) there));
  for (gsize i = 0; i < n; i++)
    {
      const double x = unsoot_stock_x (scale, steps[i].at);
      add_point (points, x, unsoot_stock_y (scale, (double) there));
      there += steps[i].ml;
      add_point (points, x, unsoot_stock_y (scale, (double) there));
    }
  add_point (points, unsoot_stock_x (scale, until), unsoot_stock_y (scale, (double) there));
  return points;
}

double
unsoot_days_share (double days, double longest)
{
  return isnan (days) || longest <= 0 ? 0 : CLAMP (days / longest, 0, 1);
}
