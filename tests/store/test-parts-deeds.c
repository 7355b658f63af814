/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What the parts clerk reads and does: supply, moves in words, the adapters' board. */
#include "shop-fixture.h"

#include <math.h>

#include "adapter-board.h"
#include "adapters.h"
#include "fluid-moves.h"
#include "fluid-supply.h"
#include "fluids.h"
#include "lots.h"
#include "machines.h"
#include "shops.h"
#include "stocks.h"

/* A supplier who takes four days, give or take none, and cans of 5 L at 100.00. */
static void
give_supplier (TestShop *shop)
{
  UnsootActing owner = test_as (shop->owner, 0);
  g_autoptr (UnsootSupplierRow) supplier = unsoot_supplier_row_new ();
  g_autoptr (UnsootPackRow) pack = unsoot_pack_row_new ();
  GError *error = NULL;
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (shop->db, shop->intake_fluid, &error);

  supplier->name = g_strdup ("Millrace");
  supplier->lead_days = 4;
  supplier->lead_days_spread = 0;
  ck_assert (unsoot_supplier_save (shop->db, &owner, supplier, &error));
  fluid->supplier_id = supplier->id;
  fluid->service_level = 0.975;
  ck_assert (unsoot_fluid_save (shop->db, &owner, fluid, &error));
  unsoot_db_run (shop->db, &error, "DELETE FROM fluid_packs WHERE fluid_id = $1",
                 unsoot_int (shop->intake_fluid));
  pack->fluid_id = shop->intake_fluid;
  pack->ml = 5000;
  pack->cost_minor = 10000;
  ck_assert (unsoot_pack_save (shop->db, &owner, pack, &error));
  ck_no_error (error);
}

/* 4 L in one of twelve weeks: 4000 / 84 = 47.619 a day; a week's deviation is 4000 / √12 =
 * 1154.7005, a day's 436.4358 (÷ √7). Quantile of 0.975: 1.959963984540054 (R). */
START_TEST (supply_from_use_and_lead_time)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, SHOP_DAY);
  GError *error = NULL;

  give_supplier (shop);
  test_done (shop, shop->vehicle, NULL);
  g_autoptr (UnsootFluidSupply) supply
      = unsoot_fluid_supply (shop->db, shop->intake_fluid, SHOP_NOW + SHOP_DAY, &error);
  ck_no_error (error);
  ck_near (supply->reorder.demand, 47.6190476, 1e-6);
  ck_near (supply->reorder.demand_sd, 436.4357805, 1e-6);
  ck_assert (supply->has_point);
  ck_near (supply->suggestion.safety, 1.959963984540054 * 436.4357805 * 2, 1e-3);
  ck_near (supply->suggestion.point, 4 * 47.6190476 + 1710.7968, 1e-3);
  ck_assert_int_eq (supply->suggestion.wanted_ml, 0);
  ck_assert (!supply->has_order);
  ck_assert_int_eq (supply->state, UNSOOT_SUPPLY_FINE);

  /* 16 L usable less 15 L: 1 L is under the point of 1.90127 L. 3234.6 − 1000 → one can. */
  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->intake_lot, 1000, "leak", &error));
  g_autoptr (UnsootFluidSupply) low
      = unsoot_fluid_supply (shop->db, shop->intake_fluid, SHOP_NOW + SHOP_DAY, &error);
  ck_assert_int_eq (low->state, UNSOOT_SUPPLY_LOW);
  ck_assert_int_eq (low->suggestion.wanted_ml, 2235);
  ck_assert (low->has_order);
  ck_assert_int_eq (low->order.count, 1);
  ck_assert_int_eq (low->order.cost_minor, 10000);
}
END_TEST

/* 4 L in each of two weeks of twelve: mean 8000 / 12 a week, its squares (2 × 3333.33² +
 * 10 × 666.67²) / 11 = 2424242.4, a day's deviation √(2424242.4 / 7) = 588.4899. */
