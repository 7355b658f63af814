/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "smoke.h"
#include "trade-error.h"

#include <math.h>

#define INCH 0.0254

/* Computed from the formula of 40 CFR 86.884-14. */
START_TEST (path_is_corrected)
{
  double corrected = 0;
  ck_assert (unsoot_smoke_correct (40, 3 * INCH, 5 * INCH, &corrected, NULL));
  ck_near (corrected, 57.3173, 5e-5);
  ck_assert (unsoot_smoke_correct (20, 5 * INCH, 3 * INCH, &corrected, NULL));
  ck_near (corrected, 12.5310, 5e-5);
  ck_assert (unsoot_smoke_correct (100, 5 * INCH, 3 * INCH, &corrected, NULL));
  ck_near (corrected, 100, 1e-12);
  ck_assert (unsoot_smoke_correct (0, 5 * INCH, 3 * INCH, &corrected, NULL));
  ck_near (corrected, 0, 1e-12);
}
END_TEST

/* UN Regulation 49: N 16.783 %, L 0.430 m gives 0.427252 1/m. */
START_TEST (coefficient_is_the_regulations)
{
  double k = 0;
  ck_assert (unsoot_smoke_k (16.783, 0.430, &k, NULL));
  ck_near (k, 0.427252, 1e-6);
  ck_assert (unsoot_smoke_k (0, 0.430, &k, NULL));
  ck_near (k, 0, 1e-12);
}
END_TEST

/* 40 CFR 86.884-8: below 50 hp 1.5 in, 100 2, 200 3, 300 4, 500 5, else 6. */
START_TEST (pipe_goes_by_horsepower)
{
  static const double cases[][2]
      = { { 49.9, 1.5 }, { 50, 2 },  { 99, 2 },  { 100, 3 }, { 199, 3 },
          { 200, 4 },    { 300, 5 }, { 499, 5 }, { 500, 6 }, { 900, 6 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      double pipe = 0;
      ck_assert (unsoot_smoke_pipe (cases[i][0], &pipe, NULL));
      ck_near (pipe, cases[i][1] * INCH, 1e-12);
    }
}
END_TEST

START_TEST (the_impossible_is_refused)
{
  double value = 7;
  g_autoptr (GError) error = NULL;
  ck_assert (!unsoot_smoke_correct (100.1, 0.1, 0.1, &value, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
  ck_assert (!unsoot_smoke_correct (-0.1, 0.1, 0.1, &value, NULL));
  ck_assert (!unsoot_smoke_correct (NAN, 0.1, 0.1, &value, NULL));
  ck_assert (!unsoot_smoke_correct (10, 0, 0.1, &value, NULL));
  ck_assert (!unsoot_smoke_correct (10, 0.1, INFINITY, &value, NULL));
  ck_assert (!unsoot_smoke_k (100, 0.1, &value, NULL));
  ck_assert (!unsoot_smoke_k (10, -1, &value, NULL));
  ck_assert (!unsoot_smoke_pipe (0, &value, NULL));
  ck_assert (!unsoot_smoke_pipe (NAN, &value, NULL));
  ck_near (value, 7, 1e-12);
}
END_TEST

/* k does not depend on the path that opacity was corrected to. */
START_TEST (corrected_opacity_has_the_same_k)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (86884);
  for (int i = 0; i < 5000; i++)
    {
      double opacity = g_rand_double_range (rand, 0, 95);
      double from = g_rand_double_range (rand, 0.03, 0.5),
             to = g_rand_double_range (rand, 0.03, 0.3);
      double corrected = 0, before = 0, after = 0, back = 0;
      ck_assert (unsoot_smoke_correct (opacity, from, to, &corrected, NULL));
      if (corrected > 99.99)
        continue;
      ck_assert (unsoot_smoke_k (opacity, from, &before, NULL));
      ck_assert (unsoot_smoke_k (corrected, to, &after, NULL));
      ck_near (after, before, 1e-6 * (1 + before));
      ck_assert (unsoot_smoke_correct (corrected, to, from, &back, NULL));
      ck_near (back, opacity, 1e-6);
    }
}
END_TEST

static Suite *
smoke_suite (void)
{
  Suite *suite = suite_create ("smoke");
  TCase *tests = tcase_create ("smoke");
  tcase_add_test (tests, path_is_corrected);
  tcase_add_test (tests, coefficient_is_the_regulations);
  tcase_add_test (tests, pipe_goes_by_horsepower);
  tcase_add_test (tests, the_impossible_is_refused);
  tcase_add_test (tests, corrected_opacity_has_the_same_k);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (smoke_suite)
