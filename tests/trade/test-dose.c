/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "dose.h"

START_TEST (common_practice_by_size)
{
  /* Common practice, no source: fuel 1 L, intake 2 L for ¾-ton and one-ton; 2 L and 4 L above. */
  static const struct
  {
    UnsootSide side;
    gint64 gvwr_lb;
    gint64 ml;
    const char *rule;
  } cases[] = {
    { UNSOOT_SIDE_FUEL, 9900, 1000, "1 L: class 2b, ¾-ton" },
    { UNSOOT_SIDE_FUEL, 14000, 1000, "1 L: class 3, one-ton" },
    { UNSOOT_SIDE_FUEL, 14001, 2000, "2 L: class 4" },
    { UNSOOT_SIDE_INTAKE, 13300, 2000, "2 L: class 3, one-ton" },
    { UNSOOT_SIDE_INTAKE, 60000, 4000, "4 L: class 8" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      UnsootDoseAsk ask = { .side = cases[i].side, .gvwr_lb = cases[i].gvwr_lb };
      g_autoptr (UnsootDose) dose = unsoot_dose (&ask);

      ck_assert_int_eq (dose->origin, UNSOOT_DOSE_BY_SIZE);
      ck_assert_int_eq (dose->ml, cases[i].ml);
      ck_assert_str_eq (dose->rule, cases[i].rule);
      ck_assert_str_eq (dose->source, "common practice, no source");
    }
}
END_TEST

START_TEST (below_three_quarter_ton_there_is_no_default)
{
  UnsootDoseAsk ask = { .side = UNSOOT_SIDE_FUEL, .gvwr_lb = 8500 };
  g_autoptr (UnsootDose) dose = unsoot_dose (&ask);

  ck_assert_int_eq (dose->origin, UNSOOT_DOSE_NONE);
  ck_assert_int_eq (dose->ml, 0);
  ck_assert_str_eq (dose->rule, "no default for class 2a: the lead technician enters it");
}
END_TEST

START_TEST (the_familys_own_dose_wins)
{
  UnsootDoseAsk ask = { .side = UNSOOT_SIDE_INTAKE,
                        .family_name = "Hob 5.1",
                        .family_ml = 1250,
                        .family_size = UNSOOT_SIZE_SMALL,
                        .gvwr_lb = 60000 };
  g_autoptr (UnsootDose) dose = unsoot_dose (&ask);

  ck_assert_int_eq (dose->origin, UNSOOT_DOSE_BY_FAMILY);
  ck_assert_int_eq (dose->ml, 1250);
  ck_assert_str_eq (dose->rule, "1.25 L: the family's own dose, Hob 5.1");
  ck_assert_ptr_nonnull (strstr (dose->inputs, "GVWR 60000 lb"));
}
END_TEST

START_TEST (the_shops_rules_win_over_common_practice)
{
  const UnsootDoseRule rules[] = { { UNSOOT_SIDE_FUEL, UNSOOT_SIZE_LIGHT, 1500, "fluid's label" } };
  UnsootDoseAsk ask = {
    .side = UNSOOT_SIDE_FUEL, .family_size = UNSOOT_SIZE_LIGHT, .rules = rules, .n_rules = 1
  };
  g_autoptr (UnsootDose) by_rule = unsoot_dose (&ask);
  g_autoptr (UnsootDose) without = NULL;

  ck_assert_int_eq (by_rule->ml, 1500);
  ck_assert_str_eq (by_rule->rule, "1.5 L: ¾-ton and one-ton");
  ck_assert_str_eq (by_rule->source, "fluid's label");
  /* A rule that the shop took out is not brought back by a default. */
  ask.side = UNSOOT_SIDE_INTAKE;
  without = unsoot_dose (&ask);
  ck_assert_int_eq (without->origin, UNSOOT_DOSE_NONE);
}
END_TEST

START_TEST (size_of_the_vehicle_before_size_of_the_family)
{
  UnsootDoseAsk ask
      = { .side = UNSOOT_SIDE_FUEL, .family_size = UNSOOT_SIZE_LIGHT, .gvwr_lb = 19500 };
  g_autoptr (UnsootDose) by_weight = unsoot_dose (&ask);
  g_autoptr (UnsootDose) by_family = NULL;
  g_autoptr (UnsootDose) unknown = NULL;

  ck_assert_int_eq (by_weight->size, UNSOOT_SIZE_HEAVY);
  ck_assert_int_eq (by_weight->ml, 2000);
  ask.gvwr_lb = 0;
  by_family = unsoot_dose (&ask);
  ck_assert_int_eq (by_family->ml, 1000);
  ask.family_size = UNSOOT_SIZE_UNKNOWN;
  unknown = unsoot_dose (&ask);
  ck_assert_int_eq (unknown->origin, UNSOOT_DOSE_NONE);
}
END_TEST

START_TEST (volumes_in_words)
{
  static const struct
  {
    gint64 ml;
    const char *words;
  } cases[] = { { 0, "0 mL" },      { 750, "750 mL" }, { 946, "946 mL" },   { 1000, "1 L" },
                { 1050, "1.05 L" }, { 1500, "1.5 L" }, { 1234, "1234 mL" }, { 4000, "4 L" } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = unsoot_dose_volume_words (cases[i].ml);
      ck_assert_str_eq (words, cases[i].words);
    }
}
END_TEST

static Suite *
dose_suite (void)
{
  Suite *suite = suite_create ("dose");
  TCase *tcase = tcase_create ("dose");

  tcase_add_test (tcase, common_practice_by_size);
  tcase_add_test (tcase, below_three_quarter_ton_there_is_no_default);
  tcase_add_test (tcase, the_familys_own_dose_wins);
  tcase_add_test (tcase, the_shops_rules_win_over_common_practice);
  tcase_add_test (tcase, size_of_the_vehicle_before_size_of_the_family);
  tcase_add_test (tcase, volumes_in_words);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (dose_suite)
