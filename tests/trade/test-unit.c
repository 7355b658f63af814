/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <math.h>

#include "unit.h"

/* Within the last digits of a double. */
#define ck_same(value, expected) ck_near (value, expected, 1e-12 * fabs (expected))

START_TEST (published_factors)
{
  /* NIST SP 811 (2008), appendix B.8 */
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_PSI, 1), 6894.757293168361);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_BAR, 1), 1e5);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_INHG, 1), 3386.389);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_INH2O, 1), 249.0889);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_GAL, 1), 3.785411784e-3);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_QT, 1), 0.946352946e-3);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_FL_OZ, 1), 29.5735295625e-6);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_MI, 1), 1609.344);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_LB, 1), 0.45359237);
  ck_near (unsoot_unit_to_si (UNSOOT_UNIT_LB_MIN, 1), 7.559872833e-3, 1e-12);
  ck_same (unsoot_unit_to_si (UNSOOT_UNIT_CFM, 1), 4.719474e-4);
}
END_TEST

START_TEST (temperatures)
{
  /* NIST SP 811, B.8: t/°C = (t/°F − 32)/1.8, t/°C = T/K − 273.15 */
  ck_near (unsoot_unit_to_si (UNSOOT_UNIT_FAHRENHEIT, 212), 100.0, 1e-9);
  ck_near (unsoot_unit_to_si (UNSOOT_UNIT_FAHRENHEIT, -40), -40.0, 1e-9);
  ck_near (unsoot_unit_to_si (UNSOOT_UNIT_KELVIN, 273.15), 0.0, 1e-9);
  ck_near (unsoot_unit_from_si (UNSOOT_UNIT_FAHRENHEIT, 60), 140.0, 1e-9);
  ck_near (unsoot_unit_from_si (UNSOOT_UNIT_KELVIN, 20), 293.15, 1e-9);
}
END_TEST

START_TEST (every_unit_there_and_back)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (811);

  for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
    for (int i = 0; i < 200; i++)
      {
        double value = g_rand_double_range (rand, -1e6, 1e6);
        double si = unsoot_unit_to_si ((UnsootUnit) u, value);

        ck_near (unsoot_unit_from_si ((UnsootUnit) u, si), value, 1e-6);
      }
}
END_TEST

START_TEST (every_unit_is_found_by_slug_and_by_symbol)
{
  for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
    {
      UnsootUnit found = UNSOOT_UNIT_NONE;

      ck_assert (unsoot_unit_find (unsoot_unit_slug ((UnsootUnit) u), &found));
      ck_assert_int_eq (found, u);
      ck_assert_msg ((int) unsoot_unit_from_words (unsoot_unit_symbol (found)) == u, "%s",
                     unsoot_unit_symbol (found));
      ck_assert_ptr_nonnull (unsoot_quantity_words (unsoot_unit_quantity (found)));
    }
}
END_TEST

START_TEST (units_as_people_type_them)
{
  static const struct
  {
    const char *text;
    UnsootUnit unit;
  } cases[] = {
    { "PSI", UNSOOT_UNIT_PSI },        { "psig", UNSOOT_UNIT_PSI },
    { "Quarts", UNSOOT_UNIT_QT },      { "in Hg", UNSOOT_UNIT_INHG },
    { "fl. oz.", UNSOOT_UNIT_FL_OZ },  { "litres", UNSOOT_UNIT_L },
    { "° F", UNSOOT_UNIT_FAHRENHEIT }, { "℃", UNSOOT_UNIT_CELSIUS },
    { "m-1", UNSOOT_UNIT_PER_M },      { "1/m", UNSOOT_UNIT_PER_M },
    { "hrs.", UNSOOT_UNIT_H },         { "”H2O", UNSOOT_UNIT_INH2O },
    { "", UNSOOT_UNIT_NONE },          { "|", UNSOOT_UNIT_NONE },
    { "pa|kpa", UNSOOT_UNIT_NONE },    { "stone", UNSOOT_UNIT_NONE },
    { "p", UNSOOT_UNIT_NONE },         { "\xff", UNSOOT_UNIT_NONE },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    ck_assert_msg (unsoot_unit_from_words (cases[i].text) == cases[i].unit, "%s", cases[i].text);
}
END_TEST

static void
check_format (double si, UnsootUnit unit, int decimals, const char *expected)
{
  g_autofree char *text = unsoot_unit_format (si, unit, decimals);
  ck_assert_str_eq (text, expected);
}

START_TEST (fixed_decimals)
{
  check_format (8 * 6894.757293168361, UNSOOT_UNIT_PSI, 1, "8.0 psi");
  check_format (0.000946352946, UNSOOT_UNIT_QT, 2, "1.00 qt");
  check_format (0.002, UNSOOT_UNIT_ML, 0, "2000 mL");
  check_format (-17.7777777777, UNSOOT_UNIT_FAHRENHEIT, 0, "0 °F");
  check_format (-0.04, UNSOOT_UNIT_CELSIUS, 1, "0.0 °C");
  check_format (-0.06, UNSOOT_UNIT_CELSIUS, 1, "-0.1 °C");
  check_format (0.427252, UNSOOT_UNIT_PER_M, 3, "0.427 m⁻¹");
  check_format (3.5, UNSOOT_UNIT_NONE, 1, "3.5");
}
END_TEST

static Suite *
unit_suite (void)
{
  Suite *suite = suite_create ("unit");
  TCase *tcase = tcase_create ("units");

  tcase_add_test (tcase, published_factors);
  tcase_add_test (tcase, temperatures);
  tcase_add_test (tcase, every_unit_there_and_back);
  tcase_add_test (tcase, every_unit_is_found_by_slug_and_by_symbol);
  tcase_add_test (tcase, units_as_people_type_them);
  tcase_add_test (tcase, fixed_decimals);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (unit_suite)
