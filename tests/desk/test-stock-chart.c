/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stock-chart.h"

#include <math.h>

#include "suite.h"

/* Where things stand in the picture of a stock: worked by hand on a plot of 100 by 50. */
static const UnsootStockScale scale = {
  .from = 1000, .to = 2000, .left = 40, .top = 10, .width = 100, .height = 50, .most_ml = 10000
};

START_TEST (a_place_for_each_moment_and_volume)
{
  ck_near (unsoot_stock_x (&scale, 1000), 40, 1e-9);
  ck_near (unsoot_stock_x (&scale, 1500), 90, 1e-9);
  ck_near (unsoot_stock_x (&scale, 2000), 140, 1e-9);
  ck_near (unsoot_stock_x (&scale, 0), 40, 1e-9);
  ck_near (unsoot_stock_x (&scale, 9999), 140, 1e-9);
  ck_near (unsoot_stock_y (&scale, 0), 60, 1e-9);
  ck_near (unsoot_stock_y (&scale, 10000), 10, 1e-9);
  ck_near (unsoot_stock_y (&scale, 2500), 47.5, 1e-9);
  ck_near (unsoot_stock_y (&scale, -3), 60, 1e-9);
  ck_near (unsoot_stock_y (&scale, 20000), 10, 1e-9);
}
END_TEST

START_TEST (steps_go_level_then_straight)
{
  const UnsootStockStep steps[] = { { 1200, -2000 }, { 1600, 5000 } };
  static const UnsootStockPoint wanted[]
      = { { 40, 40 }, { 60, 40 }, { 60, 50 }, { 100, 50 }, { 100, 25 }, { 120, 25 } };
  g_autoptr (GArray) points = unsoot_stock_steps (&scale, 4000, steps, 2, 1800);

  ck_assert_uint_eq (points->len, G_N_ELEMENTS (wanted));
  for (guint i = 0; i < points->len; i++)
    {
      ck_near (g_array_index (points, UnsootStockPoint, i).x, wanted[i].x, 1e-9);
      ck_near (g_array_index (points, UnsootStockPoint, i).y, wanted[i].y, 1e-9);
    }
  ck_assert_int_eq (unsoot_stock_most (4000, steps, 2), 7000);
  ck_assert_int_eq (unsoot_stock_most (9000, steps, 1), 9000);
  ck_assert_int_eq (unsoot_stock_most (0, NULL, 0), 0);
}
END_TEST

/* 1, 2 or 5 times a power of ten, and never more than five lines. */
START_TEST (lines_across_are_round)
{
  ck_near (unsoot_stock_grid (34000), 10000, 1e-6);
  ck_near (unsoot_stock_grid (7000), 2000, 1e-6);
  ck_near (unsoot_stock_grid (10000), 2000, 1e-6);
  ck_near (unsoot_stock_grid (900), 200, 1e-6);
  ck_near (unsoot_stock_top (34000), 40000, 1e-6);
  ck_near (unsoot_stock_top (10000), 10000, 1e-6);
  ck_assert (unsoot_stock_top (0) > 0);
  for (double most = 1; most < 1e7; most *= 1.37)
    {
      const double lines = unsoot_stock_top (most) / unsoot_stock_grid (most);
      ck_assert_msg (lines >= 1 && lines <= 6 && unsoot_stock_top (most) >= most - 1e-6, "%g",
                     most);
    }
}
END_TEST

START_TEST (bars_end_where_they_must)
{
  ck_near (unsoot_days_share (30, 60), 0.5, 1e-9);
  ck_near (unsoot_days_share (286, 60), 1, 1e-9);
  ck_near (unsoot_days_share (-2, 60), 0, 1e-9);
  ck_near (unsoot_days_share ((double) NAN, 60), 0, 1e-9);
}
END_TEST

static Suite *
stock_chart_suite (void)
{
  Suite *suite = suite_create ("stock chart");
  TCase *geometry = tcase_create ("geometry");

  tcase_add_test (geometry, a_place_for_each_moment_and_volume);
  tcase_add_test (geometry, steps_go_level_then_straight);
  tcase_add_test (geometry, lines_across_are_round);
  tcase_add_test (geometry, bars_end_where_they_must);
  suite_add_tcase (suite, geometry);
  return suite;
}

UNSOOT_TEST_MAIN (stock_chart_suite)
