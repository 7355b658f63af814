/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>

#include "trade-error.h"
#include "unit-text.h"

START_TEST (numbers_as_people_type_them)
{
  static const struct
  {
    const char *text;
    double value;
  } cases[] = {
    { "8", 8 },
    { " 8.5 ", 8.5 },
    { "8,5", 8.5 },
    { ".5", 0.5 },
    { "0,125", 0.125 },
    { "0.125", 0.125 },
    { "1,25", 1.25 },
    { "12,3456", 12.3456 },
    { "1 200", 1200 },
    { "1\u202f200,5", 1200.5 },
    { "1,200.5", 1200.5 },
    { "1.200,5", 1200.5 },
    { "1,234,567", 1234567 },
    { "1.234.567,8", 1234567.8 },
    { "1234,567", 1234.567 },
    { "1/2", 0.5 },
    { "1 1/2", 1.5 },
    { "½", 0.5 },
    { "2½", 2.5 },
    { "1 ¾", 1.75 },
    { "-3", -3 },
    { "\u22123,5", -3.5 },
    { "+4", 4 },
    { "- 2", -2 },
    { "-0", 0 },
    { "007", 7 },
    { "5.", 5 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = -99;

      ck_assert_msg (unsoot_number_parse (cases[i].text, &value, &error), "%s", cases[i].text);
      ck_no_error (error);
      ck_assert_msg (value == cases[i].value, "%s is %.17g", cases[i].text, value);
    }
}
END_TEST

START_TEST (what_is_no_number)
{
  static const char *const cases[] = { "",      " ",   "psi",      "1.2.3", "1,200,5",
                                       "--3",   "+-3", "1/0",      "1/",    "/2",
                                       "1 3/2", ",",   "1e5",      "0x10",  "nan",
                                       "inf",   "8 8", "1,23,456", "8 x",   "12345678901234567890",
                                       "\xff" };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      double value = -99;

      ck_assert_msg (!unsoot_number_parse (cases[i], &value, &error), "%s is %g", cases[i], value);
      ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
      ck_assert (value == -99);
    }
}
END_TEST

START_TEST (thousand_or_decimal_is_asked_back)
{
  g_autoptr (GError) error = NULL;
  double value = -99;

  ck_assert (!unsoot_number_parse ("1,200", &value, &error));
  ck_assert_str_eq (error->message, "“1,200” can be read in two ways; type 1200 or 1.2000");
  g_clear_error (&error);
  ck_assert (!unsoot_number_parse ("-12.500", &value, &error));
  ck_assert_str_eq (error->message, "“12.500” can be read in two ways; type 12500 or 12.5000");
  /* Both answers are read. */
  ck_assert (unsoot_number_parse ("12500", &value, NULL) && value == 12500);
  ck_assert (unsoot_number_parse ("12.5000", &value, NULL) && value == 12.5);
}
END_TEST

/* A comma before three digits groups: CLDR, locale en, decimal pattern #,##0.###, group
 * "," (from memory). That a meter shows tenths at most: common practice, no source. */
START_TEST (a_meter_counts_in_tenths)
{
  static const struct
  {
    const char *text;
    double value;
  } cases[] = { { "84,210", 84210 },     { "1,200", 1200 },   { "1,284,210", 1284210 },
                { "84,210.5", 84210.5 }, { "84 210", 84210 }, { "84210", 84210 },
                { "84210,5", 84210.5 },  { "0,500", 0.5 },    { "12,34", 12.34 } };
  double value = -99;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      UnsootTyped typed = { 0 };

      ck_assert_msg (unsoot_meter_parse (cases[i].text, &value, &error), "%s", cases[i].text);
      ck_no_error (error);
      ck_assert_double_eq (value, cases[i].value);
      ck_assert (unsoot_typed_parse (cases[i].text, UNSOOT_QUANTITY_DISTANCE, UNSOOT_UNIT_MI,
                                     &typed, &error));
      ck_assert_double_eq (typed.value, cases[i].value);
    }
  ck_assert (!unsoot_meter_parse ("84.210", &value, NULL));
  ck_assert (!unsoot_meter_parse ("84,21O", &value, NULL));
}
END_TEST

