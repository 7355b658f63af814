/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reckoned by hand from the opening hours and slots below: there is no source outside. */
#include "suite.h"

#include "free-start.h"

#include <string.h>

#define DAY unsoot_day (2025, 11, 24) /* a Monday, by any calendar */

static gint64
at (int hour, int minute)
{
  const UnsootLocal local = { DAY, hour, minute, 0 };
  return unsoot_wall_minute (&local);
}

static const UnsootOpening openings[] = { { 1, 8 * 60, 12 * 60 }, { 1, 13 * 60, 17 * 60 } };
static const UnsootNamed bays[] = { { 1, "Bay 1" }, { 2, "Bay 2" } };
static const UnsootNamed carts[] = { { 4, "Cart A" } };
static const UnsootNamed people[] = { { 5, "Ines" }, { 6, "Orla" } };
static const UnsootNamed valves[] = { { 7, "V-07/1" }, { 8, "V-07/2" } };

static const UnsootNeed needs[] = { { UNSOOT_NEED_BAY, bays, 2 },
                                    { UNSOOT_NEED_MACHINE, carts, 1 },
                                    { UNSOOT_NEED_TECHNICIAN, people, 2 },
                                    { UNSOOT_NEED_ADAPTER, valves, 2 } };

static UnsootDiary
diary_of (const UnsootSlot *slots, gsize n)
{
  return (UnsootDiary){
    .slots = slots, .n_slots = n, .openings = openings, .n_openings = G_N_ELEMENTS (openings)
  };
}

static void
check_starts (const UnsootDiary *diary, gint64 own, gint64 from, guint most, const char *wanted)
{
  const UnsootFreeAsk ask = { needs, G_N_ELEMENTS (needs), own, 100 };
  g_autoptr (GArray) starts = unsoot_free_starts (&ask, diary, DAY, from, most);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < starts->len; i++)
    {
      const int minute = (int) (g_array_index (starts, gint64, i) % UNSOOT_DAY_MINUTES);
      g_string_append_printf (text, "%s%d:%02d", i > 0 ? " " : "", minute / 60, minute % 60);
    }
  ck_assert_str_eq (text->str, wanted);
}

START_TEST (an_empty_day_is_free_while_it_is_open)
{
  const UnsootDiary diary = diary_of (NULL, 0);

  check_starts (&diary, 0, 0, 0,
                "8:00 8:15 8:30 8:45 9:00 9:15 9:30 9:45 10:00 10:15 13:00 13:15 13:30 13:45 "
                "14:00 14:15 14:30 14:45 15:00 15:15");
  check_starts (&diary, 0, at (14, 50), 2, "15:00 15:15");
}
END_TEST

/* Each is free at some time; only together do they leave what is left. */
START_TEST (all_have_to_be_free_at_once)
{
  const UnsootSlot slots[]
      = { { .id = 1, .starts = at (8, 0), .ends = at (10, 0), .machine = carts[0] },
          { .id = 2, .starts = at (13, 0), .ends = at (14, 0), .bay = bays[0] },
          { .id = 3, .starts = at (13, 0), .ends = at (15, 0), .technician = people[0] },
          { .id = 4, .starts = at (14, 0), .ends = at (17, 0), .technician = people[1] },
          { .id = 5, .starts = at (13, 0), .ends = at (15, 15), .items = valves, .n_items = 2 } };
  const UnsootDiary diary = diary_of (slots, G_N_ELEMENTS (slots));

  check_starts (&diary, 0, 0, 0, "10:00 10:15 15:15");
  check_starts (&diary, 5, 0, 0, "10:00 10:15 15:00 15:15");
}
END_TEST

START_TEST (the_best_liked_that_is_free_is_chosen)
{
  const UnsootSlot slots[]
      = { { .id = 1, .starts = at (8, 0), .ends = at (10, 0), .bay = bays[0] },
          { .id = 2, .starts = at (8, 0), .ends = at (10, 0), .items = valves, .n_items = 1 } };
  const UnsootDiary diary = diary_of (slots, G_N_ELEMENTS (slots));
  const UnsootFreeAsk ask = { needs, G_N_ELEMENTS (needs), 0, 60 };
  gint64 ids[G_N_ELEMENTS (needs)];

  ck_assert (unsoot_free_choose (&ask, &diary, at (9, 0), ids, NULL));
  ck_assert_int_eq (ids[0], 2);
  ck_assert_int_eq (ids[1], 4);
  ck_assert_int_eq (ids[2], 5);
  ck_assert_int_eq (ids[3], 8);
}
END_TEST

START_TEST (what_stands_in_the_way_is_named_once)
{
  const UnsootSlot slots[] = {
    { .id = 1, .title = "job 9", .starts = at (8, 0), .ends = at (10, 0), .machine = carts[0] }
  };
  const UnsootDiary diary = diary_of (slots, G_N_ELEMENTS (slots));
  const UnsootFreeAsk ask = { needs, G_N_ELEMENTS (needs), 0, 60 };
  g_autoptr (GPtrArray) why = g_ptr_array_new_with_free_func (g_free);
  gint64 ids[G_N_ELEMENTS (needs)];

  ck_assert (!unsoot_free_choose (&ask, &diary, at (9, 7), ids, why));
  ck_assert_uint_eq (why->len, 1);
  ck_assert_str_eq (why->pdata[0], "Cart A is taken by job 9, 24 Nov 2025 08:00 to 10:00.");
  ck_assert_int_eq (ids[1], 0);
  ck_assert_int_eq (ids[0], 1);

  g_ptr_array_set_size (why, 0);
  ck_assert (!unsoot_free_choose (&ask, &diary, at (16, 30), ids, why));
  ck_assert_uint_eq (why->len, 1);
  ck_assert_ptr_nonnull (strstr (why->pdata[0], "outside opening hours"));
}
END_TEST

static Suite *
free_start_suite (void)
{
  Suite *suite = suite_create ("free-start");
  TCase *tcase = tcase_create ("starts");

  tcase_add_test (tcase, an_empty_day_is_free_while_it_is_open);
  tcase_add_test (tcase, all_have_to_be_free_at_once);
  tcase_add_test (tcase, the_best_liked_that_is_free_is_chosen);
  tcase_add_test (tcase, what_stands_in_the_way_is_named_once);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (free_start_suite)
