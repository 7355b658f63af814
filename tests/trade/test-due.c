/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "civil.h"
#include "due.h"

#include <math.h>
#include <string.h>

#define MILE 1609.344
#define HOUR 3600

static const UnsootMeter unread = { -1, NULL, 0, 0 };

static UnsootDue
next (const UnsootDueInterval *interval, const UnsootMeter *odometer, const UnsootMeter *hours)
{
  return unsoot_due_next (unsoot_day (2025, 1, 31), interval, odometer, hours, UNSOOT_UNIT_MI);
}

START_TEST (months_end_with_the_month)
{
  UnsootDueInterval interval = { 1, 0, 0 };
  g_auto (UnsootDue) due = next (&interval, &unread, &unread);
  ck_assert_int_eq (due.by, UNSOOT_DUE_MONTHS);
  ck_assert_int_eq (due.day, unsoot_day (2025, 2, 28));
  ck_assert_str_eq (due.sentence, "Due 28 Feb 2025: 1 month after the last service.");
}
END_TEST

/* Four readings on a line of 50 miles a day: 15,000 miles last 300 days; the last
 * reading is 60 days and 3,000 miles after the service, so 240 days are left. */
START_TEST (own_readings_give_the_rate)
{
  int service = unsoot_day (2025, 1, 31);
  UnsootMeterPoint points[4];
  for (int i = 0; i < 4; i++)
    points[i] = (UnsootMeterPoint){ service + 20 * i, (gint64) ((80000 + 1000 * i) * MILE) };
  UnsootMeter odometer = { points[0].value, points, 4, 999 };
  UnsootDueInterval interval = { 24, (gint64) (15000 * MILE) - 5, 0 };
  g_auto (UnsootDue) due = next (&interval, &odometer, &unread);
  ck_assert_int_eq (due.by, UNSOOT_DUE_DISTANCE);
  ck_assert_int_eq (due.day, service + 300);
  ck_assert (!due.from_fleet);
  ck_near (due.rate, 50 * MILE, 0.1);
  ck_assert_str_eq (due.sentence, "Due about 27 Nov 2025: 15000 mi after the last service, at 50.0 "
                                  "mi a day by its own readings.");
}
END_TEST

START_TEST (two_readings_leave_it_to_the_fleet)
{
  int service = unsoot_day (2025, 1, 31);
  const UnsootMeterPoint points[] = { { service, 1000000 }, { service + 10, 2000000 } };
  UnsootMeter odometer = { 1000000, points, 2, 50000 };
  UnsootDueInterval interval = { 0, 3000000, 0 };
  g_auto (UnsootDue) due = next (&interval, &odometer, &unread);
  ck_assert (due.from_fleet);
  ck_assert_int_eq (due.day, service + 10 + 40);
  ck_assert_ptr_nonnull (strstr (due.sentence, "as like vehicles do"));
  odometer.fleet_rate = 0;
  g_auto (UnsootDue) none = next (&interval, &odometer, &unread);
  ck_assert_int_eq (none.by, UNSOOT_DUE_NEVER);
  ck_assert_int_eq (none.day, 0);
}
END_TEST