START_TEST (weeks_are_kept_apart)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;

  test_done (shop, shop->vehicle, NULL);
  unsoot_db_run (shop->db, &error,
                 "INSERT INTO stock_moves (lot_id, kind, ml, at) VALUES ($1, 'use', -4000, $2)",
                 unsoot_int (shop->intake_lot), unsoot_int (SHOP_NOW - 9 * SHOP_DAY));
  ck_no_error (error);
  g_autoptr (UnsootFluidSupply) supply
      = unsoot_fluid_supply (shop->db, shop->intake_fluid, SHOP_NOW + SHOP_DAY, &error);
  ck_no_error (error);
  ck_near (supply->reorder.demand, 8000.0 / 84, 1e-6);
  ck_near (supply->reorder.demand_sd, 588.4899, 1e-3);
}
END_TEST

START_TEST (no_lead_time_no_suggestion)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  g_autoptr (GPtrArray) all = NULL;

  unsoot_db_run (shop->db, &error, "UPDATE fluids SET supplier_id = NULL");
  ck_no_error (error);
  all = unsoot_fluid_supply_list (shop->db, SHOP_NOW, &error);
  ck_assert_int_eq (all->len, 2);
  for (guint i = 0; i < all->len; i++)
    {
      const UnsootFluidSupply *supply = all->pdata[i];
      ck_assert (!supply->has_point && !supply->has_order);
      ck_assert_ptr_null (supply->supplier);
    }
}
END_TEST

/* The fixture's lots: K-1 10 L; a job booked for 1 L fuel and 4 L intake; R-1 counted to 1 L. */
START_TEST (what_falls_short_for_which_job)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, 30 * SHOP_HOUR);
  g_autoptr (GPtrArray) none = unsoot_short_jobs (shop->db, 0, SHOP_NOW, &error);
  ck_assert_int_eq (none->len, 0);
  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->intake_lot, 1000, "leak", &error));
  g_autoptr (GPtrArray) some = unsoot_short_jobs (shop->db, 0, SHOP_NOW, &error);
  ck_no_error (error);
  ck_assert_int_eq (some->len, 1);
  const UnsootShortJob *line = some->pdata[0];
  ck_assert_int_eq (line->job_id, job);
  ck_assert_int_eq (line->fluid_id, shop->intake_fluid);
  ck_assert_int_eq (line->short_ml, line->dose_ml - 1000);
  g_autoptr (GPtrArray) other = unsoot_short_jobs (shop->db, shop->fuel_fluid, SHOP_NOW, &error);
  ck_assert_int_eq (other->len, 0);
  g_autoptr (UnsootFluidSupply) supply
      = unsoot_fluid_supply (shop->db, shop->intake_fluid, SHOP_NOW, &error);
  ck_assert_int_eq (supply->state, UNSOOT_SUPPLY_SHORT);
  ck_assert_int_eq (supply->short_ml, line->short_ml);
  ck_assert_int_eq (supply->needs->len, 1);
}
END_TEST

START_TEST (used_beside_the_dose)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, SHOP_DAY);
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);
  gint64 used = -test_ask (shop, "SELECT sum (ml) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
                                 " WHERE m.job_id IS NOT NULL AND l.code = 'R-1'");
  g_autoptr (GPtrArray) uses = unsoot_fluid_uses (shop->db, shop->intake_fluid, 5, &error);

  ck_no_error (error);
  ck_assert_int_eq (uses->len, 1);
  const UnsootFluidUse *use = uses->pdata[0];
  ck_assert_int_eq (use->job_id, job);
  ck_assert_int_eq (use->used_ml, used);
  ck_assert_int_eq (use->dose_ml, 4000);
  /* What was taken back was not used. */
  ck_assert (unsoot_stock_reverse (
      shop->db, &clerk, test_ask (shop, "SELECT max (id) FROM stock_moves WHERE kind = 'use'"),
      "wrong lot", &error));
  gint64 left = -test_ask (shop, "SELECT sum (ml) FROM stock_moves m JOIN lots l ON l.id = m.lot_id"
                                 " WHERE m.job_id IS NOT NULL AND l.code = 'R-1'");
  g_autoptr (GPtrArray) after = unsoot_fluid_uses (shop->db, shop->intake_fluid, 5, &error);
  ck_assert_int_eq (((UnsootFluidUse *) after->pdata[0])->used_ml, left);
}
END_TEST

