/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "conflict.h"

#include <string.h>

#define DAY unsoot_day (2025, 11, 24) /* a Monday, by any calendar */

static gint64
at (int hour, int minute)
{
  UnsootLocal local = { DAY, hour, minute, 59 };
  return unsoot_wall_minute (&local);
}

static const UnsootOpening openings[]
    = { { 1, 8 * 60, 12 * 60 }, { 1, 13 * 60, 17 * 60 }, { 2, 8 * 60, 17 * 60 } };
static const UnsootNamed v7 = { 7, "Adapter V-07" };

static UnsootSlot
candidate (void)
{
  return (UnsootSlot){ .title = "job 2417",
                       .starts = at (8, 30),
                       .ends = at (10, 10),
                       .bay = { 2, "Bay 2" },
                       .machine = { 1, "Cart A" },
                       .technician = { 5, "Ines" },
                       .items = &v7,
                       .n_items = 1 };
}

static void
check_one (const UnsootSlot *slot, const UnsootDiary *diary, UnsootConflictKind kind,
           const char *sentence)
{
  g_autoptr (GArray) found = unsoot_conflict_find (slot, diary);
  ck_assert_uint_eq (found->len, 1);
  ck_assert_int_eq (g_array_index (found, UnsootConflict, 0).kind, kind);
  ck_assert_str_eq (g_array_index (found, UnsootConflict, 0).sentence, sentence);
}

static void
check_none (const UnsootSlot *slot, const UnsootDiary *diary)
{
  g_autoptr (GArray) found = unsoot_conflict_find (slot, diary);
  ck_assert_msg (found->len == 0, "%s",
                 found->len ? g_array_index (found, UnsootConflict, 0).sentence : "");
}

START_TEST (what_is_shared_is_named)
{
  UnsootSlot slot = candidate ();
  UnsootSlot other = { .id = 9, .title = "job 2411", .starts = at (10, 0), .ends = at (11, 15) };
  UnsootDiary diary = { .slots = &other, .n_slots = 1, .openings = openings, .n_openings = 3 };
  check_none (&slot, &diary);
  other.bay.id = 2;
  check_one (&slot, &diary, UNSOOT_CONFLICT_BAY,
             "Bay 2 is taken by job 2411, 24 Nov 2025 10:00 to 11:15.");
  other.bay.id = 3;
  other.machine.id = 1;
  check_one (&slot, &diary, UNSOOT_CONFLICT_MACHINE,
             "Cart A is taken by job 2411, 24 Nov 2025 10:00 to 11:15.");
  other.machine.id = 0;
  other.technician.id = 5;
  check_one (&slot, &diary, UNSOOT_CONFLICT_TECHNICIAN,
             "Ines is taken by job 2411, 24 Nov 2025 10:00 to 11:15.");
  other.technician.id = 0;
  other.items = &v7;
  other.n_items = 1;
  check_one (&slot, &diary, UNSOOT_CONFLICT_ADAPTER,
             "Adapter V-07 is taken by job 2411, 24 Nov 2025 10:00 to 11:15.");
  other.starts = slot.ends; /* one ends as the other starts */
  check_none (&slot, &diary);
  other.starts = at (8, 0);
  slot.id = 9; /* itself, before it was moved */
  check_none (&slot, &diary);
}
END_TEST

START_TEST (shut_hours_and_holidays_are_named)
{
  UnsootSlot slot = candidate ();
  UnsootHoliday holiday = { DAY, "Founders' day" };
  UnsootDiary diary = { .openings = openings, .n_openings = 3 };
  slot.ends = at (12, 30);
  check_one (&slot, &diary, UNSOOT_CONFLICT_CLOSED,
             "24 Nov 2025 08:30 to 12:30 is outside opening hours; on Monday the shop is open "
             "08:00–12:00, 13:00–17:00.");
  slot.ends = at (12, 0);
  check_none (&slot, &diary);
  diary.holidays = &holiday;
  diary.n_holidays = 1;
  check_one (&slot, &diary, UNSOOT_CONFLICT_HOLIDAY, "24 Nov 2025 is a holiday: Founders' day.");
  diary.n_holidays = 0;
  slot.starts += 2 * UNSOOT_DAY_MINUTES;
  slot.ends += 2 * UNSOOT_DAY_MINUTES;
  check_one (&slot, &diary, UNSOOT_CONFLICT_CLOSED,
             "26 Nov 2025 08:30 to 12:00: the shop is shut on Wednesday.");
}
END_TEST

