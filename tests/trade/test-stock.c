/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "stock.h"
#include "trade-error.h"

#include <string.h>

#define TODAY "2025-03-10"

static const UnsootStockLot shelf[] = {
  { 1, "sealed late", 4000, "2026-01-31", FALSE, NULL, FALSE },
  { 2, "sealed soon", 2000, "2025-03-20", FALSE, NULL, FALSE },
  { 3, "expired", 5000, "2025-03-09", FALSE, NULL, FALSE },
  { 4, "opened", 700, "2026-06-30", TRUE, "2025-04-30", FALSE },
  { 5, "opened too long", 900, "2026-06-30", TRUE, "2025-03-01", FALSE },
  { 6, "no date", 1000, NULL, FALSE, NULL, FALSE },
  { 7, "recalled", 8000, "2026-06-30", TRUE, NULL, TRUE },
};

START_TEST (moves_add_up)
{
  const gint64 moves[] = { 5000, -1000, -250, 250 };
  const gint64 taken[] = { 5000, -6000 };
  const gint64 large[] = { G_MAXINT64, 1 };
  gint64 on_hand = 0;
  g_autoptr (GError) error = NULL;
  ck_assert (unsoot_stock_on_hand (moves, 4, &on_hand, NULL));
  ck_assert_int_eq (on_hand, 4000);
  ck_assert (!unsoot_stock_on_hand (taken, 2, &on_hand, &error));
  ck_assert (g_error_matches (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE));
  ck_assert (!unsoot_stock_on_hand (large, 2, &on_hand, NULL));
  ck_assert_int_eq (on_hand, 4000);
}
END_TEST

START_TEST (free_is_usable_less_promised)
{
  UnsootStockState state = unsoot_stock_state (shelf, G_N_ELEMENTS (shelf), TODAY, 3200, 250);
  ck_assert_int_eq (state.on_hand, 21600);
  ck_assert_int_eq (state.usable, 7700);
  ck_assert_int_eq (state.free, 4500);
  ck_assert (state.has_days_left);
  ck_near (state.days_left, 18, 1e-12);
  state = unsoot_stock_state (shelf, G_N_ELEMENTS (shelf), TODAY, 9000, 250);
  ck_assert_int_eq (state.free, -1300);
  ck_near (state.days_left, 0, 1e-12);
  state = unsoot_stock_state (shelf, G_N_ELEMENTS (shelf), TODAY, 0, 0);
  ck_assert (!state.has_days_left);
}
END_TEST

static void
check_picks (gint64 ml, const char *day, const UnsootStockPick *expected, gsize n, gint64 missing)
{
  gint64 shortage = -1;
  g_autoptr (GArray) picks = unsoot_stock_pick (shelf, G_N_ELEMENTS (shelf), ml, day, &shortage);
  ck_assert_uint_eq (picks->len, n);
  ck_assert_int_eq (shortage, missing);
  for (gsize i = 0; i < n; i++)
    {
      ck_assert_uint_eq (g_array_index (picks, UnsootStockPick, i).lot, expected[i].lot);
      ck_assert_int_eq (g_array_index (picks, UnsootStockPick, i).ml, expected[i].ml);
    }
}

START_TEST (first_expired_is_first_out)
{
  static const UnsootStockPick all[] = { { 3, 700 }, { 1, 2000 }, { 0, 4000 }, { 5, 1000 } };
  static const UnsootStockPick two[] = { { 3, 700 }, { 1, 1300 } };
  static const UnsootStockPick later[] = { { 3, 700 }, { 0, 1300 } };
  check_picks (2000, TODAY, two, 2, 0);
  check_picks (9000, TODAY, all, 4, 1300);
  check_picks (2000, "2025-03-20", two, 2, 0); /* the last day still counts */
  check_picks (2000, "2025-03-21", later, 2, 0);
  check_picks (0, TODAY, NULL, 0, 0);
}
END_TEST