START_TEST (moves_say_where_they_belong)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, SHOP_HOUR);
  GError *error = NULL;
  gint64 before = 0;

  ck_assert (unsoot_stock_count (shop->db, &clerk, shop->fuel_lot, 9000, "spilled", &error));
  gint64 id = test_ask (shop, "SELECT max (id) FROM stock_moves");
  ck_assert (unsoot_stock_reverse (shop->db, &clerk, id, "it was there", &error));
  g_autoptr (GPtrArray) lines
      = unsoot_move_lines (shop->db, shop->fuel_fluid, 0, SHOP_NOW + 1, &before, &error);
  ck_no_error (error);
  ck_assert_int_eq (before, 10000);
  ck_assert_int_eq (lines->len, 2);
  const UnsootMoveLine *count = lines->pdata[0], *back = lines->pdata[1];
  ck_assert_str_eq (count->lot, "K-1");
  ck_assert_int_eq (count->move->ml, -1000);
  ck_assert (count->taken_back && !back->taken_back);
  ck_assert_int_eq (back->move->reverses_id, id);
  ck_assert_ptr_nonnull (count->staff);
  /* Of another lot, nothing. */
  g_autoptr (GPtrArray) other
      = unsoot_move_lines (shop->db, shop->fuel_fluid, shop->intake_lot, 0, NULL, &error);
  ck_assert_int_eq (other->len, 0);
}
END_TEST

static UnsootBoardState
state_of (TestShop *shop, gint64 item, gint64 seconds)
{
  GError *error = NULL;
  g_autoptr (UnsootBoardTag) tag = unsoot_board_tag (shop->db, item, SHOP_NOW + seconds, &error);

  ck_no_error (error);
  return tag->state;
}

START_TEST (the_board_tells_late_from_lent)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  UnsootLoanRow loan = { .item_id = shop->intake_adapter,
                         .to_kind = (char *) "shop",
                         .to_name = (char *) "Osier Garage",
                         .due_on = (char *) "2025-11-20" };
  GError *error = NULL;

  ck_assert_int_eq (state_of (shop, shop->intake_adapter, 0), UNSOOT_BOARD_HERE);
  ck_assert (unsoot_adapter_lend (shop->db, &clerk, &loan, &error));
  ck_assert_int_eq (state_of (shop, shop->intake_adapter, 1), UNSOOT_BOARD_LENT);
  ck_assert_int_eq (state_of (shop, shop->intake_adapter, 2 * SHOP_DAY), UNSOOT_BOARD_LENT);
  ck_assert_int_eq (state_of (shop, shop->intake_adapter, 3 * SHOP_DAY), UNSOOT_BOARD_DUE);
  ck_assert (!unsoot_adapter_retire (shop->db, &clerk, shop->intake_adapter, "lost", &error));
  ck_constraint (error, "Take it back first");
  ck_assert (
      !unsoot_adapter_inspected (shop->db, &clerk, shop->intake_adapter, TRUE, NULL, &error));
  ck_constraint (error, "Osier Garage");
  ck_assert (unsoot_adapter_back (shop->db, &clerk, loan.id, "good", NULL, &error));
  ck_assert_int_eq (state_of (shop, shop->intake_adapter, 3 * SHOP_DAY), UNSOOT_BOARD_HERE);
  g_autoptr (GPtrArray) loans = unsoot_adapter_loans (shop->db, shop->intake_adapter, &error);
  ck_assert_int_eq (loans->len, 1);
}
END_TEST

START_TEST (an_adapter_is_looked_over)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0), advisor = test_as (shop->advisor, 0);
  gint64 item = shop->fuel_adapter;
  GError *error = NULL;

  ck_assert (!unsoot_adapter_inspected (shop->db, &advisor, item, TRUE, NULL, &error));
  ck_not_allowed (error, "service advisor");
  ck_assert (!unsoot_adapter_inspected (shop->db, &clerk, item, FALSE, " ", &error));
  ck_invalid (error, "what is wrong");
  ck_assert (unsoot_adapter_inspected (shop->db, &clerk, item, FALSE, "seal worn", &error));
  ck_assert_int_eq (state_of (shop, item, 1), UNSOOT_BOARD_INSPECTION);
  ck_ask_text (shop, "SELECT condition FROM adapter_items WHERE state = 'inspection'", "seal worn");
  ck_assert (unsoot_adapter_inspected (shop->db, &clerk, item, TRUE, NULL, &error));
  ck_assert_int_eq (state_of (shop, item, 1), UNSOOT_BOARD_HERE);
  ck_ask (shop, "SELECT count (*) FROM adapter_items WHERE inspected_on = '2025-11-18'", 1);
  ck_assert (!unsoot_adapter_retire (shop->db, &clerk, item, "", &error));
  ck_invalid (error, "why");
  ck_assert (unsoot_adapter_retire (shop->db, &clerk, item, "thread stripped", &error));
  ck_assert_int_eq (state_of (shop, item, 1), UNSOOT_BOARD_RETIRED);
  ck_assert (unsoot_adapter_retire (shop->db, &clerk, item, NULL, &error));
  ck_assert_int_eq (state_of (shop, item, 1), UNSOOT_BOARD_INSPECTION);
  ck_no_error (error);
}
END_TEST

