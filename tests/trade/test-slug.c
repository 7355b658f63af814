/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "slug.h"
#include "trade-error.h"

static const UnsootSlug colours[] = {
  { 3, "red", "Red" },
  { 7, "deep-blue", "Deep blue" },
  { 9, "G", "Green, kept as a capital" },
  { 0, NULL, NULL },
};

START_TEST (both_ways)
{
  int value = -1;

  ck_assert_str_eq (unsoot_slug_of (colours, 7), "deep-blue");
  ck_assert_str_eq (unsoot_slug_words (colours, 3), "Red");
  ck_assert (unsoot_slug_find (colours, "deep-blue", &value));
  ck_assert_int_eq (value, 7);
}
END_TEST

START_TEST (unknown_is_null_or_false)
{
  int value = -1;

  ck_assert_ptr_null (unsoot_slug_of (colours, 0));
  ck_assert_ptr_null (unsoot_slug_words (colours, 0));
  ck_assert (!unsoot_slug_find (colours, "Red", &value));
  ck_assert (!unsoot_slug_find (colours, NULL, &value));
  ck_assert_int_eq (value, -1);
}
END_TEST

START_TEST (parse_forgives_case_and_names_what_is_wrong)
{
  g_autoptr (GError) error = NULL;
  int value = -1;

  ck_assert (unsoot_slug_parse (colours, "a colour", " RED ", &value, &error));
  ck_no_error (error);
  ck_assert_int_eq (value, 3);
  ck_assert (unsoot_slug_parse (colours, "a colour", "G", &value, &error));
  ck_assert_int_eq (value, 9);
  ck_assert (!unsoot_slug_parse (colours, "a colour", "rot", &value, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN));
  ck_assert_str_eq (error->message, "“rot” is not a colour; it can be one of: red, deep-blue, G");
  g_clear_error (&error);
  ck_assert (!unsoot_slug_parse (colours, "a colour", NULL, &value, &error));
  ck_assert_ptr_nonnull (error);
}
END_TEST

static Suite *
slug_suite (void)
{
  Suite *suite = suite_create ("slug");
  TCase *tcase = tcase_create ("table");

  tcase_add_test (tcase, both_ways);
  tcase_add_test (tcase, unknown_is_null_or_false);
  tcase_add_test (tcase, parse_forgives_case_and_names_what_is_wrong);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (slug_suite)
