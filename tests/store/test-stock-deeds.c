/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lots, moves, tanks and loans. */
#include "shop-fixture.h"

#include <math.h>

#include "adapters.h"
#include "fluids.h"
#include "lots.h"
#include "machines.h"
#include "stocks.h"

static gint64
deliver (TestShop *shop, gint64 staff, const char *code, const char *expires, gint64 ml,
         GError **error)
{
  UnsootActing who = test_as (staff, 0);
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();

  lot->fluid_id = shop->intake_fluid;
  lot->code = g_strdup (code);
  lot->expires_on = g_strdup (expires);
  return unsoot_stock_deliver (shop->db, &who, lot, ml, error) ? lot->id : 0;
}

START_TEST (test_deliveries)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  ck_assert_int_ne (deliver (shop, shop->clerk, "R-2", "2026-05-01", 4000, &error), 0);
  ck_ask_text (shop, "SELECT received_on FROM lots WHERE code = 'R-2'", "2025-11-18");
  /* More of a known lot goes to it; its label must say the same. */
  ck_assert_int_eq (deliver (shop, shop->clerk, "R-1", "2026-03-01", 1000, &error),
                    shop->intake_lot);
  ck_ask (shop, "SELECT sum (ml) FROM stock_moves WHERE lot_id = 2", 21000);
  ck_assert_int_eq (deliver (shop, shop->clerk, "R-1", "2026-04-01", 1000, &error), 0);
  ck_constraint (error, "2026-03-01");
  ck_assert_int_eq (deliver (shop, shop->clerk, "R-3", NULL, 0, &error), 0);
  ck_invalid (error, "more than nothing");
  ck_ask (shop, "SELECT count (*) FROM lots WHERE code = 'R-3'", 0);
}
END_TEST

static gboolean
move (TestShop *shop, gint64 staff, const char *kind, gint64 ml, const char *reason, GError **error)
{
  UnsootActing who = test_as (staff, 0);
  g_autoptr (UnsootStockMoveRow) row = unsoot_stock_move_row_new ();

  row->lot_id = shop->fuel_lot;
  row->kind = g_strdup (kind);
  row->ml = ml;
  row->reason = g_strdup (reason);
  return unsoot_stock_post (shop->db, &who, row, error);
}

START_TEST (test_moves)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  ck_assert (!move (shop, shop->clerk, "waste", -10001, "old", &error));
  ck_constraint (error, "Lot K-1 holds 10 L");
  ck_assert (!move (shop, shop->clerk, "waste", 500, "old", &error));
  ck_invalid (error, "takes fluid out");
  ck_assert (!move (shop, shop->clerk, "spill", -500, NULL, &error));
  ck_invalid (error, "Say why");
  ck_assert (!move (shop, shop->advisor, "count", -500, "counted", &error));
  ck_not_allowed (error, "service advisor");
  ck_assert (!move (shop, shop->clerk, "theft", -500, "x", &error));
  ck_invalid (error, "theft");
  ck_ask (shop, "SELECT count (*) FROM stock_moves WHERE lot_id = 1", 1);

  ck_assert (move (shop, shop->clerk, "spill", -500, "knocked over", &error));
  gint64 id = test_ask (shop, "SELECT max (id) FROM stock_moves");
  ck_assert (unsoot_stock_reverse (shop->db, &clerk, id, "wrong lot", &error));
  ck_ask (shop, "SELECT ml FROM stock_moves ORDER BY id DESC LIMIT 1", 500);
  ck_ask (shop, "SELECT reverses_id FROM stock_moves ORDER BY id DESC LIMIT 1", id);
  ck_assert (!unsoot_stock_reverse (shop->db, &clerk, id, "again", &error));
  ck_constraint (error, "already");
}
END_TEST

START_TEST (test_counting)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->fuel_lot, 9400, NULL, &error));
  ck_ask (shop, "SELECT ml FROM stock_moves ORDER BY id DESC LIMIT 1", -600);
  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->fuel_lot, 9400, NULL, &error));
  ck_ask (shop, "SELECT count (*) FROM stock_moves WHERE kind = 'count'", 1);
}
END_TEST

static void
check_pick (TestShop *shop, gint64 ml, const char *today, const char *code)
{
  GError *error = NULL;
  g_autoptr (UnsootLotRow) lot = unsoot_lot_pick (shop->db, shop->intake_fluid, ml, today, &error);

  ck_no_error (error);
  ck_assert_str_eq (lot->code, code);
}

