/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What Today shows: the strip, and who needs a hand, in the words that are read. */
#include "shop-fixture.h"

#include <math.h>

#include "adapters.h"
#include "bookings.h"
#include "days.h"
#include "finishes.h"
#include "fluids.h"
#include "invoices.h"
#include "jobs.h"
#include "machines.h"
#include "shops.h"
#include "stocks.h"

static UnsootDay *
day_at (TestShop *shop, gint64 seconds)
{
  GError *error = NULL;
  UnsootDay *day = unsoot_day_load (shop->db, NULL, SHOP_NOW + seconds, &error);

  ck_no_error (error);
  return day;
}

/* The only line of its kind, as it is read: thing, rest and verb. */
static void
check_hand (TestShop *shop, gint64 seconds, UnsootHandKind kind, const char *line)
{
  g_autoptr (UnsootDay) day = day_at (shop, seconds);
  g_autofree char *read = NULL;

  for (guint i = 0; i < day->hands->len; i++)
    {
      const UnsootHand *hand = day->hands->pdata[i];
      if (hand->kind != kind)
        continue;
      ck_assert_msg (read == NULL, "two lines of that kind");
      read = g_strdup_printf ("%s %s · %s", hand->thing, hand->rest, hand->verb);
    }
  ck_assert_pstr_eq (read, line);
}

START_TEST (test_strip)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  test_book_job (shop, test_quote (shop, shop->exempt_vehicle, NULL), shop->bay, shop->cart,
                 SHOP_DAY + SHOP_HOUR);
  test_arrive (shop, job, 1000);
  test_walk (shop, test_begin (shop, job), 20);
  g_autoptr (UnsootDay) day = day_at (shop, 2 * SHOP_HOUR);
  ck_assert_str_eq (day->date, "2025-11-18");
  ck_assert_int_eq (day->starts_at, SHOP_NOW - 8 * SHOP_HOUR);
  ck_assert_int_eq (day->ends_at - day->starts_at, SHOP_DAY);
  ck_assert_int_eq (day->opens_at, SHOP_NOW);
  ck_assert_int_eq (day->closes_at, SHOP_NOW + 9 * SHOP_HOUR);
  ck_assert_int_eq (day->bays->len, 2);
  ck_assert_int_eq (day->blocks->len, 1);
  const UnsootDayBlock *block = day->blocks->pdata[0];
  ck_assert_str_eq (block->title, "Tolver H6, plate 7KD 204");
  ck_assert_str_eq (block->sides, "both");
  ck_assert_str_eq (block->status, "in-bay");
  ck_assert_str_eq (block->machine, "Cart A");
  ck_assert_int_eq (block->bay_id, shop->bay);
  /* 20 of the procedure's 79 steps. */
  ck_near (block->progress,
           20.0 / (double) test_ask (shop, "SELECT count (*) FROM procedure_steps"), 1e-9);
}
END_TEST

START_TEST (test_a_holiday)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing owner = test_as (shop->owner, 0);
  g_autoptr (UnsootHolidayRow) holiday = unsoot_holiday_row_new ();
  GError *error = NULL;

  holiday->day = g_strdup ("2025-11-27");
  holiday->name = g_strdup ("Thanksgiving");
  ck_assert (unsoot_holiday_save (shop->db, &owner, holiday, &error));
  g_autoptr (UnsootDay) day = unsoot_day_load (shop->db, "2025-11-27", SHOP_NOW, &error);
  ck_assert_str_eq (day->shut_reason, "Thanksgiving");
  ck_assert_int_eq (day->opens_at, 0);
  g_autoptr (UnsootDay) sunday = unsoot_day_load (shop->db, "2025-11-23", SHOP_NOW, &error);
  ck_assert_ptr_null (sunday->shut_reason);
  ck_assert_int_eq (sunday->opens_at, 0);
  ck_assert_ptr_null (unsoot_day_load (shop->db, "tomorrow", SHOP_NOW, &error));
  ck_assert_ptr_nonnull (strstr (error->message, "tomorrow"));
  g_clear_error (&error);
}
END_TEST

