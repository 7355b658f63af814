/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a run pours, against the lots: which it may take, and what is left of them meanwhile. */
#include "shop-fixture.h"

#include "lots.h"
#include "stocks.h"

static int
fill_step (TestShop *shop, gint64 run)
{
  return test_find_step (shop, run, UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK);
}

/* In the bay, where the fuel tank is filled next: 2 L. */
static gint64
walked_to_fill (TestShop *shop, gint64 *job)
{
  *job = test_quote (shop, shop->vehicle, NULL);
  test_authorise (shop, *job);
  test_book_job (shop, *job, shop->bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, *job, 51000);
  gint64 run = test_begin (shop, *job);

  test_walk (shop, run, fill_step (shop, run));
  return run;
}

/* What the plan says, nothing entered; @lot 0: from none. */
static gboolean
pour (TestShop *shop, gint64 run, gint64 lot, GError **error)
{
  UnsootActing who = test_as (shop->technician, 3 * SHOP_HOUR);
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (UNSOOT_RUN_CONFIRM, who.now);

  event->step = fill_step (shop, run);
  event->lot_id = lot;
  return unsoot_job_run_post (shop->db, &who, run, event, NULL, error);
}

START_TEST (test_a_fill_says_its_lot)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  gint64 job;
  gint64 run = walked_to_fill (shop, &job);

  ck_assert (!pour (shop, run, 0, &error));
  ck_constraint (error, "which lot");
  /* The first fill is the fuel tank's: rule 1. */
  ck_assert (!pour (shop, run, shop->intake_lot, &error));
  ck_refused (error, UNSOOT_RUN_ERROR, UNSOOT_RUN_ERROR_REFUSED, "intake fluid");
  ck_assert (!pour (shop, run, shop->expired_lot, &error));
  ck_constraint (error, "R-0 was good until 2025-11-01");
  ck_assert (unsoot_lot_stop (shop->db, &clerk, shop->fuel_lot, "recalled", &error));
  ck_assert (!pour (shop, run, shop->fuel_lot, &error));
  ck_constraint (error, "recalled");
  ck_assert (unsoot_lot_stop (shop->db, &clerk, shop->fuel_lot, NULL, &error));
  ck_assert (pour (shop, run, shop->fuel_lot, &error));
  ck_ask (shop, "SELECT ml FROM run_events ORDER BY id DESC LIMIT 1", 2000);
}
END_TEST

static void
count (TestShop *shop, gint64 lot, gint64 ml)
{
  UnsootActing clerk = test_as (shop->clerk, 3 * SHOP_HOUR);
  GError *error = NULL;

  unsoot_stock_count (shop->db, &clerk, lot, ml, "shelf looked over", &error);
  ck_no_error (error);
}

static gboolean
spill (TestShop *shop, gint64 lot, gint64 ml, GError **error)
{
  UnsootActing clerk = test_as (shop->clerk, 3 * SHOP_HOUR);
  UnsootStockMoveRow move
      = { .lot_id = lot, .kind = (char *) "spill", .ml = -ml, .reason = (char *) "knocked over" };

  return unsoot_stock_post (shop->db, &clerk, &move, error);
}

#define ON_HAND "SELECT sum (ml) FROM stock_moves WHERE lot_id = 1"

/* 2 of 10 L are poured, and posted when the run ends: whoever counts finds 8. */
START_TEST (test_a_count_is_of_what_is_there)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job;
  gint64 run = walked_to_fill (shop, &job);

  test_walk (shop, run, fill_step (shop, run) + 1);
  ck_ask (shop, ON_HAND, 10000);
  count (shop, shop->fuel_lot, 8000);
  ck_ask (shop, "SELECT count (*) FROM stock_moves WHERE kind = 'count'", 0);
  count (shop, shop->fuel_lot, 7500);
  ck_ask (shop, "SELECT ml FROM stock_moves ORDER BY id DESC LIMIT 1", -500);
  /* No more is spilled than is there. */
  ck_assert (!spill (shop, shop->fuel_lot, 7501, &error));
  ck_constraint (error, "Lot K-1 holds 7.5 L");
  ck_assert (spill (shop, shop->fuel_lot, 500, &error));
  ck_no_error (error);
  ck_ask (shop, ON_HAND, 9000);
  test_walk (shop, run, G_MAXINT);
  test_finish (shop, job);
  ck_ask (shop, ON_HAND, 7000);
}
END_TEST

START_TEST (test_a_dose_is_not_poured_from_less)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job;
  gint64 run = walked_to_fill (shop, &job);

  count (shop, shop->fuel_lot, 1999);
  /* Nothing is entered: it is the plan's 2 L. */
  ck_assert (!pour (shop, run, shop->fuel_lot, &error));
  ck_constraint (error, "Lot K-1 holds 1999 mL, so 2 L can't have come out of it");
  count (shop, shop->fuel_lot, 2000);
  ck_assert (pour (shop, run, shop->fuel_lot, &error));
  ck_no_error (error);
}
END_TEST

/* What a run under way has poured is on hand by the book alone: a lot is neither shown nor picked
 * for more than can still come out of it. */
START_TEST (test_poured_is_not_left)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  gint64 job, left = 0;
  gint64 run = walked_to_fill (shop, &job);
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (shop->db, shop->fuel_lot, &error);

  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->fuel_lot, 3000, "counted", &error));
  ck_assert (pour (shop, run, shop->fuel_lot, &error));
  ck_no_error (error);
  g_autoptr (GPtrArray) stocks = unsoot_lot_list (shop->db, lot->fluid_id, "2025-11-24", &error);
  ck_no_error (error);
  for (guint i = 0; i < stocks->len; i++)
    {
      const UnsootLotStock *stock = stocks->pdata[i];
      if (stock->lot->id != shop->fuel_lot)
        continue;
      ck_assert_int_eq (stock->on_hand_ml, 3000);
      left = stock->left_ml;
    }
  ck_assert_int_eq (left, 1000);
  ck_assert_ptr_null (unsoot_lot_pick (shop->db, lot->fluid_id, 1001, "2025-11-24", &error));
  ck_constraint (error, "the fullest has 1 L");
}
END_TEST

static Suite *
pour_deeds_suite (void)
{
  Suite *suite = suite_create ("pour deeds");
  TCase *tcase = tcase_create ("pours");

  tcase_add_test (tcase, test_a_fill_says_its_lot);
  tcase_add_test (tcase, test_a_count_is_of_what_is_there);
  tcase_add_test (tcase, test_a_dose_is_not_poured_from_less);
  tcase_add_test (tcase, test_poured_is_not_left);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (pour_deeds_suite)
