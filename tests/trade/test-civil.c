/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include <string.h>
#include <time.h>

#include "civil.h"
#include "trade-error.h"

START_TEST (days_that_are_and_are_not)
{
  /* Gregorian rule, ISO 8601: 1900 and 2100 are no leap years, 2000 is one. */
  ck_assert_int_ne (unsoot_day (2000, 2, 29), 0);
  ck_assert_int_eq (unsoot_day (1900, 2, 29), 0);
  ck_assert_int_eq (unsoot_day (2100, 2, 29), 0);
  ck_assert_int_eq (unsoot_day (2025, 4, 31), 0);
  ck_assert_int_eq (unsoot_day (2025, 13, 1), 0);
  ck_assert_int_eq (unsoot_day (0, 1, 1), 0);
  ck_assert_int_eq (unsoot_day (2025, 1, 257), 0);
  ck_assert_int_eq (unsoot_day (1, 1, 1), 1);
  ck_assert_int_eq (unsoot_day (1970, 1, 1), UNSOOT_DAY_1970);
  ck_assert_int_eq (unsoot_day (9999, 12, 31), UNSOOT_DAY_MAX);
}
END_TEST

START_TEST (weekdays)
{
  /* 1970-01-01 was a Thursday (POSIX tm_wday 4), 2000-01-01 a Saturday (ISO 8601: 1999-W52-6). */
  ck_assert_int_eq (unsoot_day_weekday (unsoot_day (1970, 1, 1)), 4);
  ck_assert_int_eq (unsoot_day_weekday (unsoot_day (2000, 1, 1)), 6);
  ck_assert_int_eq (unsoot_day_weekday (unsoot_day (2000, 1, 2)), 7);
  ck_assert_int_eq (unsoot_day_weekday (unsoot_day (2000, 1, 3)), 1);
}
END_TEST

static void
check_months (const char *from, int months, const char *expected)
{
  int day = 0;
  g_autofree char *iso = NULL;

  ck_assert (unsoot_day_parse (from, &day, NULL));
  iso = unsoot_day_iso (unsoot_day_add_months (day, months));
  ck_assert_str_eq (iso, expected);
}

START_TEST (months_end_at_the_months_end)
{
  check_months ("2025-01-31", 1, "2025-02-28");
  check_months ("2024-01-31", 1, "2024-02-29");
  check_months ("2025-03-31", -1, "2025-02-28");
  check_months ("2025-11-30", 3, "2026-02-28");
  check_months ("2025-11-15", 14, "2027-01-15");
  check_months ("2024-02-29", -12, "2023-02-28");
  check_months ("2024-02-29", 48, "2028-02-29");
  check_months ("2025-01-10", 0, "2025-01-10");
  ck_assert_int_eq (unsoot_day_add_months (unsoot_day (9999, 12, 1), 1), 0);
  ck_assert_int_eq (unsoot_day_add_months (unsoot_day (1, 1, 1), -1), 0);
}
END_TEST

static void
check_refused (const char *iso, int code)
{
  g_autoptr (GError) error = NULL;
  int day = 7;

  ck_assert_msg (!unsoot_day_parse (iso, &day, &error), "%s", iso);
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, code));
  ck_assert_ptr_nonnull (strstr (error->message, iso));
  ck_assert_int_eq (day, 7);
}

START_TEST (dates_as_text)
{
  int day = 0;

  ck_assert (unsoot_day_parse ("2025-11-24", &day, NULL));
  ck_assert_int_eq (day, unsoot_day (2025, 11, 24));
  check_refused ("2025-02-30", UNSOOT_TRADE_ERROR_RANGE);
  check_refused ("0000-01-01", UNSOOT_TRADE_ERROR_RANGE);
  check_refused ("2025-00-10", UNSOOT_TRADE_ERROR_RANGE);
  check_refused ("24.11.2025", UNSOOT_TRADE_ERROR_INVALID);
  check_refused ("2025-1-1", UNSOOT_TRADE_ERROR_INVALID);
  check_refused ("2025-11-24 ", UNSOOT_TRADE_ERROR_INVALID);
  check_refused ("", UNSOOT_TRADE_ERROR_INVALID);

  g_autoptr (GError) error = NULL;
  ck_assert (!unsoot_day_parse ("2025-11-2\xff", &day, &error));
  ck_assert (g_utf8_validate (error->message, -1, NULL));
}
END_TEST

START_TEST (every_day_there_and_back)
{
  int previous = 0;

  for (int day = 1; day <= UNSOOT_DAY_MAX; day += 97)
    {
      g_autofree char *iso = unsoot_day_iso (day);
      int back = 0;

      ck_assert (unsoot_day_parse (iso, &back, NULL));
      ck_assert_int_eq (back, day);
      ck_assert_int_gt (back, previous);
      previous = back;
    }
}
END_TEST

static void
check_local (gint64 unix_seconds, int offset, const char *expected)
{
  UnsootLocal local = unsoot_local_from_unix (unix_seconds, offset);
  g_autofree char *iso = unsoot_day_iso (local.day);
  g_autofree char *text
      = g_strdup_printf ("%s %02d:%02d:%02d", iso, local.hour, local.minute, local.second);

  ck_assert_str_eq (text, expected);
  ck_assert_int_eq (unsoot_local_to_unix (&local, offset), unix_seconds);
}

START_TEST (known_moments)
{
  /* POSIX seconds since the Epoch: 2^31 − 1 and 10^9 */
  check_local (0, 0, "1970-01-01 00:00:00");
  check_local (2147483647, 0, "2038-01-19 03:14:07");
  check_local (1000000000, 0, "2001-09-09 01:46:40");
  check_local (-1, 0, "1969-12-31 23:59:59");
  check_local (0, -360, "1969-12-31 18:00:00");
  check_local (0, 330, "1970-01-01 05:30:00");
  check_local (1000000000, -480, "2001-09-08 17:46:40");
  ck_assert_int_eq (unsoot_local_from_unix (G_MAXINT64, 600).day, 0);
  ck_assert_int_eq (unsoot_local_from_unix (G_MININT64, -600).day, 0);
}
END_TEST

START_TEST (the_c_library_agrees)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1970);

  for (int i = 0; i < 5000; i++)
    {
      int offset = g_rand_int_range (rand, -12 * 60, 14 * 60);
      time_t moment = (time_t) g_rand_double_range (rand, -6e10, 2.5e11);
      time_t shifted = moment + offset * 60;
      UnsootLocal local = unsoot_local_from_unix (moment, offset);
      struct tm tm;

      gmtime_r (&shifted, &tm);
      ck_assert_int_eq (local.day, unsoot_day (tm.tm_year + 1900, tm.tm_mon + 1, tm.tm_mday));
      ck_assert_int_eq (local.hour * 3600 + local.minute * 60 + local.second,
                        tm.tm_hour * 3600 + tm.tm_min * 60 + tm.tm_sec);
      ck_assert_int_eq (unsoot_day_weekday (local.day) % 7, tm.tm_wday);
      ck_assert_int_eq (unsoot_local_to_unix (&local, offset), moment);
    }
}
END_TEST

static Suite *
civil_suite (void)
{
  Suite *suite = suite_create ("civil");
  TCase *tcase = tcase_create ("calendar");

  tcase_add_test (tcase, days_that_are_and_are_not);
  tcase_add_test (tcase, weekdays);
  tcase_add_test (tcase, months_end_at_the_months_end);
  tcase_add_test (tcase, dates_as_text);
  tcase_add_test (tcase, every_day_there_and_back);
  tcase_add_test (tcase, known_moments);
  tcase_add_test (tcase, the_c_library_agrees);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (civil_suite)
