/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "reorder.h"
#include "trade-error.h"

#include <math.h>

/* Wichura, Algorithm AS 241 (1988), check values for 0.25 and 0.001, and from memory
 * for 1e-20; 0.975 from the tables of the normal distribution. */
START_TEST (quantiles_are_the_published_ones)
{
  ck_near (unsoot_normal_quantile (0.25), -0.6744897501960817, 1e-14);
  ck_near (unsoot_normal_quantile (0.001), -3.090232306167814, 1e-14);
  ck_near (unsoot_normal_quantile (0.975), 1.959963984540054, 1e-14);
  ck_near (unsoot_normal_quantile (1e-20), -9.262340089798408, 1e-13);
  ck_near (unsoot_normal_quantile (0.5), 0, 1e-15);
}
END_TEST

/* Published test data of an inventory library (secondary text); the first is the
 * example of Snyder and Shen, Fundamentals of Supply Chain Theory. */
START_TEST (order_quantities_are_the_published_ones)
{
  double quantity = 0;
  ck_assert (unsoot_order_quantity (8, 1300, 0.225, &quantity, NULL));
  ck_near (quantity, 304.04678, 1e-5);
  ck_near (8 * 1300 / quantity + 0.225 * quantity / 2, 68.41053, 1e-5);
  ck_assert (unsoot_order_quantity (2250, 182500, 275, &quantity, NULL));
  ck_near (quantity, 1728.10984, 1e-5);
}
END_TEST

/* Computed from L·d + z·σ·√L, z from published tables: service 0.9, 2500 a day,
 * spread 500, six days. */
START_TEST (reorder_point_follows_the_formula)
{
  UnsootReorder reorder = { 2500, 500, 6, 0, 0.9 };
  double point = 0;
  ck_assert (unsoot_reorder_point (&reorder, &point, NULL));
  ck_near (point, 16569.57, 0.005);
}
END_TEST

/* With a spread of the lead time; z(0.975) = 1.959963984540054 from tables, and
 * 9·100 + 400·4 = 2500, whose root is 50. */
START_TEST (lead_time_spread_counts)
{
  UnsootReorder reorder = { 20, 10, 9, 2, 0.975 };
  double point = 0, safety = 0;
  ck_assert (unsoot_reorder_point (&reorder, &point, NULL));
  ck_assert (unsoot_reorder_safety (&reorder, &safety, NULL));
  ck_near (safety, 50 * 1.959963984540054, 1e-9);
  ck_near (point, 180 + 50 * 1.959963984540054, 1e-9);
  reorder.service = 0.2;
  ck_assert (unsoot_reorder_safety (&reorder, &safety, NULL));
  ck_near (safety, 0, 1e-12);
}
END_TEST

START_TEST (nonsense_is_refused)
{
  static const UnsootReorder bad[]
      = { { -1, 0, 1, 0, 0.9 },       { 1, NAN, 1, 0, 0.9 }, { 1, 0, -1, 0, 0.9 },
          { 1, 0, 1, INFINITY, 0.9 }, { 1, 0, 1, 0, 0 },     { 1, 0, 1, 0, 1 },
          { 1, 0, 1, 0, NAN } };
  double value = 5;
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      ck_assert (!unsoot_reorder_point (&bad[i], &value, &error));
      ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
    }
  ck_assert (!unsoot_order_quantity (8, 0, 1, &value, NULL));
  ck_assert (!unsoot_order_quantity (8, 1, NAN, &value, NULL));
  ck_near (value, 5, 1e-12);
}
END_TEST

/* The quantile undoes the distribution function of the C library. */
START_TEST (quantile_undoes_the_distribution)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (90);
  for (int i = 0; i < 5000; i++)
    {
      double p = pow (10, g_rand_double_range (rand, -12, -0.302));
      double z = unsoot_normal_quantile (p);
      ck_near (erfc (-z / sqrt (2)) / 2 / p, 1, 1e-12);
    }
}
END_TEST

static Suite *
reorder_suite (void)
{
  Suite *suite = suite_create ("reorder");
  TCase *tests = tcase_create ("reorder");
  tcase_add_test (tests, quantiles_are_the_published_ones);
  tcase_add_test (tests, order_quantities_are_the_published_ones);
  tcase_add_test (tests, reorder_point_follows_the_formula);
  tcase_add_test (tests, lead_time_spread_counts);
  tcase_add_test (tests, nonsense_is_refused);
  tcase_add_test (tests, quantile_undoes_the_distribution);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (reorder_suite)
