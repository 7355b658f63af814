/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "stop-page.h"

#include <string.h>

/* The pages' texts are the trade's common practice, no source. */

static int
line_with (UnsootStopPage page, const char *words)
{
  for (guint i = 0; unsoot_stop_line (page, i); i++)
    if (strstr (unsoot_stop_line (page, i), words))
      return (int) i;
  ck_abort_msg ("no line of page %d says “%s”", (int) page, words);
  return -1;
}

/* The order of an ordinary stop: atomiser, air, engine, pump, line. */
START_TEST (an_ordinary_stop_has_its_order)
{
  static const char *const order[]
      = { "Atomiser off", "Air to zero", "Engine off", "Pump off", "before it is touched" };
  for (gsize i = 1; i < G_N_ELEMENTS (order); i++)
    ck_assert_int_lt (line_with (UNSOOT_STOP_PAGE_ORDINARY, order[i - 1]),
                      line_with (UNSOOT_STOP_PAGE_ORDINARY, order[i]));
}
END_TEST

START_TEST (involuntary_stops_say_what_matters)
{
  ck_assert_int_eq (line_with (UNSOOT_STOP_PAGE_RUNAWAY, "Everybody away"), 0);
  line_with (UNSOOT_STOP_PAGE_RUNAWAY, "rated plate");
  line_with (UNSOOT_STOP_PAGE_RUNAWAY, "CO2");
  ck_assert_ptr_nonnull (strstr (unsoot_stop_never (UNSOOT_STOP_PAGE_RUNAWAY), "hand"));
  ck_assert_ptr_nonnull (strstr (unsoot_stop_never (UNSOOT_STOP_PAGE_RUNAWAY), "rag"));
  ck_assert_int_eq (line_with (UNSOOT_STOP_PAGE_LEAK, "off together"), 0);
  line_with (UNSOOT_STOP_PAGE_LEAK, "everybody out");
  ck_assert_int_eq (line_with (UNSOOT_STOP_PAGE_STALLED, "Atomiser off"), 0);
  ck_assert_int_lt (line_with (UNSOOT_STOP_PAGE_STALLED, "Drain"),
                    line_with (UNSOOT_STOP_PAGE_STALLED, "start again"));
  for (int stop = 0; stop < UNSOOT_STOP_PAGES; stop++)
    {
      ck_assert_ptr_nonnull (unsoot_slug_words (unsoot_stop_pages, stop));
      ck_assert_ptr_nonnull (unsoot_stop_never ((UnsootStopPage) stop));
      ck_assert_ptr_null (unsoot_stop_line ((UnsootStopPage) stop, 7));
    }
}
END_TEST

START_TEST (a_lock_is_explained)
{
  guint n = 0;
  while (unsoot_lock_line (n))
    n++;
  ck_assert_uint_eq (n, 5);
  ck_assert_ptr_null (unsoot_lock_line (99));
}
END_TEST

static Suite *
stop_page_suite (void)
{
  Suite *suite = suite_create ("stop-page");
  TCase *tests = tcase_create ("stop-page");
  tcase_add_test (tests, an_ordinary_stop_has_its_order);
  tcase_add_test (tests, involuntary_stops_say_what_matters);
  tcase_add_test (tests, a_lock_is_explained);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (stop_page_suite)
