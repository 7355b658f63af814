/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "flammable.h"

#include <math.h>
#include <string.h>

/* 29 CFR 1910.106(a)(19): 1 below 73.4 °F boiling at or below 95; 2 below 73.4
 * boiling above 95; 3 from 73.4 to 140; 4 above 140 to 199.4. */
START_TEST (categories_change_where_the_law_says)
{
  static const struct
  {
    double flash_f;
    double boiling_f;
    UnsootFlammable category;
  } cases[] = {
    { 73.3, 95, UNSOOT_FLAMMABLE_1 },       { 73.3, 95.1, UNSOOT_FLAMMABLE_2 },
    { 73.3, NAN, UNSOOT_FLAMMABLE_1 },      { -40, 400, UNSOOT_FLAMMABLE_2 },
    { 73.4, 95, UNSOOT_FLAMMABLE_3 },       { 73.4, 400, UNSOOT_FLAMMABLE_3 },
    { 140, 400, UNSOOT_FLAMMABLE_3 },       { 140.1, 400, UNSOOT_FLAMMABLE_4 },
    { 199.4, 400, UNSOOT_FLAMMABLE_4 },     { 199.5, 400, UNSOOT_FLAMMABLE_NOT },
    { NAN, 400, UNSOOT_FLAMMABLE_UNKNOWN },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      UnsootFlammable f = unsoot_flammable_category_f (cases[i].flash_f, cases[i].boiling_f);
      UnsootFlammable c = unsoot_flammable_category ((cases[i].flash_f - 32) * 5 / 9,
                                                     (cases[i].boiling_f - 32) * 5 / 9);
      ck_assert_msg (f == cases[i].category, "%g °F is %d", cases[i].flash_f, f);
      ck_assert_int_eq (c, f);
    }
  ck_assert_int_eq (unsoot_flammable_category (23, 35), UNSOOT_FLAMMABLE_3);
  ck_assert_int_eq (unsoot_flammable_category (22.9, 35), UNSOOT_FLAMMABLE_1);
  ck_assert_int_eq (unsoot_flammable_category (60, 200), UNSOOT_FLAMMABLE_3);
  ck_assert_int_eq (unsoot_flammable_category (93, 200), UNSOOT_FLAMMABLE_4);
  /* What a conversion of units leaves behind does not move a boundary. */
  ck_assert_int_eq (unsoot_flammable_category (23 - 1e-9, 200), UNSOOT_FLAMMABLE_3);
  ck_assert_int_eq (unsoot_flammable_category (60 + 1e-9, 200), UNSOOT_FLAMMABLE_3);
}
END_TEST

/* 40 CFR 261.21: below 140 °F; so exactly 140 °F is category 3, but not D001. */
START_TEST (ignitable_waste_is_below_140_f)
{
  ck_assert (unsoot_flammable_is_d001 (59.9));
  ck_assert (!unsoot_flammable_is_d001 (60));
  ck_assert (!unsoot_flammable_is_d001 (60 - 1e-9));
  ck_assert (!unsoot_flammable_is_d001 ((140.0 - 32) / 1.8));
  ck_assert (!unsoot_flammable_is_d001 (NAN));
}
END_TEST

/* The H statement of each category, 29 CFR 1910.1200 appendix C. */
START_TEST (each_category_has_its_statement)
{
  ck_assert_str_eq (unsoot_flammable_statement (UNSOOT_FLAMMABLE_1), "H224");
  ck_assert_str_eq (unsoot_flammable_statement (UNSOOT_FLAMMABLE_2), "H225");
  ck_assert_str_eq (unsoot_flammable_statement (UNSOOT_FLAMMABLE_3), "H226");
  ck_assert_str_eq (unsoot_flammable_statement (UNSOOT_FLAMMABLE_4), "H227");
  ck_assert_ptr_null (unsoot_flammable_statement (UNSOOT_FLAMMABLE_NOT));
}
END_TEST

static gboolean
passes (UnsootStored stored, double unknown, double one, double two, double three, double four)
{
  const double gallons[] = { unknown, one, two, three, four, 9999 };
  gint64 ml[UNSOOT_FLAMMABLES];
  for (int i = 0; i < UNSOOT_FLAMMABLES; i++)
    ml[i] = (gint64) floor (gallons[i] * 3785.411784);
  g_autofree char *sentence = unsoot_storage_check (stored, ml);
  return sentence == NULL;
}

/* 29 CFR 1910.106(d)(3)(i) and (e)(2)(ii)(b). */
START_TEST (storage_has_its_limits)
{
  ck_assert (passes (UNSOOT_STORED_CABINET, 0, 20, 20, 20, 120));
  ck_assert (!passes (UNSOOT_STORED_CABINET, 0, 20, 20, 20.1, 0));
  ck_assert (!passes (UNSOOT_STORED_CABINET, 0, 0, 0, 0, 120.1));
  ck_assert (!passes (UNSOOT_STORED_CABINET, 60.1, 0, 0, 0, 0));
  ck_assert (passes (UNSOOT_STORED_OUTSIDE, 0, 25, 40, 40, 40));
  ck_assert (!passes (UNSOOT_STORED_OUTSIDE, 0, 25.1, 0, 0, 0));
  ck_assert (!passes (UNSOOT_STORED_OUTSIDE, 1, 24.5, 0, 0, 0));
  ck_assert (!passes (UNSOOT_STORED_OUTSIDE, 0, 0, 40, 40, 40.1));
}
END_TEST

START_TEST (every_passed_limit_is_named)
{
  const gint64 ml[UNSOOT_FLAMMABLES] = { 0, 100000, 200000, 0, 500000, 0 };
  g_autofree char *cabinet = unsoot_storage_check (UNSOOT_STORED_CABINET, ml);
  ck_assert_ptr_nonnull (strstr (cabinet, "60 gallons"));
  ck_assert_ptr_nonnull (strstr (cabinet, "there are 79.3."));
  ck_assert_ptr_nonnull (strstr (cabinet, "120 gallons"));
  ck_assert (g_str_has_suffix (cabinet, "Check local rules."));
}
END_TEST

static Suite *
flammable_suite (void)
{
  Suite *suite = suite_create ("flammable");
  TCase *tests = tcase_create ("flammable");
  tcase_add_test (tests, categories_change_where_the_law_says);
  tcase_add_test (tests, ignitable_waste_is_below_140_f);
  tcase_add_test (tests, each_category_has_its_statement);
  tcase_add_test (tests, storage_has_its_limits);
  tcase_add_test (tests, every_passed_limit_is_named);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (flammable_suite)
