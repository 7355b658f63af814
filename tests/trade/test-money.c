/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "money.h"
#include "trade-error.h"

#include <string.h>

typedef struct
{
  const char *text;
  const char *currency;
  UnsootMoneyStyle style;
  gint64 amount;
} Typed;

/* Minor units from ISO 4217, list one. */
START_TEST (decimals_follow_iso_4217)
{
  static const char *const none[] = { "BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG",
                                      "RWF", "UGX", "UYI", "VND", "VUV", "XAF", "XOF", "XPF" };
  static const char *const three[] = { "BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND" };
  static const char *const two[] = { "USD", "EUR", "CAD", "MXN", "HUF", "MRU", "UGS" };
  for (gsize i = 0; i < G_N_ELEMENTS (none); i++)
    ck_assert_int_eq (unsoot_currency_decimals (none[i]), 0);
  for (gsize i = 0; i < G_N_ELEMENTS (three); i++)
    ck_assert_int_eq (unsoot_currency_decimals (three[i]), 3);
  for (gsize i = 0; i < G_N_ELEMENTS (two); i++)
    ck_assert_int_eq (unsoot_currency_decimals (two[i]), 2);
  ck_assert_int_eq (unsoot_currency_decimals ("CLF"), 4);
  ck_assert_int_eq (unsoot_currency_decimals ("UYW"), 4);
  ck_assert (unsoot_currency_is_code ("USD"));
  ck_assert (!unsoot_currency_is_code ("usd"));
  ck_assert (!unsoot_currency_is_code ("US"));
  ck_assert (!unsoot_currency_is_code (NULL));
}
END_TEST

/* EN 16931-1, examples to the rules of rounding: 1460.50 × 25 % = 365.125 → 365.13;
 * 908.91 × 21 % → 190.87; −156435.885 → −156435.89; 132 × 15.24 / 12 = 167.64. */
START_TEST (rounding_is_half_away_from_zero)
{
  gint64 result;
  ck_assert (unsoot_money_rate (146050, 25000, &result, NULL));
  ck_assert_int_eq (result, 36513);
  ck_assert (unsoot_money_rate (-146050, 25000, &result, NULL));
  ck_assert_int_eq (result, -36513);
  ck_assert (unsoot_money_rate (90891, 21000, &result, NULL));
  ck_assert_int_eq (result, 19087);
  ck_assert (unsoot_money_ratio (-156435885, 1, 10, &result, NULL));
  ck_assert_int_eq (result, -15643589);
  ck_assert (unsoot_money_ratio (1524, 132000, 12000, &result, NULL));
  ck_assert_int_eq (result, 16764);
  ck_assert (unsoot_money_times (333, 1500, &result, NULL));
  ck_assert_int_eq (result, 500); /* 499.5 */
  ck_assert (unsoot_money_ratio (1, 1, -2, &result, NULL));
  ck_assert_int_eq (result, -1);
}
END_TEST

