/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One job from quote to paid: every posting it leaves in the book, asked of the book itself. */
#include "shop-fixture.h"

#include <math.h>

#include "finishes.h"
#include "fluids.h"
#include "invoices.h"
#include "job-files.h"
#include "jobs.h"
#include "quotes.h"

/* By hand: labour 240.00; 2 L at 26.00 is 52.00; 4 L at 31.00 is 124.00; kit 18.50 and 32.00;
   disposal 15.00: 481.50. Taxed are 226.50 at 8.25 %: 18.68625, 18.69. Together 500.19. */
#define NET 48150
#define TAX 1869
#define TOTAL 50019

START_TEST (test_quote_says_what_and_why)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootQuoteWish wish = { .vehicle_id = shop->vehicle, .service_id = shop->both };
  GError *error = NULL;
  g_autoptr (UnsootQuote) quote = unsoot_quote_preview (shop->db, &wish, SHOP_NOW, &error);

  ck_no_error (error);
  /* Common practice, no source: 2 L and 4 L for the larger engines. */
  ck_assert_int_eq (quote->fuel.ml, 2000);
  ck_assert_int_eq (quote->intake.ml, 4000);
  /* 49 CFR 565.15, table II: class 7 up to 33,000 lb. */
  ck_assert_str_eq (quote->fuel.reason, "2 L: class 7");
  ck_assert_str_eq (quote->intake.reason, "4 L: class 7");
  ck_assert_int_eq (quote->planned_minutes, 100);
  ck_assert_int_eq (quote->lines->len, 6);
  ck_assert_int_eq (quote->bill->without_tax, NET);
  ck_assert_int_eq (quote->bill->tax, TAX);
  ck_assert_int_eq (quote->bill->with_tax, TOTAL);
  ck_assert_int_eq (quote->adapters->len, 2);
  ck_assert_int_eq (quote->warnings->len, 0);
  ck_assert_str_eq (quote->valid_until, "2025-12-18");
  ck_ask (shop, "SELECT count (*) FROM jobs", 0);
}
END_TEST

static void
refuse_quote (TestShop *shop, gint64 intake_fluid, const char *words)
{
  UnsootQuoteWish wish
      = { .vehicle_id = shop->vehicle, .service_id = shop->both, .intake_fluid_id = intake_fluid };
  GError *error = NULL;

  ck_assert_ptr_null (unsoot_quote_preview (shop->db, &wish, SHOP_NOW, &error));
  ck_constraint (error, words);
}

START_TEST (test_a_fluid_out_of_use_is_not_offered)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing lead = test_as (shop->lead, 0);
  GError *error = NULL;
  g_autoptr (UnsootFluidRow) fluid = unsoot_fluid_load (shop->db, shop->intake_fluid, &error);

  fluid->active = FALSE;
  ck_assert (unsoot_fluid_save (shop->db, &lead, fluid, &error));
  ck_no_error (error);
  refuse_quote (shop, shop->intake_fluid, "Intake fluid R is out of use");
  refuse_quote (shop, 0, "no fluid for the intake side");
}
END_TEST

START_TEST (test_quote_is_stored_whole)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  ck_assert_int_eq (job, 1);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "quoted");
  ck_ask (shop, "SELECT fuel_dose_ml FROM jobs WHERE id = 1", 2000);
  ck_ask (shop, "SELECT count (*) FROM job_lines WHERE job_id = 1 AND state = 'offered'", 6);
  ck_ask (shop, "SELECT count (*) FROM job_status WHERE job_id = 1 AND status = 'quoted'", 1);
  ck_ask (shop, "SELECT total_minor FROM estimates WHERE job_id = 1 AND number = 1", TOTAL);
  ck_ask_text (shop, "SELECT valid_until FROM estimates WHERE number = 1", "2025-12-18");
}
END_TEST

static void
check_authorised (TestShop *shop)
{
  ck_ask (shop, "SELECT amount_minor FROM authorisations WHERE job_id = 1", TOTAL);
  ck_ask_text (shop, "SELECT how FROM authorisations WHERE job_id = 1", "phone");
  ck_ask (shop, "SELECT count (*) FROM job_lines WHERE state = 'authorised'", 6);
}

static void
check_booked (TestShop *shop)
{
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "booked");
  ck_ask (shop, "SELECT ends_at - starts_at FROM bookings WHERE job_id = 1", 6000);
  ck_ask (shop, "SELECT count (*) FROM booking_adapters", 2);
}

static void
check_arrived (TestShop *shop)
{
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "arrived");
  /* NIST SP 811: the mile is 1609.344 m; 51,000 miles are 82,076,544 m. */
  ck_ask (shop, "SELECT metres FROM meter_readings WHERE job_id = 1", 82076544);
  ck_ask_text (shop, "SELECT unit FROM meter_readings WHERE job_id = 1", "mi");
}