static void
set_zone (TestShop *shop, const char *zone)
{
  UnsootActing owner = test_as (shop->owner, 0);
  GError *error = NULL;
  g_autoptr (UnsootShopRow) row = unsoot_shop_load (shop->db, &error);

  g_free (row->timezone);
  row->timezone = g_strdup (zone);
  ck_assert (unsoot_shop_save (shop->db, &owner, row, &error));
}

/* IANA time zone database, "northamerica": New York puts its clocks on at 02:00 EST of the second
 * Sunday of March and back at 02:00 EDT of the first Sunday of November: 8 March and 1 November
 * 2026. The instants are reckoned by hand. */
START_TEST (test_hours_where_the_clock_changes)
{
  static const struct
  {
    const char *zone, *date;
    gint64 opens_at, closes_at, hours;
  } days[] = {
    { "America/New_York", "2026-03-07", 1772888400, 1772920800, 24 }, /* 13:00Z, 22:00Z */
    { "America/New_York", "2026-03-08", 1772971200, 1773003600, 23 }, /* 12:00Z, 21:00Z */
    { "America/New_York", "2026-11-01", 1793538000, 1793570400, 25 }, /* 13:00Z, 22:00Z */
  };
  g_autoptr (TestShop) shop = test_shop_new_file ();

  for (gsize i = 0; i < G_N_ELEMENTS (days); i++)
    {
      GError *error = NULL;
      set_zone (shop, days[i].zone);
      test_outside (shop,
                    "DELETE FROM open_hours; INSERT INTO open_hours (version, weekday,"
                    " opens_minute, closes_minute) VALUES (1, 6, 480, 1020), (1, 7, 480, 1020)");
      g_autoptr (UnsootDay) day = unsoot_day_load (shop->db, days[i].date, SHOP_NOW, &error);
      ck_no_error (error);
      ck_assert_int_eq (day->ends_at - day->starts_at, days[i].hours * SHOP_HOUR);
      ck_assert_int_eq (day->opens_at, days[i].opens_at);
      ck_assert_int_eq (day->closes_at, days[i].closes_at);
    }
}
END_TEST

START_TEST (test_waiting)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->fleet_vehicle, NULL);

  test_book_job (shop, job, shop->other_bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, job, 1000);
  check_hand (shop, SHOP_HOUR + 14 * 60, UNSOOT_HAND_WAITING, NULL);
  check_hand (shop, SHOP_HOUR + 25 * 60, UNSOOT_HAND_WAITING,
              "Tolver H6, unit 12 has waited 25 min for Bay 2 · Start");
}
END_TEST

START_TEST (test_halted_and_silent)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->technician, 2 * SHOP_HOUR);
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  g_autoptr (UnsootRunEvent) stall = unsoot_run_event_new (UNSOOT_RUN_HAPPENED, who.now);
  GError *error = NULL;

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, job, 1000);
  gint64 run = test_begin (shop, job);
  /* The run began an hour after the opening. */
  check_hand (shop, SHOP_HOUR + 44 * 60, UNSOOT_HAND_HALTED, NULL);
  g_autofree char *silent = g_strdup_printf (
      "Tolver H6, plate 7KD 204 stands at step 1 of %d with no entry for 50 min · Open in bay",
      (int) test_ask (shop, "SELECT count (*) FROM procedure_steps"));
  check_hand (shop, SHOP_HOUR + 50 * 60, UNSOOT_HAND_HALTED, silent);
  test_walk (shop, run, test_find_step (shop, run, UNSOOT_ACT_RUN, UNSOOT_SUBJECT_ENGINE));
  stall->happening = UNSOOT_HAPPENING_STALL;
  ck_assert (unsoot_job_run_post (shop->db, &who, run, stall, NULL, &error));
  g_autoptr (UnsootDay) day = day_at (shop, 2 * SHOP_HOUR + 60);
  const UnsootHand *hand = day->hands->pdata[0];
  ck_assert_int_eq (hand->kind, UNSOOT_HAND_HALTED);
  ck_assert_ptr_nonnull (strstr (hand->rest, "is stopped at step"));
  ck_assert (((UnsootDayBlock *) day->blocks->pdata[0])->halted);
}
END_TEST