START_TEST (what_is_away_or_short_is_named)
{
  UnsootSlot slot = candidate ();
  UnsootAway away = { 7, UNSOOT_AWAY_LOAN, at (9, 0), "Osier Garage" };
  UnsootShort fluid = { "Intake fluid R", 500 };
  UnsootDiary diary = { .openings = openings, .n_openings = 3, .aways = &away, .n_aways = 1 };
  check_one (&slot, &diary, UNSOOT_CONFLICT_LOAN,
             "Adapter V-07 is on loan to Osier Garage, back 24 Nov 2025 09:00.");
  away.until = slot.starts;
  check_none (&slot, &diary);
  away.why = UNSOOT_AWAY_INSPECTION;
  away.until = G_MAXINT64;
  check_one (&slot, &diary, UNSOOT_CONFLICT_INSPECTION,
             "Adapter V-07 is under inspection, nobody noted until when.");
  diary.n_aways = 0;
  diary.shorts = &fluid;
  diary.n_shorts = 1;
  check_one (&slot, &diary, UNSOOT_CONFLICT_FLUID,
             "Intake fluid R is 0.5 L short for this booking.");
}
END_TEST

START_TEST (all_that_stands_against_it_is_listed)
{
  UnsootSlot slot = candidate ();
  UnsootSlot other = candidate ();
  UnsootDiary diary = { .slots = &other, .n_slots = 1 };
  g_autoptr (GArray) found = unsoot_conflict_find (&slot, &diary);
  ck_assert_uint_eq (found->len, 5);
}
END_TEST

START_TEST (free_starts_come_earliest_first)
{
  UnsootSlot slot = candidate (); /* 100 minutes */
  UnsootSlot other
      = { .id = 9, .title = "job", .starts = at (8, 0), .ends = at (9, 5), .bay = { 2, "Bay 2" } };
  UnsootShort fluid = { "Intake fluid R", 500 };
  UnsootDiary diary = { .slots = &other,
                        .n_slots = 1,
                        .openings = openings,
                        .n_openings = 3,
                        .shorts = &fluid,
                        .n_shorts = 1 };
  g_autoptr (GArray) starts = unsoot_conflict_free_starts (&slot, &diary, DAY, 0);
  /* 09:15 to 10:15 before noon (10:20 is the last that fits), 13:00 to 15:15 after. */
  ck_assert_uint_eq (starts->len, 5 + 10);
  ck_assert_int_eq (g_array_index (starts, gint64, 0), at (9, 15));
  ck_assert_int_eq (g_array_index (starts, gint64, 4), at (10, 15));
  ck_assert_int_eq (g_array_index (starts, gint64, 5), at (13, 0));
  ck_assert_int_eq (g_array_index (starts, gint64, 14), at (15, 15));
  g_autoptr (GArray) three = unsoot_conflict_free_starts (&slot, &diary, DAY, 3);
  ck_assert_uint_eq (three->len, 3);
  g_autoptr (GArray) shut = unsoot_conflict_free_starts (&slot, &diary, DAY + 2, 0);
  ck_assert_uint_eq (shut->len, 0);
}
END_TEST