static void
check_done (TestShop *shop)
{
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "done");
  ck_ask_text (shop, "SELECT outcome FROM runs WHERE job_id = 1", "finished");
  ck_ask_text (shop, "SELECT signature FROM runs WHERE job_id = 1", "Tove Aske");
  ck_ask (shop, "SELECT count (*) FROM stock_moves WHERE job_id = 1 AND kind = 'use'", 2);
  ck_ask (shop, "SELECT ml FROM stock_moves WHERE job_id = 1 AND lot_id = 1", -2000);
  ck_ask (shop, "SELECT sum (ml) FROM stock_moves WHERE lot_id = 1", 8000);
  ck_ask (shop, "SELECT sum (ml) FROM stock_moves WHERE lot_id = 2", 16000);
  ck_ask_text (shop, "SELECT state FROM bookings WHERE job_id = 1", "kept");
  /* A year on, or 40,000 km: with one reading only the year is known. */
  ck_ask_text (shop, "SELECT next_due_on FROM jobs WHERE id = 1", "2026-11-18");
  ck_ask (shop, "SELECT next_due_metres FROM jobs WHERE id = 1", 82076544 + 40000000);
}

/* Tank 1 is the fuel side's, tank 2 the intake side's. */
static void
check_tanks (TestShop *shop)
{
  ck_ask_text (shop, "SELECT contents FROM tank_events WHERE tank_id = 1 ORDER BY id DESC LIMIT 1",
               "clean");
  ck_ask_text (shop, "SELECT contents FROM tank_events WHERE tank_id = 2 ORDER BY id DESC LIMIT 1",
               "clean");
  ck_ask (shop, "SELECT ml FROM tank_events WHERE tank_id = 1 AND kind = 'fill'", 2000);
  ck_ask (shop, "SELECT lot_id FROM tank_events WHERE tank_id = 2 AND kind = 'fill'", 2);
  ck_ask (shop, "SELECT fluid_id FROM tank_events WHERE tank_id = 2 AND kind = 'fill'", 2);
  /* Nine tenths of the dose were used, the rest was drained. */
  ck_ask (shop, "SELECT min (ml) FROM tank_events WHERE tank_id = 1 AND kind = 'run'", 200);
  ck_ask (shop, "SELECT min (ml) FROM tank_events WHERE tank_id = 2 AND kind = 'run'", 400);
  ck_ask (shop, "SELECT count (*) FROM tank_events WHERE job_id = 1 AND kind = 'drain'", 4);
}

static gint64
invoice_it (TestShop *shop, gint64 job)
{
  UnsootActing who = test_as (shop->advisor, 5 * SHOP_HOUR);
  GError *error = NULL;
  gint64 invoice = unsoot_job_invoice (shop->db, &who, job, &error);

  ck_no_error (error);
  return invoice;
}

static void
check_invoiced (TestShop *shop)
{
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "invoiced");
  ck_ask (shop, "SELECT total_minor FROM invoices WHERE number = 1", TOTAL);
  ck_ask (shop, "SELECT sum (net_minor) FROM invoice_lines WHERE invoice_id = 1", NET);
  ck_ask (shop, "SELECT tax_minor FROM invoice_taxes WHERE invoice_id = 1 AND category = 'S'", TAX);
  ck_ask (shop, "SELECT taxable_minor FROM invoice_taxes WHERE invoice_id = 1 AND category = 'S'",
          22650);
  ck_ask (shop, "SELECT taxable_minor FROM invoice_taxes WHERE invoice_id = 1 AND category = 'Z'",
          25500);
  ck_ask_text (shop, "SELECT due_on FROM invoices WHERE number = 1", "2025-11-18");
  ck_ask_text (shop, "SELECT bill_to FROM invoices WHERE number = 1", "Ansel Reed");
}

static void
pay (TestShop *shop, gint64 invoice, gint64 amount)
{
  UnsootActing who = test_as (shop->advisor, 6 * SHOP_HOUR);
  GError *error = NULL;

  unsoot_invoice_pay (shop->db, &who, invoice, amount, "card", NULL, NULL, &error);
  ck_no_error (error);
}

START_TEST (test_whole_job)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  test_authorise (shop, job);
  check_authorised (shop);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  check_booked (shop);
  test_arrive (shop, job, 51000);
  check_arrived (shop);
  gint64 run = test_begin (shop, job);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "in-bay");
  test_walk (shop, run, G_MAXINT);
  ck_ask (shop, "SELECT count (*) FROM stock_moves WHERE kind = 'use'", 0);
  test_finish (shop, job);
  check_done (shop);
  check_tanks (shop);
  gint64 invoice = invoice_it (shop, job);
  check_invoiced (shop);
  pay (shop, invoice, 20000);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "invoiced");
  pay (shop, invoice, TOTAL - 20000);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "paid");
  ck_ask_text (shop, "SELECT received_on FROM payments WHERE id = 2", "2025-11-18");
  ck_ask (shop, "SELECT count (*) FROM job_status WHERE job_id = 1", 7);
  unsoot_db_assert_idle (shop->db);
}
END_TEST

