/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "clock-text.h"
#include "suite.h"
#include "trade-error.h"

/* Hours and minutes as ISO 8601 writes a time of the day; 24:00 is its end (the 2004 edition). */

START_TEST (times_that_are_read)
{
  static const struct
  {
    const char *text;
    int minute;
  } times[] = { { "00:00", 0 },      { "7:30", 450 },   { "07:30", 450 },
                { " 17:05 ", 1025 }, { "23:59", 1439 }, { "24:00", 1440 } };
  GError *error = NULL;
  int minute;

  for (gsize i = 0; i < G_N_ELEMENTS (times); i++)
    {
      ck_assert (unsoot_clock_parse (times[i].text, &minute, &error));
      ck_assert_int_eq (minute, times[i].minute);
    }
}
END_TEST

START_TEST (what_is_no_time)
{
  static const char *const texts[]
      = { "", "7", "7.30", "07:60", "24:01", "25:00", "-1:00", "7:3", "07:30:00", "noon" };
  GError *error = NULL;
  int minute = -1;

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      ck_assert (!unsoot_clock_parse (texts[i], &minute, &error));
      ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID));
      g_clear_error (&error);
    }
  ck_assert_int_eq (minute, -1);
}
END_TEST

START_TEST (times_as_they_are_written)
{
  g_autofree char *morning = unsoot_clock_text (450), *end = unsoot_clock_text (1440);

  ck_assert_str_eq (morning, "07:30");
  ck_assert_str_eq (end, "24:00");
}
END_TEST

static Suite *
clock_text_suite (void)
{
  Suite *suite = suite_create ("clock text");
  TCase *tcase = tcase_create ("times");

  tcase_add_test (tcase, times_that_are_read);
  tcase_add_test (tcase, what_is_no_time);
  tcase_add_test (tcase, times_as_they_are_written);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (clock_text_suite)
