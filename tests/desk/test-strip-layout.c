/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "strip-layout.h"
#include "suite.h"

/* Expected values are worked out by hand from the drawing: a strip 1,000 wide whose lanes begin
 * at 100, so that ten hours are 90 each. */

enum
{
  HOUR = 3600,
  MIDNIGHT = 1000 * HOUR + 1800 /* of a zone that is half an hour off */
};

static UnsootStripScale
ten_hours (void)
{
  return (UnsootStripScale){ .from = MIDNIGHT + 8 * HOUR,
                             .to = MIDNIGHT + 18 * HOUR,
                             .left = 100,
                             .top = 30,
                             .width = 1000,
                             .lane_height = 60,
                             .gap = 6 };
}

static UnsootStripSpan
span (double from, double to, int lane)
{
  return (UnsootStripSpan){ MIDNIGHT + (gint64) (from * HOUR), MIDNIGHT + (gint64) (to * HOUR),
                            lane };
}

START_TEST (hours_are_whole_and_hold_everything)
{
  const UnsootStripSpan spans[] = { span (6.25, 7, 0), span (16, 18.5, 1) };
  gint64 from, to;

  unsoot_strip_hours (MIDNIGHT, MIDNIGHT + 7 * HOUR + 1800, MIDNIGHT + 17 * HOUR, NULL, 0, &from,
                      &to);
  ck_assert_int_eq (from, MIDNIGHT + 7 * HOUR);
  ck_assert_int_eq (to, MIDNIGHT + 17 * HOUR);
  unsoot_strip_hours (MIDNIGHT, MIDNIGHT + 8 * HOUR, MIDNIGHT + 17 * HOUR, spans, 2, &from, &to);
  ck_assert_int_eq (from, MIDNIGHT + 6 * HOUR);
  ck_assert_int_eq (to, MIDNIGHT + 19 * HOUR);
}
END_TEST

START_TEST (hours_reach_over_midnight)
{
  const UnsootStripSpan night[] = { span (-1.5, 1, 0) };
  gint64 from, to;

  unsoot_strip_hours (MIDNIGHT, MIDNIGHT + 8 * HOUR, MIDNIGHT + 9 * HOUR, night, 1, &from, &to);
  ck_assert_int_eq (from, MIDNIGHT - 2 * HOUR);
  ck_assert_int_eq (to, MIDNIGHT + 9 * HOUR);
}
END_TEST

START_TEST (an_empty_span_is_an_hour)
{
  gint64 from, to;

  unsoot_strip_hours (MIDNIGHT, MIDNIGHT, MIDNIGHT, NULL, 0, &from, &to);
  ck_assert_int_eq (to - from, HOUR);
}
END_TEST

START_TEST (a_moment_has_its_place)
{
  const UnsootStripScale scale = ten_hours ();

  ck_near (unsoot_strip_x (&scale, MIDNIGHT + 8 * HOUR), 100, 1e-9);
  ck_near (unsoot_strip_x (&scale, MIDNIGHT + 13 * HOUR), 550, 1e-9);
  ck_near (unsoot_strip_x (&scale, MIDNIGHT + 18 * HOUR), 1000, 1e-9);
  ck_near (unsoot_strip_x (&scale, MIDNIGHT), 100, 1e-9);
  ck_near (unsoot_strip_x (&scale, MIDNIGHT + 30 * HOUR), 1000, 1e-9);
}
END_TEST

START_TEST (blocks_stand_in_their_lane)
{
  const UnsootStripScale scale = ten_hours ();
  const UnsootStripSpan spans[] = { span (9, 10, 0), span (10, 12, 0), span (9, 11, 2) };
  UnsootStripRect rects[3];

  unsoot_strip_place (&scale, spans, 3, rects);
  ck_near (rects[0].x, 190, 1e-9);
  ck_near (rects[0].width, 90, 1e-9);
  ck_near (rects[0].y, 30, 1e-9);
  ck_near (rects[0].height, 60, 1e-9);
  /* One that begins when the other ends does not overlap it. */
  ck_near (rects[1].height, 60, 1e-9);
  ck_near (rects[2].y, 30 + 2 * 66, 1e-9);
}
END_TEST

START_TEST (overlapping_blocks_share_the_lane)
{
  const UnsootStripScale scale = ten_hours ();
  const UnsootStripSpan spans[]
      = { span (9, 11, 0), span (10, 13, 0), span (12, 14, 0), span (15, 16, 0) };
  UnsootStripRect rects[4];

  unsoot_strip_place (&scale, spans, 4, rects);
  ck_near (rects[0].height, 27, 1e-9);
  ck_near (rects[1].height, 27, 1e-9);
  ck_near (rects[1].y, 30 + 27 + 6, 1e-9);
  /* The third is clear of the first and takes its storey again. */
  ck_near (rects[2].y, 30, 1e-9);
  ck_near (rects[2].height, 27, 1e-9);
  ck_near (rects[3].height, 60, 1e-9);
}
END_TEST

START_TEST (no_two_blocks_touch)
{
  const UnsootStripScale scale = ten_hours ();
  g_autoptr (GRand) random = g_rand_new_with_seed (7);

  for (int round = 0; round < 500; round++)
    {
      UnsootStripSpan spans[8];
      UnsootStripRect rects[8];

      for (int i = 0; i < 8; i++)
        {
          const double from = g_rand_double_range (random, 8, 17);
          spans[i] = span (from, from + g_rand_double_range (random, 0.3, 3),
                           g_rand_int_range (random, 0, 2));
        }
      unsoot_strip_place (&scale, spans, 8, rects);
      for (int i = 0; i < 8; i++)
        for (int j = 0; j < i; j++)
          {
            const gboolean beside = rects[i].x + rects[i].width <= rects[j].x + 1e-6
                                    || rects[j].x + rects[j].width <= rects[i].x + 1e-6
                                    || rects[i].y + rects[i].height <= rects[j].y + 1e-6
                                    || rects[j].y + rects[j].height <= rects[i].y + 1e-6;
            /* Beyond the edge blocks are cut to nothing, and nothing touches nothing. */
            ck_assert_msg (beside || rects[i].width < 1e-6 || rects[j].width < 1e-6,
                           "blocks %d and %d of round %d touch", i, j, round);
          }
    }
}
END_TEST

START_TEST (labels_of_hours_have_room)
{
  UnsootStripScale scale = ten_hours ();

  ck_assert_int_eq (unsoot_strip_hour_step (&scale, 48), 1);
  ck_assert_int_eq (unsoot_strip_hour_step (&scale, 120), 2);
  scale.width = 300;
  ck_assert_int_eq (unsoot_strip_hour_step (&scale, 48), 3);
  ck_assert_int_eq (unsoot_strip_hour_step (&scale, 1000), 12);
}
END_TEST

static Suite *
strip_layout_suite (void)
{
  Suite *suite = suite_create ("strip layout");
  TCase *tcase = tcase_create ("geometry");

  tcase_add_test (tcase, hours_are_whole_and_hold_everything);
  tcase_add_test (tcase, hours_reach_over_midnight);
  tcase_add_test (tcase, an_empty_span_is_an_hour);
  tcase_add_test (tcase, a_moment_has_its_place);
  tcase_add_test (tcase, blocks_stand_in_their_lane);
  tcase_add_test (tcase, overlapping_blocks_share_the_lane);
  tcase_add_test (tcase, no_two_blocks_touch);
  tcase_add_test (tcase, labels_of_hours_have_room);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (strip_layout_suite)