/* The lot that ends on the 20th helps the first job, not the one after it. */
START_TEST (a_dose_needs_stock_on_its_own_day)
{
  const UnsootStockNeed needs[]
      = { { "2025-03-25", 6000 }, { "2025-03-11", 1500 }, { "2025-03-11", 500 } };
  gint64 shortages[3];
  unsoot_stock_allot (shelf, G_N_ELEMENTS (shelf), needs, 3, shortages);
  ck_assert_int_eq (shortages[1], 0);
  ck_assert_int_eq (shortages[2], 0);
  ck_assert_int_eq (shortages[0], 1000);
  g_autofree char *sentence
      = unsoot_stock_shortage_sentence ("Intake fluid R", shortages[0], "tomorrow 10:00");
  ck_assert_str_eq (sentence, "Intake fluid R is 1 L short for tomorrow 10:00.");
}
END_TEST

static gsize
random_lots (GRand *rand, UnsootStockLot *lots, char (*days)[11])
{
  gsize n = (gsize) g_rand_int_range (rand, 0, 9);
  for (gsize i = 0; i < n; i++)
    {
      g_snprintf (days[i], 11, "2025-03-%02d", g_rand_int_range (rand, 1, 29));
      lots[i] = (UnsootStockLot){ .id = (gint64) i,
                                  .on_hand = g_rand_int_range (rand, 0, 3000),
                                  .expires = g_rand_boolean (rand) ? days[i] : NULL,
                                  .opened = g_rand_boolean (rand),
                                  .held = g_rand_int_range (rand, 0, 8) == 0 };
    }
  return n;
}

/* Nothing unusable is picked, no lot gives more than it has, the whole is the dose
 * less the shortage, and no lot left behind should have gone first. */
START_TEST (picks_hold_for_any_shelf)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2417);
  for (int round = 0; round < 20000; round++)
    {
      UnsootStockLot lots[9];
      char days[9][11];
      gsize n = random_lots (rand, lots, days);
      gint64 ml = g_rand_int_range (rand, 0, 9000), sum = 0, usable = 0, shortage;
      gint64 taken[9] = { 0 };
      g_autoptr (GArray) picks = unsoot_stock_pick (lots, n, ml, TODAY, &shortage);
      for (guint i = 0; i < picks->len; i++)
        {
          const UnsootStockPick *pick = &g_array_index (picks, UnsootStockPick, i);
          ck_assert (pick->ml > 0 && taken[pick->lot] == 0);
          taken[pick->lot] = pick->ml;
          sum += pick->ml;
        }
      for (gsize i = 0; i < n; i++)
        {
          gboolean good
              = !lots[i].held && (!lots[i].expires || strcmp (lots[i].expires, TODAY) >= 0);
          usable += good ? lots[i].on_hand : 0;
          ck_assert (taken[i] == 0 || good);
          ck_assert_int_le (taken[i], lots[i].on_hand);
          for (gsize k = 0; k < n; k++)
            {
              const char *first = lots[i].expires ? lots[i].expires : "9999";
              const char *second = lots[k].expires ? lots[k].expires : "9999";
              gboolean before = lots[i].opened > lots[k].opened
                                || (lots[i].opened == lots[k].opened && strcmp (first, second) < 0);
              ck_assert (!good || !before || taken[k] == 0 || taken[i] == lots[i].on_hand);
            }
        }
      ck_assert_int_eq (sum, ml - shortage);
      ck_assert_int_eq (shortage, MAX (0, ml - usable));
    }
}
END_TEST

static Suite *
stock_suite (void)
{
  Suite *suite = suite_create ("stock");
  TCase *tests = tcase_create ("stock");
  tcase_add_test (tests, moves_add_up);
  tcase_add_test (tests, free_is_usable_less_promised);
  tcase_add_test (tests, first_expired_is_first_out);
  tcase_add_test (tests, a_dose_needs_stock_on_its_own_day);
  tcase_add_test (tests, picks_hold_for_any_shelf);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (stock_suite)