START_TEST (the_board_knows_the_jobs)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, SHOP_HOUR);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  gint64 held = test_ask (shop, "SELECT min (item_id) FROM booking_adapters");
  ck_assert_int_eq (state_of (shop, held, SHOP_HOUR + 60), UNSOOT_BOARD_ON_JOB);
  ck_assert (!unsoot_adapter_retire (shop->db, &clerk, held, "worn", &error));
  ck_constraint (error, "another one first");
  g_autoptr (GArray) jobs = unsoot_adapter_jobs (shop->db, held, 5, &error);
  ck_assert_int_eq (jobs->len, 1);
  ck_assert_int_eq (g_array_index (jobs, gint64, 0), job);
  g_autoptr (GPtrArray) board = unsoot_board (shop->db, SHOP_NOW, &error);
  ck_no_error (error);
  ck_assert_int_eq (board->len, test_ask (shop, "SELECT count (*) FROM adapter_items"));
}
END_TEST

START_TEST (containers_and_hoses)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0), technician = test_as (shop->technician, 0);
  GError *error = NULL;
  gint64 id = unsoot_container_open (shop->db, &clerk, shop->fuel_lot, "can 4", 5000, "2025-11-18",
                                     &error);

  ck_assert (unsoot_container_emptied (shop->db, &clerk, id, &error));
  g_autoptr (GPtrArray) open = unsoot_container_list (shop->db, shop->fuel_lot, &error);
  ck_assert_int_eq (open->len, 0);
  ck_assert (!unsoot_container_emptied (shop->db, &clerk, id, &error));
  ck_constraint (error, "can 4");
  ck_assert (!unsoot_machine_hoses (shop->db, &clerk, shop->cart, "2027-11-18", &error));
  ck_not_allowed (error, "parts clerk");
  ck_assert (unsoot_machine_hoses (shop->db, &technician, shop->cart, "2027-11-18", &error));
  ck_ask (shop, "SELECT count (*) FROM machines WHERE hoses_due_on = '2027-11-18'", 1);
}
END_TEST

/* Outside a run the clerk empties a tank; an advisor does not. */
START_TEST (a_clerk_drains_a_tank)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0), advisor = test_as (shop->advisor, 0);
  GError *error = NULL;

  ck_assert_int_eq (
      unsoot_tank_post (shop->db, &advisor, shop->cart, "fuel", "drain", 0, NULL, NULL, &error), 0);
  ck_not_allowed (error, "service advisor");
  ck_assert_int_ne (
      unsoot_tank_post (shop->db, &clerk, shop->cart, "fuel", "drain", 0, NULL, NULL, &error), 0);
  ck_no_error (error);
  ck_ask_text (shop, "SELECT contents FROM tank_events ORDER BY id DESC LIMIT 1", "empty");
}
END_TEST

