/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "weight-class.h"

/* 49 CFR 565.15, table II: the last pound of each class. */
static const struct
{
  gint64 limit;
  const char *slug;
} table_two[] = {
  { 3000, "A" },  { 4000, "B" },  { 5000, "C" },  { 6000, "D" },  { 7000, "E" },
  { 8000, "F" },  { 9000, "G" },  { 10000, "H" }, { 14000, "3" }, { 16000, "4" },
  { 19500, "5" }, { 26000, "6" }, { 33000, "7" },
};

START_TEST (limits_belong_to_the_class_below)
{
  gint64 previous = 0;

  for (gsize i = 0; i < G_N_ELEMENTS (table_two); i++)
    {
      UnsootWeightClass found = UNSOOT_WEIGHT_UNKNOWN;

      ck_assert_str_eq (unsoot_weight_class_slug (unsoot_weight_class (previous + 1)),
                        table_two[i].slug);
      ck_assert_str_eq (unsoot_weight_class_slug (unsoot_weight_class (table_two[i].limit)),
                        table_two[i].slug);
      ck_assert (unsoot_weight_class_find (table_two[i].slug, &found));
      ck_assert_int_eq (unsoot_weight_class_limit_lb (found), table_two[i].limit);
      previous = table_two[i].limit;
    }
  ck_assert_str_eq (unsoot_weight_class_slug (unsoot_weight_class (33001)), "8");
  ck_assert_int_eq (unsoot_weight_class_limit_lb (UNSOOT_WEIGHT_8), 0);
}
END_TEST

START_TEST (unknown_weight)
{
  UnsootWeightClass found = UNSOOT_WEIGHT_UNKNOWN;

  ck_assert_int_eq (unsoot_weight_class (0), UNSOOT_WEIGHT_UNKNOWN);
  ck_assert_int_eq (unsoot_weight_class (-5), UNSOOT_WEIGHT_UNKNOWN);
  ck_assert_ptr_null (unsoot_weight_class_slug (UNSOOT_WEIGHT_UNKNOWN));
  ck_assert_ptr_null (unsoot_weight_fhwa (0));
  ck_assert_ptr_null (unsoot_weight_words (0));
  ck_assert (!unsoot_weight_class_find ("2", &found));
  ck_assert_int_eq (unsoot_size_class (0), UNSOOT_SIZE_UNKNOWN);
}
END_TEST

START_TEST (highway_classes)
{
  /* FHWA vehicle weight classes: 2a 6,001–8,500, 2b 8,501–10,000 lb. */
  ck_assert_str_eq (unsoot_weight_fhwa (6000), "1");
  ck_assert_str_eq (unsoot_weight_fhwa (6001), "2a");
  ck_assert_str_eq (unsoot_weight_fhwa (8500), "2a");
  ck_assert_str_eq (unsoot_weight_fhwa (8501), "2b");
  ck_assert_str_eq (unsoot_weight_fhwa (10000), "2b");
  ck_assert_str_eq (unsoot_weight_fhwa (10001), "3");
  ck_assert_str_eq (unsoot_weight_fhwa (80000), "8");
}
END_TEST

START_TEST (words_and_sizes)
{
  g_autofree char *three_quarter = unsoot_weight_words (9900);
  g_autofree char *one_ton = unsoot_weight_words (13300);
  g_autofree char *six = unsoot_weight_words (25999);

  ck_assert_str_eq (three_quarter, "class 2b, ¾-ton");
  ck_assert_str_eq (one_ton, "class 3, one-ton"); /* from memory */
  ck_assert_str_eq (six, "class 6");
  /* Common practice, no source: doses begin at ¾-ton and change above one-ton. */
  ck_assert_int_eq (unsoot_size_class (8500), UNSOOT_SIZE_SMALL);
  ck_assert_int_eq (unsoot_size_class (8501), UNSOOT_SIZE_LIGHT);
  ck_assert_int_eq (unsoot_size_class (14000), UNSOOT_SIZE_LIGHT);
  ck_assert_int_eq (unsoot_size_class (14001), UNSOOT_SIZE_HEAVY);
}
END_TEST

START_TEST (size_slugs_both_ways)
{
  for (int s = UNSOOT_SIZE_UNKNOWN; s <= UNSOOT_SIZE_HEAVY; s++)
    {
      UnsootSizeClass back = UNSOOT_SIZE_UNKNOWN;

      ck_assert (unsoot_size_class_find (unsoot_size_class_slug ((UnsootSizeClass) s), &back));
      ck_assert_int_eq (back, s);
    }
  ck_assert_str_eq (unsoot_size_class_words (UNSOOT_SIZE_SMALL), "below ¾-ton");
}
END_TEST

static Suite *
weight_class_suite (void)
{
  Suite *suite = suite_create ("weight-class");
  TCase *tcase = tcase_create ("pounds");

  tcase_add_test (tcase, limits_belong_to_the_class_below);
  tcase_add_test (tcase, unknown_weight);
  tcase_add_test (tcase, highway_classes);
  tcase_add_test (tcase, words_and_sizes);
  tcase_add_test (tcase, size_slugs_both_ways);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (weight_class_suite)