START_TEST (test_first_to_expire_is_used_first)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  deliver (shop, shop->clerk, "R-2", "2025-12-01", 3000, &error);
  ck_no_error (error);
  check_pick (shop, 3000, "2025-11-18", "R-2");
  /* Too little for a dose, expired, or stopped: the next one. */
  check_pick (shop, 4000, "2025-11-18", "R-1");
  check_pick (shop, 1000, "2025-12-02", "R-1");
  ck_assert (unsoot_lot_stop (shop->db, &clerk, shop->intake_lot, "cloudy", &error));
  ck_assert_ptr_null (unsoot_lot_pick (shop->db, shop->intake_fluid, 4000, "2025-11-18", &error));
  ck_constraint (error, "the fullest has 3 L");
}
END_TEST

START_TEST (test_which_jobs_had_a_lot)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);
  g_autoptr (GArray) jobs = unsoot_lot_jobs (shop->db, shop->intake_lot, &error);
  g_autoptr (GArray) none = unsoot_lot_jobs (shop->db, shop->expired_lot, &error);

  ck_no_error (error);
  ck_assert_int_eq (jobs->len, 1);
  ck_assert_int_eq (g_array_index (jobs, gint64, 0), job);
  ck_assert_int_eq (none->len, 0);
}
END_TEST

/* 4 L of R used within twelve weeks: 4000 / 84 a day. 25 L delivered, 5 of them expired. */
START_TEST (test_where_a_fluid_stands)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  test_done (shop, shop->vehicle, NULL);
  g_autoptr (UnsootFluidStock) stock
      = unsoot_fluid_stock (shop->db, shop->intake_fluid, SHOP_NOW + SHOP_DAY, &error);
  ck_no_error (error);
  ck_assert_int_eq (stock->on_hand_ml, 21000);
  ck_assert_int_eq (stock->unusable_ml, 5000);
  ck_assert_int_eq (stock->promised_ml, 0);
  ck_assert_int_eq (stock->free_ml, 16000);
  ck_near (stock->daily_ml, 47.6190476, 1e-6);
  ck_near (stock->days_left, 336.0, 1e-6);
  ck_assert_str_eq (stock->next_expiry, "2026-03-01");
}
END_TEST

START_TEST (test_an_opened_container_has_its_own_date)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing lead = test_as (shop->lead, 0);
  GError *error = NULL;
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (shop->db, shop->intake_fluid, &error);

  fluid->opened_days = 30;
  ck_assert (unsoot_fluid_save (shop->db, &lead, fluid, &error));
  gint64 id = unsoot_container_open (shop->db, &lead, shop->intake_lot, "can 4", 5000, "2025-11-18",
                                     &error);
  ck_no_error (error);
  ck_assert_int_ne (id, 0);
  ck_ask_text (shop, "SELECT use_by FROM containers", "2025-12-18");
  /* Never later than the lot itself. */
  unsoot_container_open (shop->db, &lead, shop->intake_lot, "can 5", 5000, "2026-02-20", &error);
  ck_ask_text (shop, "SELECT use_by FROM containers WHERE label = 'can 5'", "2026-03-01");
}
END_TEST

static gint64
tank (TestShop *shop, const char *kind, gint64 ml, const char *contents, const char *label,
      GError **error)
{
  UnsootActing who = test_as (shop->technician, 0);

  return unsoot_tank_post (shop->db, &who, shop->cart, "fuel", kind, ml, contents, label, error);
}

START_TEST (test_tanks_by_the_same_rules)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  ck_assert_int_eq (tank (shop, "flush", 0, NULL, NULL, &error), 0);
  ck_constraint (error, "Drain the tank");
  ck_assert_int_eq (tank (shop, "found", 9000, "fresh", NULL, &error), 0);
  ck_invalid (error, "9000");
  ck_assert_int_ne (tank (shop, "found", 700, "returned", NULL, &error), 0);
  ck_assert_int_eq (tank (shop, "hold", 0, NULL, NULL, &error), 0);
  ck_invalid (error, "label");
  ck_assert_int_ne (tank (shop, "hold", 650, NULL, "return of unit 12", &error), 0);
  ck_ask (shop, "SELECT ml FROM tank_events ORDER BY id DESC LIMIT 1", 650);
  ck_assert_int_ne (tank (shop, "drain", 0, NULL, NULL, &error), 0);
  ck_assert_int_ne (tank (shop, "flush", 0, NULL, NULL, &error), 0);
  ck_no_error (error);
  g_autoptr (UnsootTankState) state = unsoot_machine_tank (shop->db, shop->cart, "fuel", &error);
  ck_assert_str_eq (state->last->contents, "clean");
  ck_assert_int_eq (state->last->ml, 0);
}
END_TEST

