/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-layout.h"
#include "suite.h"

/* Expected values are worked out by hand from the drawing: a strip 1,000 wide whose lanes begin
 * at 100, so that ten hours are 90 each; lanes of 60 with 6 between them, from 30 down. */

enum
{
  HOUR = 3600,
  QUARTER = 900,
  MIDNIGHT = 1000 * HOUR + 1800
};

static const UnsootStripScale scale = { .from = MIDNIGHT + 8 * HOUR,
                                        .to = MIDNIGHT + 18 * HOUR,
                                        .left = 100,
                                        .top = 30,
                                        .width = 1000,
                                        .lane_height = 60,
                                        .gap = 6 };

static UnsootStripSpan
span (double from, double to, int lane)
{
  return (UnsootStripSpan){ MIDNIGHT + (gint64) (from * HOUR), MIDNIGHT + (gint64) (to * HOUR),
                            lane };
}

#define ck_span(found, from_hour, to_hour, its_lane)                                               \
  G_STMT_START                                                                                     \
  {                                                                                                \
    const UnsootStripSpan wanted = span (from_hour, to_hour, its_lane);                            \
    ck_assert_int_eq ((found).from, wanted.from);                                                  \
    ck_assert_int_eq ((found).to, wanted.to);                                                      \
    ck_assert_int_eq ((found).lane, wanted.lane);                                                  \
  }                                                                                                \
  G_STMT_END

START_TEST (a_point_is_a_moment)
{
  ck_assert_int_eq (unsoot_planner_time_at (&scale, 100), MIDNIGHT + 8 * HOUR);
  ck_assert_int_eq (unsoot_planner_time_at (&scale, 145), MIDNIGHT + 8 * HOUR + 1800);
  ck_assert_int_eq (unsoot_planner_time_at (&scale, 20), MIDNIGHT + 8 * HOUR);
  ck_assert_int_eq (unsoot_planner_time_at (&scale, 1200), MIDNIGHT + 18 * HOUR);
  /* There and back. */
  ck_assert_int_eq (unsoot_planner_time_at (&scale, unsoot_strip_x (&scale, MIDNIGHT + 11 * HOUR)),
                    MIDNIGHT + 11 * HOUR);
}
END_TEST

START_TEST (a_point_is_in_a_lane)
{
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 0), 0);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 30), 0);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 92), 0);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 94), 1);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 165), 2);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 3, 900), 2);
  ck_assert_int_eq (unsoot_planner_lane_at (&scale, 0, 50), -1);
}
END_TEST

START_TEST (what_is_taken_hold_of)
{
  const UnsootStripRect rects[] = { { 100, 30, 90, 60 }, { 300, 96, 30, 60 } };
  guint block = 9;

  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 99, 50, &block), UNSOOT_GRIP_NONE);
  ck_assert_uint_eq (block, 9);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 100, 30, &block), UNSOOT_GRIP_START);
  ck_assert_uint_eq (block, 0);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 107, 50, &block), UNSOOT_GRIP_START);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 108, 50, &block), UNSOOT_GRIP_BODY);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 181, 50, &block), UNSOOT_GRIP_BODY);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 182, 50, &block), UNSOOT_GRIP_END);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 190, 50, &block), UNSOOT_GRIP_NONE);
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 150, 90, &block), UNSOOT_GRIP_NONE);
  /* Too narrow for ends: anywhere moves it. */
  ck_assert_int_eq (unsoot_planner_hit (rects, 2, 301, 100, &block), UNSOOT_GRIP_BODY);
  ck_assert_uint_eq (block, 1);
}
END_TEST

START_TEST (quarters_of_the_shops_own_clock)
{
  ck_assert_int_eq (unsoot_planner_snap (MIDNIGHT + 449, MIDNIGHT), MIDNIGHT);
  ck_assert_int_eq (unsoot_planner_snap (MIDNIGHT + 450, MIDNIGHT), MIDNIGHT + QUARTER);
  ck_assert_int_eq (unsoot_planner_snap (MIDNIGHT - 449, MIDNIGHT), MIDNIGHT);
  ck_assert_int_eq (unsoot_planner_snap (MIDNIGHT - 500, MIDNIGHT), MIDNIGHT - QUARTER);
}
END_TEST

START_TEST (a_block_is_moved_whole)
{
  const UnsootStripSpan block = span (9, 10.5, 0);

  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_BODY, 20 * 60, 2, MIDNIGHT), 9.25, 10.75, 2);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_BODY, -10 * HOUR, 0, MIDNIGHT), 0, 1.5, 0);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_BODY, 20 * HOUR, 0, MIDNIGHT), 22.5, 24, 0);
  /* What began off the grid comes onto it, and keeps its length. */
  ck_span (unsoot_planner_pull (span (9.1, 10.6, 1), UNSOOT_GRIP_BODY, 900, 1, MIDNIGHT), 9.25,
           10.75, 1);
}
END_TEST

START_TEST (a_block_is_stretched)
{
  const UnsootStripSpan block = span (9, 10.5, 1);

  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_END, 900, 2, MIDNIGHT), 9, 10.75, 1);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_START, -900, 2, MIDNIGHT), 8.75, 10.5, 1);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_END, -5 * HOUR, 1, MIDNIGHT), 9, 9.25, 1);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_START, 5 * HOUR, 1, MIDNIGHT), 10.25, 10.5, 1);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_END, 20 * HOUR, 1, MIDNIGHT), 9, 24, 1);
  ck_span (unsoot_planner_pull (block, UNSOOT_GRIP_NONE, 900, 2, MIDNIGHT), 9, 10.5, 1);
}
END_TEST

static Suite *
planner_layout_suite (void)
{
  Suite *suite = suite_create ("planner layout");
  TCase *tcase = tcase_create ("geometry");

  tcase_add_test (tcase, a_point_is_a_moment);
  tcase_add_test (tcase, a_point_is_in_a_lane);
  tcase_add_test (tcase, what_is_taken_hold_of);
  tcase_add_test (tcase, quarters_of_the_shops_own_clock);
  tcase_add_test (tcase, a_block_is_moved_whole);
  tcase_add_test (tcase, a_block_is_stretched);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (planner_layout_suite)
