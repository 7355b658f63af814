/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "stop-happening.h"

/* Common practice, no source: which order of stopping fits what has struck. */

START_TEST (each_page_records_what_it_is_for)
{
  for (int page = 0; page < UNSOOT_STOP_PAGES; page++)
    ck_assert_int_eq (unsoot_stop_page_of (unsoot_stop_page_happening ((UnsootStopPage) page)),
                      page);
  ck_assert_int_eq (unsoot_stop_page_happening (UNSOOT_STOP_PAGE_ORDINARY), UNSOOT_HAPPENING_STOP);
  ck_assert_int_eq (unsoot_stop_page_happening (UNSOOT_STOP_PAGE_STALLED), UNSOOT_HAPPENING_STALL);
}
END_TEST

START_TEST (other_happenings_find_their_page)
{
  ck_assert_int_eq (unsoot_stop_page_of (UNSOOT_HAPPENING_BURST_HOSE), UNSOOT_STOP_PAGE_LEAK);
  ck_assert_int_eq (unsoot_stop_page_of (UNSOOT_HAPPENING_LOST_AIR), UNSOOT_STOP_PAGE_ORDINARY);
  ck_assert_int_eq (unsoot_stop_page_of (UNSOOT_HAPPENING_CO_ALARM), UNSOOT_STOP_PAGE_ORDINARY);
}
END_TEST

static Suite *
stop_happening_suite (void)
{
  Suite *suite = suite_create ("stop-happening");
  TCase *pages = tcase_create ("pages");

  tcase_add_test (pages, each_page_records_what_it_is_for);
  tcase_add_test (pages, other_happenings_find_their_page);
  suite_add_tcase (suite, pages);
  return suite;
}

UNSOOT_TEST_MAIN (stop_happening_suite)