START_TEST (other_units_ask_back_still)
{
  static const struct
  {
    const char *text;
    UnsootQuantity quantity;
    gboolean read;
  } cases[] = { { "84,210 mi", UNSOOT_QUANTITY_DISTANCE, TRUE },
                { "84,210 km", UNSOOT_QUANTITY_DISTANCE, TRUE },
                { "4,210 h", UNSOOT_QUANTITY_TIME, TRUE },
                { "84.210 km", UNSOOT_QUANTITY_DISTANCE, FALSE },
                { "4,210 s", UNSOOT_QUANTITY_TIME, FALSE },
                { "1,200 kPa", UNSOOT_QUANTITY_PRESSURE, FALSE },
                { "1,500 L", UNSOOT_QUANTITY_VOLUME, FALSE } };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      UnsootTyped typed = { 0 };
      const gboolean read
          = unsoot_typed_parse (cases[i].text, cases[i].quantity, UNSOOT_UNIT_NONE, &typed, &error);

      ck_assert_msg (read == cases[i].read, "%s", cases[i].text);
      if (!read)
        ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
    }
}
END_TEST

static void
check_typed (const char *text, UnsootQuantity quantity, UnsootUnit assumed, double value,
             UnsootUnit unit, double si)
{
  g_autoptr (GError) error = NULL;
  UnsootTyped typed = { 0 };

  ck_assert_msg (unsoot_typed_parse (text, quantity, assumed, &typed, &error), "%s", text);
  ck_no_error (error);
  ck_assert_double_eq (typed.value, value);
  ck_assert_int_eq (typed.unit, unit);
  ck_near (typed.si, si, 1e-6);
}

START_TEST (values_with_and_without_unit)
{
  /* Factors: NIST SP 811, appendix B.8 */
  check_typed ("8 psi", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_KPA, 8, UNSOOT_UNIT_PSI,
               55158.058345346888);
  check_typed ("40", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, 40, UNSOOT_UNIT_PSI,
               275790.29172673444);
  check_typed ("-5 inHg", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, -5, UNSOOT_UNIT_INHG,
               -16931.945);
  check_typed ("1/2gal", UNSOOT_QUANTITY_VOLUME, UNSOOT_UNIT_L, 0.5, UNSOOT_UNIT_GAL,
               0.001892705892);
  check_typed ("1,5 L", UNSOOT_QUANTITY_VOLUME, UNSOOT_UNIT_QT, 1.5, UNSOOT_UNIT_L, 0.0015);
  check_typed ("2.5 1/m", UNSOOT_QUANTITY_ABSORPTION, UNSOOT_UNIT_NONE, 2.5, UNSOOT_UNIT_PER_M,
               2.5);
  check_typed ("800 1/min", UNSOOT_QUANTITY_SPEED, UNSOOT_UNIT_NONE, 800, UNSOOT_UNIT_RPM, 800);
  check_typed ("120 500 mi", UNSOOT_QUANTITY_DISTANCE, UNSOOT_UNIT_KM, 120500, UNSOOT_UNIT_MI,
               193925952.0);
  check_typed ("35%", UNSOOT_QUANTITY_PERCENT, UNSOOT_UNIT_NONE, 35, UNSOOT_UNIT_PERCENT, 35);
  check_typed ("−40 °F", UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_CELSIUS, -40,
               UNSOOT_UNIT_FAHRENHEIT, -40);
}
END_TEST

static void
check_refused (const char *text, UnsootQuantity quantity, UnsootUnit assumed, int code,
               const char *part)
{
  g_autoptr (GError) error = NULL;
  UnsootTyped typed = { .value = 77 };

  ck_assert_msg (!unsoot_typed_parse (text, quantity, assumed, &typed, &error), "%s", text);
  ck_assert_msg (g_error_matches (error, UNSOOT_TRADE_ERROR, code), "%s", error->message);
  ck_assert_msg (strstr (error->message, part) != NULL, "%s", error->message);
  ck_assert_double_eq (typed.value, 77);
}

