/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "reading.h"
#include "reading-change.h"

#include <math.h>
#include <string.h>

static const UnsootCondition warm_idle = { 2000, 20, 88, UNSOOT_EGR_SHUT, FALSE, 99000, 20 };

static UnsootReading
taken (double value)
{
  return (UnsootReading){ value, NAN, warm_idle };
}

static void
check_change (UnsootReadingKind kind, double before, double after, UnsootVerdict verdict)
{
  UnsootReading first = taken (before), second = taken (after);
  g_auto (UnsootReadingChange) change
      = unsoot_reading_change (kind, &first, &second, &unsoot_alike_usual);
  ck_assert_msg (change.verdict == verdict, "%s", change.sentence);
  ck_near (change.difference, after - before, 1e-12);
}

START_TEST (every_kind_is_whole)
{
  for (int i = 0; i < UNSOOT_READING_KINDS; i++)
    {
      UnsootReadingKind kind = (UnsootReadingKind) i;
      UnsootReadingFacts facts = unsoot_reading_facts (kind);
      int found = -1;
      ck_assert_ptr_nonnull (unsoot_slug_words (unsoot_reading_kinds, i));
      ck_assert (unsoot_slug_find (unsoot_reading_kinds, unsoot_slug_of (unsoot_reading_kinds, i),
                                   &found));
      ck_assert_int_eq (found, i);
      ck_assert (facts.shown != UNSOOT_UNIT_NONE);
      ck_assert (facts.tolerance > 0 || facts.relative > 0);
      ck_assert_uint_eq (facts.needs & facts.heeds, 0);
      ck_assert (g_str_has_suffix (facts.limits, "."));
    }
  ck_assert_int_eq (unsoot_reading_quantity (UNSOOT_READING_BOOST), UNSOOT_QUANTITY_PRESSURE);
  ck_assert_ptr_nonnull (
      strstr (unsoot_reading_facts (UNSOOT_READING_OPACITY).limits, "near zero whatever"));
}
END_TEST

/* The tolerance of a difference of two readings, each ± 3 and ± 4, is 5: the root
 * of the squares' sum (JCGM 100:2008, 5.1.2, uncorrelated). */
START_TEST (tolerances_add_by_their_squares)
{
  UnsootReading before = { 40, 3, warm_idle }, after = { 45, 4, warm_idle };
  g_auto (UnsootReadingChange) at_limit
      = unsoot_reading_change (UNSOOT_READING_OPACITY, &before, &after, &unsoot_alike_usual);
  ck_near (at_limit.tolerance, 5, 1e-12);
  ck_near (at_limit.percent, 12.5, 1e-12);
  ck_assert_int_eq (at_limit.verdict, UNSOOT_VERDICT_NO_CHANGE_SHOWN);
  after.value = 45.01;
  g_auto (UnsootReadingChange) beyond
      = unsoot_reading_change (UNSOOT_READING_OPACITY, &before, &after, &unsoot_alike_usual);
  ck_assert_int_eq (beyond.verdict, UNSOOT_VERDICT_WORSE);
}
END_TEST

START_TEST (each_direction_is_judged)
{
  check_change (UNSOOT_READING_OPACITY, 38, 22, UNSOOT_VERDICT_BETTER);
  check_change (UNSOOT_READING_OPACITY, 22, 38, UNSOOT_VERDICT_WORSE);
  check_change (UNSOOT_READING_AIR_2000, 0.040, 0.046, UNSOOT_VERDICT_BETTER);
  check_change (UNSOOT_READING_AIR_2000, 0.040, 0.041, UNSOOT_VERDICT_NO_CHANGE_SHOWN);
  check_change (UNSOOT_READING_EGR_ERROR, -9, 2, UNSOOT_VERDICT_BETTER);
  check_change (UNSOOT_READING_EGR_ERROR, 2, -9, UNSOOT_VERDICT_WORSE);
  check_change (UNSOOT_READING_EGR_ERROR, -4, 4.2, UNSOOT_VERDICT_NO_CHANGE_SHOWN);
  check_change (UNSOOT_READING_RAIL, 30e6, 90e6, UNSOOT_VERDICT_NO_DIRECTION);
  check_change (UNSOOT_READING_RAIL, 30e6, 30e6, UNSOOT_VERDICT_NO_CHANGE_SHOWN);
}
END_TEST

START_TEST (percent_of_nothing_is_none)
{
  UnsootReading before = taken (0), after = taken (5);
  g_auto (UnsootReadingChange) change
      = unsoot_reading_change (UNSOOT_READING_EGR_ERROR, &before, &after, &unsoot_alike_usual);
  ck_assert (isnan (change.percent));
  UnsootReading below = taken (-10);
  g_auto (UnsootReadingChange) rise
      = unsoot_reading_change (UNSOOT_READING_EGR_ERROR, &below, &after, &unsoot_alike_usual);
  ck_near (rise.percent, 150, 1e-9);
}
END_TEST

static void
check_unlike (UnsootReadingKind kind, UnsootCondition after, const char *words)
{
  g_autofree char *why = NULL;
  ck_assert (!unsoot_reading_alike (kind, &warm_idle, &after, &unsoot_alike_usual, &why));
  ck_assert_msg (strstr (why, words) != NULL, "%s", why);
}