START_TEST (test_released)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->technician, 2 * SHOP_HOUR);
  gint64 job = test_quote (shop, shop->vehicle, NULL);
  GError *error = NULL;

  test_authorise (shop, job);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  test_arrive (shop, job, 1000);
  test_begin (shop, job);
  unsoot_job_release (shop->db, &who, job, "Tove Aske", "gasket on order", &error);
  ck_no_error (error);
  check_hand (shop, SHOP_DAY, UNSOOT_HAND_RELEASED,
              "Tolver H6, plate 7KD 204 was released incomplete yesterday 10:00: gasket on order"
              " · Take up again");
}
END_TEST

START_TEST (test_short)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  unsoot_stock_count (shop->db, &clerk, shop->intake_lot, 1000, "counted", &error);
  ck_no_error (error);
  test_book_job (shop, test_quote (shop, shop->vehicle, NULL), shop->bay, shop->cart,
                 SHOP_DAY + 2 * SHOP_HOUR);
  check_hand (shop, 0, UNSOOT_HAND_SHORT, "Intake fluid R is 3 L short for tomorrow 10:00 · Order");
}
END_TEST

/* Out of use with enough of it there: the job that is booked takes it all the same. */
START_TEST (test_out_of_use)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing owner = test_as (shop->owner, 0);
  GError *error = NULL;
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (shop->db, shop->intake_fluid, &error);

  fluid->active = FALSE;
  ck_assert (unsoot_fluid_save (shop->db, &owner, fluid, &error));
  check_hand (shop, 0, UNSOOT_HAND_SHORT, NULL);
  fluid->active = TRUE;
  ck_assert (unsoot_fluid_save (shop->db, &owner, fluid, &error));
  test_book_job (shop, test_quote (shop, shop->vehicle, NULL), shop->bay, shop->cart,
                 SHOP_DAY + 2 * SHOP_HOUR);
  check_hand (shop, 0, UNSOOT_HAND_SHORT, NULL);
  fluid->active = FALSE;
  ck_assert (unsoot_fluid_save (shop->db, &owner, fluid, &error));
  check_hand (shop, 0, UNSOOT_HAND_SHORT,
              "Intake fluid R is out of use, and 4 L of it is promised for tomorrow 10:00"
              " · Change the job");
}
END_TEST

START_TEST (test_loan_overdue)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  UnsootLoanRow loan = { .item_id = shop->intake_adapter,
                         .to_kind = (char *) "shop",
                         .to_name = (char *) "Osier Garage",
                         .due_on = (char *) "2025-11-20" };
  GError *error = NULL;

  ck_assert (unsoot_adapter_lend (shop->db, &clerk, &loan, &error));
  check_hand (shop, 2 * SHOP_DAY, UNSOOT_HAND_LOAN, NULL);
  check_hand (shop, 3 * SHOP_DAY, UNSOOT_HAND_LOAN,
              "Adapter V-07/1 was due back yesterday from Osier Garage · Call");
}
END_TEST

START_TEST (test_machine)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing lead = test_as (shop->lead, 0);
  UnsootActing owner = test_as (shop->owner, 0);
  UnsootGaugeCheckRow check = { .machine_id = shop->cart,
                                .gauge = (char *) "fuel pressure",
                                .reads_pa = 55000,
                                .reference_pa = 55200,
                                .passed = TRUE,
                                .next_on = (char *) "2025-12-18" };
  GError *error = NULL;
  g_autoptr (UnsootMachineRow) machine = unsoot_machine_load (shop->db, shop->cart, &error);

  machine->hoses_due_on = g_strdup ("2025-11-17");
  ck_assert (unsoot_machine_save (shop->db, &owner, machine, NULL, NULL, &error));
  check_hand (shop, 0, UNSOOT_HAND_HOSES, "Cart A should have had new hoses yesterday · Replace");
  ck_assert (unsoot_gauge_check_post (shop->db, &lead, &check, &error));
  check_hand (shop, 22 * SHOP_DAY, UNSOOT_HAND_GAUGE, NULL);
  check_hand (shop, 23 * SHOP_DAY, UNSOOT_HAND_GAUGE,
              "Cart A is due for the check of its fuel pressure gauge in 7 days · Check");
}
END_TEST