START_TEST (refusals_name_what_is_wrong)
{
  check_refused ("eight psi", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, UNSOOT_TRADE_ERROR_INVALID,
                 "“eight psi” is not a number");
  check_refused ("8 pis", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, UNSOOT_TRADE_ERROR_UNKNOWN,
                 "“pis” does not measure a pressure; use one of: Pa, kPa, MPa");
  check_refused ("8 gal", UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_PSI, UNSOOT_TRADE_ERROR_UNKNOWN,
                 "“gal” does not measure a pressure");
  check_refused ("8", UNSOOT_QUANTITY_VOLUME, UNSOOT_UNIT_NONE, UNSOOT_TRADE_ERROR_UNKNOWN,
                 "Say the unit too, one of: m³, L, mL, gal, qt, fl oz");
  check_refused ("-1 L", UNSOOT_QUANTITY_VOLUME, UNSOOT_UNIT_L, UNSOOT_TRADE_ERROR_RANGE,
                 "“-1 L” is below zero; that can't be a volume");
  check_refused ("-300 c", UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_NONE, UNSOOT_TRADE_ERROR_RANGE,
                 "colder than anything");
}
END_TEST

START_TEST (volumes_are_rounded_once_to_ml)
{
  static const struct
  {
    const char *text;
    gint64 ml;
  } cases[] = {
    /* NIST SP 811: qt 946.352946 mL, gal 3785.411784 mL, fl oz 29.5735… mL */
    { "1 qt", 946 },   { "2 qt", 1893 }, { "1/2 gal", 1893 },  { "1 gal", 3785 },
    { "1 fl oz", 30 }, { "1", 1000 },    { "0,75", 750 },      { "250 ml", 250 },
    { "0.5 mL", 1 },   { "0", 0 },       { "1 1/2 qt", 1420 },
  };
  g_autoptr (GError) error = NULL;
  UnsootTyped typed = { 0 };
  gint64 ml = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      ck_assert (unsoot_volume_parse (cases[i].text, UNSOOT_UNIT_L, &typed, &ml, &error));
      ck_assert_msg (ml == cases[i].ml, "%s is %d mL", cases[i].text, (int) ml);
    }
  ck_assert (!unsoot_volume_parse ("99999999 gal", UNSOOT_UNIT_L, &typed, &ml, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
}
END_TEST

START_TEST (what_is_shown_can_be_typed_again)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1500);

  for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
    for (int i = 0; i < 50; i++)
      {
        UnsootUnit unit = (UnsootUnit) u;
        UnsootTyped typed = { 0 };
        double value = (double) g_rand_int_range (rand, 0, 99999) / 100.0;
        g_autofree char *text = unsoot_unit_format (unsoot_unit_to_si (unit, value), unit, 2);

        ck_assert_msg (
            unsoot_typed_parse (text, unsoot_unit_quantity (unit), UNSOOT_UNIT_NONE, &typed, NULL),
            "%s", text);
        ck_assert_int_eq (typed.unit, unit);
        ck_near (typed.value, value, 0.006);
      }
}
END_TEST

static Suite *
unit_text_suite (void)
{
  Suite *suite = suite_create ("unit-text");
  TCase *tcase = tcase_create ("typed");

  tcase_add_test (tcase, numbers_as_people_type_them);
  tcase_add_test (tcase, what_is_no_number);
  tcase_add_test (tcase, thousand_or_decimal_is_asked_back);
  tcase_add_test (tcase, a_meter_counts_in_tenths);
  tcase_add_test (tcase, other_units_ask_back_still);
  tcase_add_test (tcase, values_with_and_without_unit);
  tcase_add_test (tcase, refusals_name_what_is_wrong);
  tcase_add_test (tcase, volumes_are_rounded_once_to_ml);
  tcase_add_test (tcase, what_is_shown_can_be_typed_again);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (unit_text_suite)