START_TEST (test_every_change_names_who_made_it)
{
  g_autoptr (TestShop) shop = test_shop_new ();

  test_done (shop, shop->vehicle, NULL);
  ck_ask_text (shop,
               "SELECT was FROM changes WHERE record = 'jobs' AND field = 'status'"
               " AND now = 'done'",
               "in-bay");
  ck_ask (shop,
          "SELECT staff_id FROM changes WHERE record = 'jobs' AND field = 'status'"
          " AND now = 'done'",
          shop->technician);
  ck_ask (shop,
          "SELECT staff_id FROM changes WHERE record = 'jobs' AND field = 'status'"
          " AND now = 'booked'",
          shop->advisor);
  ck_ask (shop,
          "SELECT at FROM changes WHERE record = 'jobs' AND field = 'status' AND now = 'done'",
          SHOP_NOW + 4 * SHOP_HOUR);
}
END_TEST

START_TEST (test_job_file_holds_everything)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  gint64 job = test_done (shop, shop->vehicle, NULL);
  GError *error = NULL;

  invoice_it (shop, job);
  g_autoptr (UnsootJobFile) file = unsoot_job_file_load (shop->db, job, &error);
  ck_no_error (error);
  ck_assert_str_eq (file->customer->name, "Ansel Reed");
  ck_assert_int_eq (file->phones->len, 1);
  ck_assert_int_eq (file->meters->len, 1);
  ck_assert_int_eq (file->kit->len, 2);
  ck_assert_int_eq (file->lines->len, 6);
  ck_assert_int_eq (file->status->len, 6);
  ck_assert_int_eq (file->estimates->len, 1);
  ck_assert_int_eq (file->authorisations->len, 1);
  ck_assert_str_eq (file->bay->name, "Bay 1");
  ck_assert_str_eq (file->machine->name, "Cart A");
  ck_assert_str_eq (file->technician->name, "Tove Aske");
  ck_assert_int_eq (file->adapters->len, 2);
  ck_assert_int_eq (file->phases->len, 5);
  ck_assert_int_gt (file->steps->len, 60);
  ck_assert_int_gt (file->run_events->len, 60);
  ck_assert_str_eq (file->fuel_fluid->code, "K");
  ck_assert_str_eq (file->intake_lot->code, "R-1");
  ck_assert_int_eq (file->stock_moves->len, 2);
  ck_assert_int_eq (file->invoices->len, 1);
  ck_assert_int_eq (file->tax_rules->len, 5);
  ck_assert_int_eq (file->utc_offset_minutes, 0);
}
END_TEST

START_TEST (test_declined_work_comes_back)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 60);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  unsoot_job_decline (shop->db, &who, job, "not this year", &error);
  ck_no_error (error);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "declined");
  ck_ask_text (shop, "SELECT declined_reason FROM job_lines WHERE id = 1", "not this year");
  g_autoptr (GPtrArray) lines = unsoot_vehicle_declined (shop->db, shop->vehicle, &error);
  ck_no_error (error);
  ck_assert_int_eq (lines->len, 1);
  ck_assert_str_eq (((UnsootJobLineRow *) lines->pdata[0])->text, "Both sides");

  /* Once the same work was done it is not offered any more. */
  test_done (shop, shop->vehicle, NULL);
  g_autoptr (GPtrArray) left = unsoot_vehicle_declined (shop->db, shop->vehicle, &error);
  ck_no_error (error);
  ck_assert_int_eq (left->len, 0);
}
END_TEST

START_TEST (test_quote_again)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 60);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->vehicle, NULL);

  unsoot_job_decline (shop->db, &who, job, NULL, &error);
  ck_no_error (error);
  unsoot_job_quote_again (shop->db, &who, job, &error);
  ck_no_error (error);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "quoted");
  ck_ask (shop, "SELECT count (*) FROM job_lines WHERE state = 'offered'", 6);
  ck_ask (shop, "SELECT count (*) FROM estimates WHERE job_id = 1", 2);
  test_book_job (shop, job, shop->bay, shop->cart, SHOP_HOUR);
  ck_assert (!unsoot_job_quote_again (shop->db, &who, job, &error));
  ck_constraint (error, "declined or cancelled");
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "booked");
}
END_TEST

static Suite *
job_deeds_suite (void)
{
  Suite *suite = suite_create ("job deeds");
  TCase *tcase = tcase_create ("one job");

  tcase_add_test (tcase, test_quote_says_what_and_why);
  tcase_add_test (tcase, test_a_fluid_out_of_use_is_not_offered);
  tcase_add_test (tcase, test_quote_is_stored_whole);
  tcase_add_test (tcase, test_whole_job);
  tcase_add_test (tcase, test_every_change_names_who_made_it);
  tcase_add_test (tcase, test_job_file_holds_everything);
  tcase_add_test (tcase, test_declined_work_comes_back);
  tcase_add_test (tcase, test_quote_again);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (job_deeds_suite)
