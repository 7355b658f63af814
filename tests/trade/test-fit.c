/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "fit.h"

#include <math.h>

/* NIST Statistical Reference Datasets, Norris: x and y. */
static const UnsootPoint norris[] = {
  { 0.2, 0.1 },     { 337.4, 338.8 }, { 118.2, 118.1 }, { 884.6, 888.0 }, { 10.1, 9.2 },
  { 226.5, 228.1 }, { 666.3, 668.5 }, { 996.3, 998.5 }, { 448.6, 449.1 }, { 777.0, 778.9 },
  { 558.2, 559.2 }, { 0.4, 0.3 },     { 0.6, 0.1 },     { 775.5, 778.1 }, { 666.9, 668.8 },
  { 338.0, 339.3 }, { 447.5, 448.9 }, { 11.6, 10.8 },   { 556.0, 557.7 }, { 228.1, 228.3 },
  { 995.8, 998.0 }, { 887.6, 888.8 }, { 120.2, 119.6 }, { 0.3, 0.3 },     { 0.3, 0.6 },
  { 556.8, 557.6 }, { 339.1, 339.3 }, { 887.2, 888.0 }, { 999.0, 998.5 }, { 779.0, 778.9 },
  { 11.1, 10.2 },   { 118.3, 117.6 }, { 229.2, 228.9 }, { 669.1, 668.4 }, { 448.9, 449.2 },
  { 0.5, 0.2 },
};

/* NIST's certified intercept and slope; the residual deviation and the intercept's
 * standard deviation, 0.884796396144373 and 0.232818234301152, from memory of the
 * same certificate. */
START_TEST (norris_is_reproduced)
{
  UnsootTrend fit;
  ck_assert (unsoot_fit_line (norris, G_N_ELEMENTS (norris), &fit));
  ck_near (fit.intercept, -0.262323073774029, 1e-11);
  ck_near (fit.slope, 1.00211681802045, 1e-13);
  ck_near (fit.residual, 0.884796396144373, 1e-11);
  ck_near (unsoot_fit_error (&fit, 0), 0.232818234301152, 1e-11);
  ck_near (unsoot_fit_at (&fit, 0), fit.intercept, 1e-12);
  /* One more reading: the two variances added. */
  ck_near (pow (unsoot_fit_scatter (&fit, 0), 2),
           0.884796396144373 * 0.884796396144373 + 0.232818234301152 * 0.232818234301152, 1e-10);
}
END_TEST

/* The same line a long way from zero: moving every point moves the line with it. */
START_TEST (far_points_fit_as_well)
{
  UnsootPoint moved[G_N_ELEMENTS (norris)];
  UnsootTrend fit;
  for (gsize i = 0; i < G_N_ELEMENTS (norris); i++)
    moved[i] = (UnsootPoint){ norris[i].x + 739000, norris[i].y + 3e8 };
  ck_assert (unsoot_fit_line (moved, G_N_ELEMENTS (moved), &fit));
  ck_near (fit.slope, 1.00211681802045, 1e-9);
  ck_near (fit.residual, 0.884796396144373, 1e-6);
}
END_TEST

START_TEST (no_line_through_one_place)
{
  const UnsootPoint same[] = { { 3, 1 }, { 3, 2 }, { 3, 9 } };
  const UnsootPoint two[] = { { 1, 10 }, { 3, 20 } };
  UnsootTrend fit;
  ck_assert (!unsoot_fit_line (same, 3, &fit));
  ck_assert (!unsoot_fit_line (same, 1, &fit));
  ck_assert (!unsoot_fit_line (same, 0, &fit));
  ck_assert (unsoot_fit_line (two, 2, &fit));
  ck_near (fit.slope, 5, 1e-12);
  ck_near (fit.intercept, 5, 1e-12);
  ck_near (fit.residual, 0, 1e-12);
}
END_TEST

static Suite *
fit_suite (void)
{
  Suite *suite = suite_create ("fit");
  TCase *tests = tcase_create ("fit");
  tcase_add_test (tests, norris_is_reproduced);
  tcase_add_test (tests, far_points_fit_as_well);
  tcase_add_test (tests, no_line_through_one_place);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (fit_suite)