static void
check_alike (UnsootReadingKind kind, UnsootCondition after)
{
  g_autofree char *why = NULL;
  ck_assert_msg (unsoot_reading_alike (kind, &warm_idle, &after, &unsoot_alike_usual, &why), "%s",
                 why);
}

START_TEST (unlike_readings_name_the_difference)
{
  UnsootCondition c = warm_idle;
  c.rpm = 2050;
  check_alike (UNSOOT_READING_AIR_2000, c);
  c.rpm = 2051;
  check_unlike (UNSOOT_READING_AIR_2000, c,
                "The engine speed was 2000 rpm before and 2051 rpm after; readings compare within "
                "50 rpm.");
  c = warm_idle;
  c.egr = UNSOOT_EGR_OPEN;
  check_unlike (UNSOOT_READING_AIR_2000, c, "shut before and open after");
  check_alike (UNSOOT_READING_OPACITY, c);
  c = warm_idle;
  c.regeneration = TRUE;
  check_unlike (UNSOOT_READING_DPF, c, "regeneration ran during the reading after");
  c = warm_idle;
  c.barometer = 97000;
  check_unlike (UNSOOT_READING_AIR_2000, c, "within 1.0 kPa");
  c = warm_idle;
  c.coolant = 93 + 1e-12; /* five degrees apart, as typed */
  check_alike (UNSOOT_READING_CRANK, c);
  c.coolant = 93.1;
  check_unlike (UNSOOT_READING_CRANK, c, "93.1 °C after");
  c.coolant = 60;
  check_unlike (UNSOOT_READING_CRANK, c, "60.0 °C after");
  check_alike (UNSOOT_READING_BOOST, c);
}
END_TEST

START_TEST (what_was_not_noted_is_named)
{
  UnsootCondition c = warm_idle;
  c.rpm = NAN;
  check_unlike (UNSOOT_READING_AIR_2000, c, "engine speed was not noted for the reading after");
  c = warm_idle;
  c.egr = UNSOOT_EGR_UNKNOWN;
  check_unlike (UNSOOT_READING_AIR_2000, c, "not noted after");
  c = warm_idle;
  c.barometer = c.ambient = NAN;
  check_alike (UNSOOT_READING_AIR_2000, c);
  UnsootCondition none = UNSOOT_CONDITION_UNKNOWN;
  g_autofree char *why = NULL;
  ck_assert (!unsoot_reading_alike (UNSOOT_READING_BOOST, &none, &none, &unsoot_alike_usual, &why));
  ck_assert_ptr_nonnull (strstr (why, "for neither"));
}
END_TEST

START_TEST (an_unlike_pair_shows_nothing)
{
  UnsootReading before = taken (38), after = taken (5);
  after.condition.coolant = 40;
  g_auto (UnsootReadingChange) change
      = unsoot_reading_change (UNSOOT_READING_OPACITY, &before, &after, &unsoot_alike_usual);
  ck_assert_int_eq (change.verdict, UNSOOT_VERDICT_NOT_COMPARABLE);
  ck_assert_ptr_nonnull (strstr (change.sentence, "Not comparable. The coolant temperature was"));
}
END_TEST

/* Swapping before and after swaps better and worse, and nothing else. */
START_TEST (verdicts_mirror)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1065);
  for (int i = 0; i < 20000; i++)
    {
      UnsootReadingKind kind = (UnsootReadingKind) g_rand_int_range (rand, 0, UNSOOT_READING_KINDS);
      UnsootReading a = taken (g_rand_double_range (rand, -20, 100)), b = a;
      b.value += g_rand_double_range (rand, -8, 8);
      b.tolerance = g_rand_boolean (rand) ? NAN : g_rand_double_range (rand, 0, 4);
      g_auto (UnsootReadingChange) there
          = unsoot_reading_change (kind, &a, &b, &unsoot_alike_usual);
      g_auto (UnsootReadingChange) back = unsoot_reading_change (kind, &b, &a, &unsoot_alike_usual);
      UnsootVerdict mirrored = there.verdict == UNSOOT_VERDICT_BETTER  ? UNSOOT_VERDICT_WORSE
                               : there.verdict == UNSOOT_VERDICT_WORSE ? UNSOOT_VERDICT_BETTER
                                                                       : there.verdict;
      ck_assert_int_eq (back.verdict, mirrored);
      ck_near (back.difference, -there.difference, 1e-12);
      ck_near (back.tolerance, there.tolerance, 1e-12);
      ck_assert (fabs (there.difference) <= there.tolerance
                     ? there.verdict == UNSOOT_VERDICT_NO_CHANGE_SHOWN
                     : TRUE);
    }
}
END_TEST

static Suite *
reading_suite (void)
{
  Suite *suite = suite_create ("reading");
  TCase *tests = tcase_create ("reading");
  tcase_add_test (tests, every_kind_is_whole);
  tcase_add_test (tests, tolerances_add_by_their_squares);
  tcase_add_test (tests, each_direction_is_judged);
  tcase_add_test (tests, percent_of_nothing_is_none);
  tcase_add_test (tests, unlike_readings_name_the_difference);
  tcase_add_test (tests, what_was_not_noted_is_named);
  tcase_add_test (tests, an_unlike_pair_shows_nothing);
  tcase_add_test (tests, verdicts_mirror);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (reading_suite)