START_TEST (whichever_comes_first)
{
  int service = unsoot_day (2025, 1, 31);
  UnsootMeter odometer = { 0, NULL, 0, 1000 };
  UnsootMeter hours = { 0, NULL, 0, 2 * HOUR };
  const struct
  {
    UnsootDueInterval interval;
    UnsootDueBy by;
    int days;
  } cases[] = {
    { { 12, 400000, 1000 * HOUR }, UNSOOT_DUE_MONTHS, 365 },
    { { 12, 300000, 200 * HOUR }, UNSOOT_DUE_HOURS, 100 },
    { { 12, 90000, 200 * HOUR }, UNSOOT_DUE_DISTANCE, 90 },
    { { 0, 0, 201 * HOUR }, UNSOOT_DUE_HOURS, 101 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_auto (UnsootDue) due = next (&cases[i].interval, &odometer, &hours);
      ck_assert_int_eq (due.by, cases[i].by);
      ck_assert_int_eq (due.day, service + cases[i].days);
    }
}
END_TEST

START_TEST (what_is_over_is_due_since_it_was_seen)
{
  int service = unsoot_day (2025, 1, 31);
  const UnsootMeterPoint points[] = { { service + 40, 5000 * HOUR } };
  UnsootMeter hours = { 4000 * HOUR, points, 1, 3 * HOUR };
  UnsootDueInterval interval = { 12, 0, 500 * HOUR };
  g_auto (UnsootDue) due = next (&interval, &unread, &hours);
  ck_assert_int_eq (due.by, UNSOOT_DUE_HOURS);
  ck_assert_int_eq (due.day, service + 40);
  ck_assert_ptr_nonnull (strstr (due.sentence, "Due since 12 Mar 2025: 500 h since"));
}
END_TEST

START_TEST (nothing_to_go_by)
{
  UnsootDueInterval none = { 0, 0, 0 }, far = { 0, G_MAXINT64, 0 };
  UnsootMeter slow = { 0, NULL, 0, 1e-9 };
  g_auto (UnsootDue) due = next (&none, &unread, &unread);
  g_auto (UnsootDue) beyond = next (&far, &slow, &unread);
  ck_assert_int_eq (due.by, UNSOOT_DUE_NEVER);
  ck_assert_int_eq (beyond.by, UNSOOT_DUE_NEVER);
  ck_assert_ptr_nonnull (due.sentence);
}
END_TEST

/* A meter that stands still or runs backwards gives no rate of its own. */
START_TEST (a_still_meter_has_no_rate)
{
  const UnsootMeterPoint still[] = { { 10, 5 }, { 20, 5 }, { 30, 5 } };
  const UnsootMeterPoint one_day[] = { { 10, 5 }, { 10, 6 }, { 10, 7 } };
  gboolean fleet = TRUE;
  UnsootMeter meter = { 5, still, 3, 0 };
  ck_near (unsoot_due_rate (&meter, &fleet), 0, 1e-12);
  ck_assert (!fleet);
  meter.points = one_day;
  meter.fleet_rate = 7;
  ck_near (unsoot_due_rate (&meter, &fleet), 7, 1e-12);
  ck_assert (fleet);
}
END_TEST

/* Three readings 10 days apart: 0, 1100 and 2000 m. By hand: mean 1033⅓, slope 100 m a day, what is
 * left −33⅓, 66⅔, −33⅓, so a residual of √(100²·⅔) with one degree of freedom, for which t of 0.95
 * is 6.314 (NIST/SEMATECH e-Handbook, 1.3.6.7.2). The band of one more reading is the textbook's
 * s √(1 + 1/n + (x − x̄)²/Σ(x − x̄)²). */
START_TEST (window_is_the_band_turned_round)
{
  const int start = unsoot_day (2025, 1, 1);
  const UnsootMeterPoint points[] = { { start, 0 }, { start + 10, 1100 }, { start + 20, 2000 } };
  UnsootMeter meter = { 0, points, 3, 0 };
  const double x_mean = 10, x_spread = 200, residual = sqrt (100.0 * 100.0 * 2 / 3);
  int first, last;

  ck_assert (unsoot_due_window (&meter, 8000, start + 20, 0.9, &first, &last));
  ck_assert_int_gt (first, start + 20);
  ck_assert_int_gt (last, first);
  for (int i = 0; i < 2; i++)
    {
      const int sign = i == 0 ? 1 : -1, crossing = i == 0 ? first : last;
      double reached[2];

      for (int before = 0; before < 2; before++)
        {
          const double x = crossing - start - before;
          reached[before] = 3100.0 / 3 + 100 * (x - x_mean)
                            + sign * 6.314 * residual
                                  * sqrt (1 + 1.0 / 3 + (x - x_mean) * (x - x_mean) / x_spread);
        }
      ck_assert_msg (reached[0] >= 7999 && reached[1] < 8001, "%f, %f", reached[0], reached[1]);
    }
}
END_TEST

START_TEST (no_window_without_readings_or_ahead)
{
  const int start = unsoot_day (2025, 1, 1);
  const UnsootMeterPoint points[] = { { start, 0 }, { start + 10, 1100 }, { start + 20, 2000 } };
  UnsootMeter two = { 0, points, 2, 100 }, past = { 0, points, 3, 0 };
  int first, last;

  ck_assert (!unsoot_due_window (&two, 8000, start + 20, 0.9, &first, &last));
  ck_assert (!unsoot_due_window (&past, 1500, start + 20, 0.9, &first, &last));
}
END_TEST

static Suite *
due_suite (void)
{
  Suite *suite = suite_create ("due");
  TCase *tests = tcase_create ("due");
  tcase_add_test (tests, months_end_with_the_month);
  tcase_add_test (tests, own_readings_give_the_rate);
  tcase_add_test (tests, two_readings_leave_it_to_the_fleet);
  tcase_add_test (tests, whichever_comes_first);
  tcase_add_test (tests, what_is_over_is_due_since_it_was_seen);
  tcase_add_test (tests, nothing_to_go_by);
  tcase_add_test (tests, a_still_meter_has_no_rate);
  tcase_add_test (tests, window_is_the_band_turned_round);
  tcase_add_test (tests, no_window_without_readings_or_ahead);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (due_suite)