START_TEST (test_estimate)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  check_hand (shop, 2 * SHOP_DAY, UNSOOT_HAND_ESTIMATE, NULL);
  check_hand (shop, 4 * SHOP_DAY, UNSOOT_HAND_ESTIMATE,
              "Estimate 1 for Ansel Reed has waited 4 days for an answer · Ask");
  check_hand (shop, 28 * SHOP_DAY, UNSOOT_HAND_ESTIMATE,
              "Estimate 1 for Ansel Reed runs out in 2 days · Ask");
  check_hand (shop, 31 * SHOP_DAY, UNSOOT_HAND_ESTIMATE,
              "Estimate 1 for Ansel Reed ran out yesterday without an answer · Ask");
  test_authorise (shop, job);
  check_hand (shop, 4 * SHOP_DAY, UNSOOT_HAND_ESTIMATE, NULL);
}
END_TEST

START_TEST (test_money_and_service)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing advisor = test_as (shop->advisor, 5 * SHOP_HOUR);
  GError *error = NULL;
  gint64 job = test_done (shop, shop->fleet_vehicle, "PO-1");

  check_hand (shop, 5 * SHOP_HOUR, UNSOOT_HAND_UNINVOICED,
              "Tolver H6, unit 12 was done today 12:00 and is not invoiced · Invoice");
  gint64 invoice = unsoot_job_invoice (shop->db, &advisor, job, &error);
  unsoot_invoice_pay (shop->db, &advisor, invoice, 30019, "card", NULL, NULL, &error);
  ck_no_error (error);
  check_hand (shop, 6 * SHOP_HOUR, UNSOOT_HAND_UNINVOICED, NULL);
  /* Due on 18 December: 12 days over on the 30th. */
  check_hand (shop, 30 * SHOP_DAY, UNSOOT_HAND_UNPAID, NULL);
  check_hand (shop, 42 * SHOP_DAY, UNSOOT_HAND_UNPAID,
              "Invoice 1 of Harrow Creek Gravel is 12 days overdue with $200.00 open · Call");
  /* A year on; the owner has consented to reminders. */
  check_hand (shop, 350 * SHOP_DAY, UNSOOT_HAND_REMINDER, NULL);
  check_hand (shop, 359 * SHOP_DAY, UNSOOT_HAND_REMINDER,
              "Tolver H6, unit 12 of Harrow Creek Gravel is due for service in 6 days · Remind");
}
END_TEST

START_TEST (test_expiry)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing clerk = test_as (shop->clerk, 0);
  GError *error = NULL;

  check_hand (shop, 0, UNSOOT_HAND_EXPIRY,
              "Lot R-0 of Intake fluid R expired 17 days ago with 5 L left · Record waste");
  unsoot_stock_count (shop->db, &clerk, shop->expired_lot, 0, "thrown away", &error);
  check_hand (shop, 0, UNSOOT_HAND_EXPIRY, NULL);
  check_hand (shop, 13 * SHOP_DAY, UNSOOT_HAND_EXPIRY,
              "Lot K-1 of Fuel fluid K expires in 30 days with 10 L left · Use first");
}
END_TEST

static Suite *
day_deeds_suite (void)
{
  Suite *suite = suite_create ("day deeds");
  TCase *tcase = tcase_create ("today");

  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, test_strip);
  tcase_add_test (tcase, test_a_holiday);
  tcase_add_test (tcase, test_hours_where_the_clock_changes);
  tcase_add_test (tcase, test_waiting);
  tcase_add_test (tcase, test_halted_and_silent);
  tcase_add_test (tcase, test_released);
  tcase_add_test (tcase, test_short);
  tcase_add_test (tcase, test_out_of_use);
  tcase_add_test (tcase, test_loan_overdue);
  tcase_add_test (tcase, test_machine);
  tcase_add_test (tcase, test_estimate);
  tcase_add_test (tcase, test_money_and_service);
  tcase_add_test (tcase, test_expiry);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (day_deeds_suite)