/* 0.3 L found, drained, flushed: the flush was the other cart's, then the drain too. */
START_TEST (a_mistake_at_a_tank_is_corrected)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0), advisor = test_as (shop->advisor, 0);
  GError *error = NULL;
  gint64 found = unsoot_tank_post (shop->db, &clerk, shop->cart, "fuel", "found", 300, "returned",
                                   NULL, &error);
  gint64 drain
      = unsoot_tank_post (shop->db, &clerk, shop->cart, "fuel", "drain", 0, NULL, NULL, &error);
  gint64 flush
      = unsoot_tank_post (shop->db, &clerk, shop->cart, "fuel", "flush", 0, NULL, NULL, &error);

  ck_no_error (error);
  ck_assert_int_eq (unsoot_tank_correct (shop->db, &clerk, drain, "other cart", &error), 0);
  ck_constraint (error, "since");
  ck_assert_int_eq (unsoot_tank_correct (shop->db, &clerk, flush, " ", &error), 0);
  ck_invalid (error, "Say why");
  ck_assert_int_eq (unsoot_tank_correct (shop->db, &advisor, flush, "other cart", &error), 0);
  ck_not_allowed (error, "service advisor");
  ck_assert_int_ne (unsoot_tank_correct (shop->db, &clerk, flush, "other cart", &error), 0);
  ck_ask_text (shop, "SELECT contents || ml || reason FROM tank_events ORDER BY id DESC LIMIT 1",
               "empty0other cart");
  ck_ask (shop, "SELECT reverses_id FROM tank_events ORDER BY id DESC LIMIT 1", flush);
  ck_assert_int_eq (unsoot_tank_correct (shop->db, &clerk, flush, "again", &error), 0);
  ck_constraint (error, "already");

  ck_assert_int_ne (unsoot_tank_correct (shop->db, &clerk, drain, "other cart", &error), 0);
  g_autoptr (UnsootTankState) state = unsoot_machine_tank (shop->db, shop->cart, "fuel", &error);
  ck_assert_str_eq (state->last->contents, "returned");
  ck_assert_int_eq (state->last->ml, 300);
  ck_assert_int_eq (state->last->reverses_id, drain);
  /* Before anything was recorded nobody knew. */
  ck_assert_int_ne (unsoot_tank_correct (shop->db, &clerk, found, "not looked", &error), 0);
  ck_ask_text (shop, "SELECT contents || ml FROM tank_events ORDER BY id DESC LIMIT 1", "unknown0");
  ck_ask (shop, "SELECT count (*) FROM tank_events", 6);
}
END_TEST

/* What is taken out is gone, and the log of changes has what it was. */
START_TEST (packs_and_fits_are_taken_out)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0), technician = test_as (shop->technician, 0);
  GError *error = NULL;

  give_supplier (shop);
  gint64 pack = test_ask (shop, "SELECT max (id) FROM fluid_packs");
  ck_assert (!unsoot_pack_drop (shop->db, &technician, pack, &error));
  ck_not_allowed (error, "technician");
  ck_assert (unsoot_pack_drop (shop->db, &clerk, pack, &error));
  ck_ask (shop, "SELECT count (*) FROM fluid_packs WHERE ml = 5000 AND cost_minor = 10000", 0);
  ck_ask_text (shop,
               "SELECT was FROM changes WHERE record = 'fluid_packs' AND field = 'ml'"
               " ORDER BY id DESC LIMIT 1",
               "5000");

  gint64 fit = test_ask (shop, "SELECT min (id) FROM adapter_fits");
  gint64 fits = test_ask (shop, "SELECT count (*) FROM adapter_fits");
  ck_assert (unsoot_adapter_fit_drop (shop->db, &clerk, fit, &error));
  ck_no_error (error);
  ck_ask (shop, "SELECT count (*) FROM adapter_fits", fits - 1);
}
END_TEST

static Suite *
parts_deeds_suite (void)
{
  Suite *suite = suite_create ("parts deeds");
  TCase *fluids = tcase_create ("fluids");
  TCase *equipment = tcase_create ("equipment");

  tcase_add_test (fluids, supply_from_use_and_lead_time);
  tcase_add_test (fluids, weeks_are_kept_apart);
  tcase_add_test (fluids, no_lead_time_no_suggestion);
  tcase_add_test (fluids, what_falls_short_for_which_job);
  tcase_add_test (fluids, used_beside_the_dose);
  tcase_add_test (fluids, moves_say_where_they_belong);
  tcase_add_test (fluids, packs_and_fits_are_taken_out);
  tcase_add_test (equipment, the_board_tells_late_from_lent);
  tcase_add_test (equipment, an_adapter_is_looked_over);
  tcase_add_test (equipment, the_board_knows_the_jobs);
  tcase_add_test (equipment, containers_and_hoses);
  tcase_add_test (equipment, a_clerk_drains_a_tank);
  tcase_add_test (equipment, a_mistake_at_a_tank_is_corrected);
  suite_add_tcase (suite, fluids);
  suite_add_tcase (suite, equipment);
  return suite;
}

UNSOOT_TEST_MAIN (parts_deeds_suite)