/* Minute by minute: may this slot work in this very minute? */
static gboolean
minute_is_free (const UnsootSlot *slot, const UnsootDiary *diary, gint64 minute)
{
  int of_day = (int) (minute % UNSOOT_DAY_MINUTES), day = (int) (minute / UNSOOT_DAY_MINUTES);
  gboolean open = FALSE;
  for (gsize i = 0; i < diary->n_openings; i++)
    open |= diary->openings[i].weekday == (day + 6) % 7 + 1 && of_day >= diary->openings[i].opens
            && of_day < diary->openings[i].closes;
  for (gsize i = 0; i < diary->n_holidays; i++)
    open &= diary->holidays[i].day != day;
  for (gsize i = 0; i < diary->n_aways; i++)
    open &= minute >= diary->aways[i].until || diary->aways[i].item != slot->items[0].id;
  for (gsize i = 0; i < diary->n_slots; i++)
    {
      const UnsootSlot *o = &diary->slots[i];
      if (minute < o->starts || minute >= o->ends || o->id == slot->id)
        continue;
      open &= o->bay.id != slot->bay.id && o->technician.id != slot->technician.id
              && (o->machine.id == 0 || o->machine.id != slot->machine.id)
              && o->items[0].id != slot->items[0].id;
    }
  return open;
}

static UnsootSlot
random_slot (GRand *rand, const UnsootNamed *items)
{
  UnsootSlot slot = { .id = g_rand_int_range (rand, 1, 9), .title = "job" };
  slot.starts = at (0, 0) + g_rand_int_range (rand, 6 * 60, 18 * 60);
  slot.ends = slot.starts + g_rand_int_range (rand, 1, 200);
  slot.bay = (UnsootNamed){ g_rand_int_range (rand, 1, 5), "bay" };
  slot.machine = (UnsootNamed){ g_rand_int_range (rand, 0, 4), "machine" };
  slot.technician = (UnsootNamed){ g_rand_int_range (rand, 1, 5), "technician" };
  slot.items = &items[g_rand_int_range (rand, 0, 5)];
  slot.n_items = 1;
  return slot;
}

/* A start is free exactly where each of its minutes is. Openings don't touch, so
 * minutes can't bridge a break. */
START_TEST (starts_agree_with_counting_minutes)
{
  static const UnsootNamed items[] = { { 1, "a" }, { 2, "b" }, { 3, "c" }, { 4, "d" }, { 5, "e" } };
  g_autoptr (GRand) rand = g_rand_new_with_seed (24112025);
  guint free_starts = 0, taken_starts = 0;
  for (int round = 0; round < 300; round++)
    {
      UnsootSlot others[8], slot = random_slot (rand, items);
      UnsootHoliday holiday = { DAY + g_rand_int_range (rand, 0, 8), "holiday" };
      UnsootAway away = { g_rand_int_range (rand, 1, 6), UNSOOT_AWAY_LOAN,
                          at (0, 0) + g_rand_int_range (rand, 0, 1440), NULL };
      UnsootDiary diary = {
        others, (gsize) g_rand_int_range (rand, 0, 9), openings, 3, &holiday, 1, &away, 1, NULL, 0
      };
      for (int i = 0; i < 8; i++)
        others[i] = random_slot (rand, items);
      g_autoptr (GArray) starts = unsoot_conflict_free_starts (&slot, &diary, DAY, 0);
      guint next = 0;
      for (gint64 start = at (0, 0); start < at (24, 0); start += 15)
        {
          gboolean is_free = TRUE;
          for (gint64 m = start; m < start + slot.ends - slot.starts && is_free; m++)
            is_free = minute_is_free (&slot, &diary, m);
          gboolean listed = next < starts->len && g_array_index (starts, gint64, next) == start;
          ck_assert_int_eq (listed, is_free);
          next += listed;
          free_starts += is_free;
          taken_starts += !is_free;
        }
      ck_assert_uint_eq (next, starts->len);
    }
  ck_assert_uint_gt (free_starts, 1000);
  ck_assert_uint_gt (taken_starts, 1000);
}
END_TEST

static Suite *
conflict_suite (void)
{
  Suite *suite = suite_create ("conflict");
  TCase *tests = tcase_create ("conflict");
  tcase_add_test (tests, what_is_shared_is_named);
  tcase_add_test (tests, shut_hours_and_holidays_are_named);
  tcase_add_test (tests, what_is_away_or_short_is_named);
  tcase_add_test (tests, all_that_stands_against_it_is_listed);
  tcase_add_test (tests, free_starts_come_earliest_first);
  tcase_add_test (tests, starts_agree_with_counting_minutes);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (conflict_suite)