static gboolean
resize (TestShop *shop, gint64 staff, gint64 capacity, gint64 low, GError **error)
{
  UnsootActing who = test_as (staff, 0);
  g_autoptr (UnsootTankState) state = unsoot_machine_tank (shop->db, shop->cart, "fuel", error);

  state->tank->capacity_ml = capacity;
  state->tank->low_ml = low;
  return unsoot_tank_save (shop->db, &who, state->tank, error);
}

START_TEST (test_a_run_has_its_tanks)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, job, 1000);
  test_begin (shop, job);
  ck_assert_int_eq (tank (shop, "drain", 0, NULL, NULL, &error), 0);
  ck_constraint (error, "A run has this machine");
  ck_assert (!resize (shop, shop->owner, 9000, 250, &error));
  ck_constraint (error, "A run has this machine");
}
END_TEST

#define FUEL_TANK " FROM tanks WHERE machine_id = 1 AND side = 'fuel'"

START_TEST (test_a_tank_of_another_size)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  ck_assert (resize (shop, shop->owner, 6000, 250, &error));
  ck_no_error (error);
  ck_ask (shop, "SELECT capacity_ml" FUEL_TANK, 6000);
  ck_ask (shop, "SELECT low_ml" FUEL_TANK, 250);
  ck_assert (!resize (shop, shop->clerk, 5000, 250, &error));
  ck_not_allowed (error, "parts clerk");
  ck_assert (!resize (shop, shop->owner, 250, 250, &error));
  ck_invalid (error, "low mark below it");
  ck_assert (!resize (shop, shop->owner, 0, 0, &error));
  ck_invalid (error, "needs its capacity");
  ck_assert_int_ne (tank (shop, "found", 700, "returned", NULL, &error), 0);
  ck_assert (!resize (shop, shop->owner, 699, 100, &error));
  ck_constraint (error, "The tank holds 700 mL by the book, so it can't be one for 699 mL");
  ck_ask (shop, "SELECT capacity_ml" FUEL_TANK, 6000);
  ck_assert (resize (shop, shop->owner, 700, 100, &error));
  ck_no_error (error);
  ck_assert_int_eq (tank (shop, "found", 701, "returned", NULL, &error), 0);
  ck_invalid (error, "701");
}
END_TEST

START_TEST (test_loans)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  UnsootLoanRow loan = { .item_id = shop->intake_adapter,
                         .to_kind = (char *) "colleague",
                         .to_name = (char *) "Sten" };
  UnsootLoanRow again = loan;
  GError *error = NULL;

  ck_assert (unsoot_adapter_lend (shop->db, &clerk, &loan, &error));
  ck_assert (!unsoot_adapter_lend (shop->db, &clerk, &again, &error));
  ck_constraint (error, "lent to Sten");
  g_autoptr (GPtrArray) out = unsoot_loan_list (shop->db, &error);
  ck_assert_int_eq (out->len, 1);
  ck_assert (unsoot_adapter_back (shop->db, &clerk, loan.id, "worn", "D4", &error));
  ck_ask_text (shop, "SELECT bin FROM adapter_items WHERE id = 3", "D4");
  ck_assert (!unsoot_adapter_back (shop->db, &clerk, loan.id, NULL, NULL, &error));
  ck_constraint (error, "back already");
  ck_assert (unsoot_adapter_lend (shop->db, &clerk, &again, &error));
  ck_no_error (error);
}
END_TEST

static Suite *
stock_deeds_suite (void)
{
  Suite *suite = suite_create ("stock deeds");
  TCase *tcase = tcase_create ("stock");

  tcase_add_test (tcase, test_deliveries);
  tcase_add_test (tcase, test_moves);
  tcase_add_test (tcase, test_counting);
  tcase_add_test (tcase, test_first_to_expire_is_used_first);
  tcase_add_test (tcase, test_which_jobs_had_a_lot);
  tcase_add_test (tcase, test_where_a_fluid_stands);
  tcase_add_test (tcase, test_an_opened_container_has_its_own_date);
  tcase_add_test (tcase, test_tanks_by_the_same_rules);
  tcase_add_test (tcase, test_a_run_has_its_tanks);
  tcase_add_test (tcase, test_a_tank_of_another_size);
  tcase_add_test (tcase, test_loans);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (stock_deeds_suite)
