/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "format.h"
#include "job-row.h"
#include "job-stops.h"
#include "new-shop.h"
#include "suite.h"
#include "trail.h"

/* 2026-03-04 09:40 at UTC−7, a Wednesday (checked against a calendar). */
#define NOW G_GINT64_CONSTANT (1772642400)

static GTimeZone *
zone (void)
{
  return g_time_zone_new_identifier ("-07:00");
}

static void
reads (char *text, const char *expected)
{
  ck_assert_str_eq (text, expected);
  g_free (text);
}

START_TEST (moments)
{
  g_autoptr (GTimeZone) here = zone ();

  reads (unsoot_format_moment (NOW, NOW, here), "today 09:40");
  reads (unsoot_format_moment (NOW + 86400, NOW, here), "tomorrow 09:40");
  reads (unsoot_format_moment (NOW + 9 * 86400, NOW, here), "in 9 days 09:40");
  reads (unsoot_format_moment (0, NOW, here), "–");
  reads (unsoot_format_moment_near (NOW + 9 * 86400, NOW, here), "in 9 days");
  reads (unsoot_format_from_to (NOW, NOW + 5400, NOW, here), "today 09:40–11:10");
  reads (unsoot_format_from_to (NOW, NOW + 86400, NOW, here), "today 09:40–tomorrow 09:40");
  reads (unsoot_format_stamp (NOW - 3600, NOW, here), "08:40");
  reads (unsoot_format_stamp (NOW - 2 * 86400, NOW, here), "2 Mar");
  reads (unsoot_format_stamp (NOW - 400 * 86400, NOW, here), "28 Jan 2025");
  reads (unsoot_format_exact (NOW, here), "Wednesday 4 Mar 2026, 09:40");
  reads (unsoot_format_iso_day (NOW, here), "2026-03-04");
}
END_TEST

START_TEST (days)
{
  reads (unsoot_format_day ("2026-03-13", "2026-03-04"), "in 9 days");
  reads (unsoot_format_day ("2026-03-03", "2026-03-04"), "yesterday");
  reads (unsoot_format_day ("2027-11-14", "2026-03-04"), "14 Nov 2027");
  reads (unsoot_format_day (NULL, "2026-03-04"), "–");
  reads (unsoot_format_day ("soon", "2026-03-04"), "soon");
  reads (unsoot_format_exact_day ("2026-03-04"), "Wednesday 4 Mar 2026");
}
END_TEST

START_TEST (amounts)
{
  reads (unsoot_format_litres (1000), "1 L");
  reads (unsoot_format_litres (1500), "1.5 L");
  reads (unsoot_format_litres (946), "0.946 L");
  reads (unsoot_format_litres (-250), "−0.25 L");
  reads (unsoot_format_number (-0.001, 1), "0");
  reads (unsoot_format_number (10, 0), "10");
  reads (unsoot_format_number (-52.4, 0), "−52");
  reads (unsoot_format_span (25 * 60), "25 min");
  reads (unsoot_format_span (100 * 60), "1 h 40 min");
  reads (unsoot_format_span (2 * 3600), "2 h");
  reads (unsoot_format_span (3 * 86400), "3 days");
  reads (unsoot_format_with_unit ("1", "L<"), "1 <span alpha=\"65%\">L&lt;</span>");
  reads (unsoot_format_title_markup ("A & B", TRUE), "<b>A &amp; B</b>");
  reads (unsoot_format_title_markup ("T4 5.1 · unit 12 · plate <7>", FALSE),
         "T4 5.1\n<span size=\"small\" alpha=\"72%\">unit 12 · plate &lt;7&gt;</span>");
}
END_TEST

static GPtrArray *
history (const char *const *slugs)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_job_status_row_free);

  for (int i = 0; slugs[i] != NULL; i++)
    {
      UnsootJobStatusRow *row = unsoot_job_status_row_new ();
      row->status = g_strdup (slugs[i]);
      row->at = NOW + i;
      g_ptr_array_add (rows, row);
    }
  return rows;
}