START_TEST (overflow_is_reported)
{
  g_autoptr (GError) error = NULL;
  gint64 result = 42;
  ck_assert (!unsoot_money_times (G_MAXINT64, 1001, &result, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
  ck_assert_int_eq (result, 42);
  ck_assert (unsoot_money_times (G_MAXINT64, 1000, &result, NULL));
  ck_assert (result == G_MAXINT64);
  ck_assert (unsoot_money_ratio (G_MININT64, G_MININT64, G_MININT64, &result, NULL));
  ck_assert (result == G_MININT64);
  ck_assert (!unsoot_money_ratio (G_MININT64, 1, -1, &result, NULL));
  ck_assert (!unsoot_money_add (G_MAXINT64, 1, &result, NULL));
  ck_assert (!unsoot_money_add (G_MININT64, -1, &result, NULL));
  ck_assert (unsoot_money_add (-3, 5, &result, NULL));
  ck_assert_int_eq (result, 2);
}
END_TEST

START_TEST (typed_amounts_are_read)
{
  static const Typed cases[] = {
    { "1,234.50", "USD", UNSOOT_MONEY_POINT, 123450 },
    { "1.234,50", "EUR", UNSOOT_MONEY_COMMA, 123450 },
    { "1,234", "USD", UNSOOT_MONEY_POINT, 123400 },
    { " $ 12 ", "USD", UNSOOT_MONEY_POINT, 1200 },
    { "-$12.5", "USD", UNSOOT_MONEY_POINT, -1250 },
    { "$-12.5", "USD", UNSOOT_MONEY_POINT, -1250 },
    { "12.50 usd", "USD", UNSOOT_MONEY_POINT, 1250 },
    { "\u2212"
      "0,05\u00a0€",
      "EUR", UNSOOT_MONEY_COMMA, -5 },
    { "1 234 567,8", "EUR", UNSOOT_MONEY_COMMA, 123456780 },
    { "1’234.50", "CHF", UNSOOT_MONEY_POINT, 123450 },
    { ".5", "USD", UNSOOT_MONEY_POINT, 50 },
    { "7.", "USD", UNSOOT_MONEY_POINT, 700 },
    { "1.234", "KWD", UNSOOT_MONEY_POINT, 1234 },
    { "1,234", "JPY", UNSOOT_MONEY_POINT, 1234 },
    { "0", "USD", UNSOOT_MONEY_POINT, 0 },
    { "92233720368547758.07", "USD", UNSOOT_MONEY_POINT, G_MAXINT64 },
    { "-92233720368547758.08", "USD", UNSOOT_MONEY_POINT, G_MININT64 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 amount = -1;
      gboolean read
          = unsoot_money_parse (cases[i].text, cases[i].currency, cases[i].style, &amount, &error);
      ck_assert_msg (read, "%s: %s", cases[i].text, error ? error->message : "");
      ck_assert_msg (amount == cases[i].amount, "%s: %" G_GINT64_FORMAT, cases[i].text, amount);
    }
}
END_TEST

/* Each is refused with a sentence that holds the given words. */
START_TEST (typed_nonsense_is_refused)
{
  static const char *const cases[][2] = {
    { "1.234,50", "decimal comma" },
    { "12,34", "two ways" },
    { "1234,567", "two ways" },
    { "1.234", "two ways" },
    { ",123", "two ways" },
    { "1.2345", "more decimals" },
    { "1.2.3", "more than one decimal sign" },
    { "", "not an amount" },
    { "-", "not an amount" },
    { ".", "not an amount" },
    { "--5", "not an amount" },
    { "12 EUR", "not an amount" },
    { "twelve", "not an amount" },
    { "1e3", "not an amount" },
    { "\xff", "not an amount" },
    { "92233720368547758.08", "too large" },
    { "99999999999999999999999", "too large" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      gint64 amount = 77;
      ck_assert_msg (!unsoot_money_parse (cases[i][0], "USD", UNSOOT_MONEY_POINT, &amount, &error),
                     "%s was read", cases[i][0]);
      ck_assert_msg (strstr (error->message, cases[i][1]) != NULL, "%s: %s", cases[i][0],
                     error->message);
      ck_assert (error->domain == UNSOOT_TRADE_ERROR);
      ck_assert_int_eq (amount, 77);
      ck_assert (g_utf8_validate (error->message, -1, NULL));
    }
}
END_TEST

static void
check_text (char *text, const char *expected)
{
  ck_assert_str_eq (text, expected);
  g_free (text);
}

START_TEST (amounts_are_written)
{
  check_text (unsoot_money_format (123450, "USD", UNSOOT_MONEY_POINT), "$1,234.50");
  check_text (unsoot_money_format (-5, "USD", UNSOOT_MONEY_POINT), "\u2212$0.05");
  check_text (unsoot_money_format (-123450, "EUR", UNSOOT_MONEY_COMMA), "\u22121.234,50\u00a0€");
  check_text (unsoot_money_format (1234500, "KWD", UNSOOT_MONEY_POINT), "1,234.500\u00a0KWD");
  check_text (unsoot_money_format (1234567, "JPY", UNSOOT_MONEY_POINT), "¥1,234,567");
  check_text (unsoot_money_format (0, "CAD", UNSOOT_MONEY_POINT), "0.00\u00a0CAD");
  check_text (unsoot_money_plain (-123450, "USD"), "-1234.50");
  check_text (unsoot_money_plain (G_MININT64, "USD"), "-92233720368547758.08");
  check_text (unsoot_money_plain (7, "JPY"), "7");
}
END_TEST

/* What is written is read back as the same amount, in every style and currency. */
START_TEST (writing_and_reading_agree)
{
  static const char *const currencies[] = { "USD", "EUR", "JPY", "KWD", "CLF", "CAD" };
  g_autoptr (GRand) rand = g_rand_new_with_seed (20250114);
  for (int i = 0; i < 20000; i++)
    {
      guint64 bits = (guint64) g_rand_int (rand) << 32 | g_rand_int (rand);
      gint64 amount = (gint64) bits >> g_rand_int_range (rand, 0, 63);
      const char *currency = currencies[g_rand_int_range (rand, 0, G_N_ELEMENTS (currencies))];
      UnsootMoneyStyle style = g_rand_boolean (rand) ? UNSOOT_MONEY_POINT : UNSOOT_MONEY_COMMA;
      g_autofree char *text = unsoot_money_format (amount, currency, style);
      gint64 back = 0;
      g_autoptr (GError) error = NULL;
      unsoot_money_parse (text, currency, style, &back, &error);
      ck_no_error (error);
      ck_assert_msg (back == amount, "%s", text);
    }
}
END_TEST

static Suite *
money_suite (void)
{
  Suite *suite = suite_create ("money");
  TCase *tests = tcase_create ("money");
  tcase_add_test (tests, decimals_follow_iso_4217);
  tcase_add_test (tests, rounding_is_half_away_from_zero);
  tcase_add_test (tests, overflow_is_reported);
  tcase_add_test (tests, typed_amounts_are_read);
  tcase_add_test (tests, typed_nonsense_is_refused);
  tcase_add_test (tests, amounts_are_written);
  tcase_add_test (tests, writing_and_reading_agree);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (money_suite)
