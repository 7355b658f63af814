/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "civil-words.h"

static void
check_near (int ahead, const char *expected)
{
  int today = unsoot_day (2025, 11, 24);
  g_autofree char *words = unsoot_day_near_words (today + ahead, today);

  ck_assert_str_eq (words, expected);
}

START_TEST (days_near_and_far)
{
  check_near (0, "today");
  check_near (1, "tomorrow");
  check_near (-1, "yesterday");
  check_near (2, "in 2 days");
  check_near (9, "in 9 days");
  check_near (30, "in 30 days");
  check_near (31, "25 Dec 2025");
  check_near (-30, "30 days ago");
  check_near (-31, "24 Oct 2025");
}
END_TEST

static void
check_moment (int year, int month, int day, int hour, int minute, const char *expected)
{
  UnsootLocal moment = { unsoot_day (year, month, day), hour, minute, 59 };
  UnsootLocal now = { unsoot_day (2025, 11, 24), 12, 0, 0 };
  g_autofree char *words = unsoot_moment_near_words (&moment, &now);

  ck_assert_str_eq (words, expected);
}

START_TEST (moments_near_and_far)
{
  check_moment (2025, 11, 24, 14, 30, "today 14:30");
  check_moment (2025, 11, 24, 8, 5, "today 08:05");
  check_moment (2025, 11, 23, 23, 59, "yesterday 23:59");
  check_moment (2025, 11, 25, 0, 0, "tomorrow 00:00");
  check_moment (2025, 12, 3, 10, 0, "in 9 days");
  check_moment (2025, 11, 22, 10, 0, "2 days ago");
  check_moment (2024, 5, 1, 10, 0, "1 May 2024");
}
END_TEST

START_TEST (exact)
{
  UnsootLocal moment = { unsoot_day (2026, 2, 3), 7, 4, 0 };
  g_autofree char *full = unsoot_moment_words (&moment);
  g_autofree char *brief = unsoot_day_short_words (moment.day);

  ck_assert_str_eq (full, "3 Feb 2026 07:04");
  ck_assert_str_eq (brief, "3 Feb");
  ck_assert_str_eq (unsoot_weekday_words (1), "Monday");
  ck_assert_str_eq (unsoot_weekday_words (7), "Sunday");
}
END_TEST

static Suite *
civil_words_suite (void)
{
  Suite *suite = suite_create ("civil-words");
  TCase *tcase = tcase_create ("words");

  tcase_add_test (tcase, days_near_and_far);
  tcase_add_test (tcase, moments_near_and_far);
  tcase_add_test (tcase, exact);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (civil_words_suite)