START_TEST (stops_on_the_path)
{
  const char *const slugs[] = { "quoted", "arrived", "in-bay", NULL };
  g_autoptr (GPtrArray) rows = history (slugs);
  UnsootJobStop stops[UNSOOT_MAX_STOPS];

  ck_assert_uint_eq (unsoot_job_stops ("in-bay", rows, stops), 7);
  ck_assert_int_eq (stops[0].state, UNSOOT_STOP_PASSED);
  ck_assert_int_eq (stops[0].at, NOW);
  ck_assert_int_eq (stops[1].state, UNSOOT_STOP_SKIPPED);
  ck_assert_int_eq (stops[3].state, UNSOOT_STOP_HERE);
  ck_assert_int_eq (stops[3].at, NOW + 2);
  ck_assert_int_eq (stops[4].state, UNSOOT_STOP_AHEAD);
  ck_assert_int_eq (stops[6].status, UNSOOT_JOB_PAID);
}
END_TEST

START_TEST (stops_off_the_path)
{
  const char *const slugs[] = { "quoted", "booked", "arrived", "in-bay", "stopped", NULL };
  g_autoptr (GPtrArray) rows = history (slugs);
  UnsootJobStop stops[UNSOOT_MAX_STOPS];

  ck_assert_uint_eq (unsoot_job_stops ("stopped", rows, stops), 8);
  ck_assert_int_eq (stops[3].state, UNSOOT_STOP_PASSED);
  ck_assert_int_eq (stops[4].status, UNSOOT_JOB_STOPPED);
  ck_assert_int_eq (stops[4].state, UNSOOT_STOP_OFF);
  ck_assert_int_eq (stops[4].at, NOW + 4);
  ck_assert_int_eq (stops[5].state, UNSOOT_STOP_AHEAD);
  ck_assert_uint_eq (unsoot_job_stops ("lost", rows, stops), 0);
}
END_TEST

/* A booking that was dropped takes the job back to quoted. */
START_TEST (stops_after_a_step_back)
{
  const char *const slugs[] = { "quoted", "booked", "quoted", NULL };
  g_autoptr (GPtrArray) rows = history (slugs);
  UnsootJobStop stops[UNSOOT_MAX_STOPS];

  unsoot_job_stops ("quoted", rows, stops);
  ck_assert_int_eq (stops[0].state, UNSOOT_STOP_HERE);
  ck_assert_int_eq (stops[0].at, NOW + 2);
  ck_assert_int_eq (stops[1].state, UNSOOT_STOP_AHEAD);
  ck_assert_int_eq (stops[1].at, 0);
}
END_TEST

START_TEST (the_way_back)
{
  UnsootTrail *trail = unsoot_trail_new ();

  ck_assert_ptr_null (unsoot_trail_back (trail));
  unsoot_trail_go (trail, "today", 0);
  unsoot_trail_go (trail, "jobs", 0);
  unsoot_trail_go (trail, "job", 7);
  unsoot_trail_go (trail, "job", 7);
  ck_assert_str_eq (unsoot_trail_back (trail)->slug, "jobs");
  ck_assert (unsoot_trail_can_back (trail));
  ck_assert_str_eq (unsoot_trail_back (trail)->slug, "today");
  ck_assert (!unsoot_trail_can_back (trail));
  unsoot_trail_free (trail);
}
END_TEST

START_TEST (initials)
{
  reads (unsoot_new_shop_initials ("Mara Quillen"), "MQ");
  reads (unsoot_new_shop_initials ("  élodie  van den Berg"), "ÉVD");
  reads (unsoot_new_shop_initials (""), "");
}
END_TEST

static Suite *
desk_words_suite (void)
{
  Suite *suite = suite_create ("desk words");
  TCase *tcase = tcase_create ("words");

  tcase_add_test (tcase, moments);
  tcase_add_test (tcase, days);
  tcase_add_test (tcase, amounts);
  tcase_add_test (tcase, stops_on_the_path);
  tcase_add_test (tcase, stops_off_the_path);
  tcase_add_test (tcase, stops_after_a_step_back);
  tcase_add_test (tcase, the_way_back);
  tcase_add_test (tcase, initials);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (desk_words_suite)
