/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Invoices, payments and credit notes: what is refused, and that nothing is ever lost. */
#include "shop-fixture.h"

#include "customers.h"
#include "invoices.h"
#include "jobs.h"
#include "lists.h"
#include "trade-error.h"
#include "quotes.h"
#include "statements.h"

/* As reckoned in the test of one job. */
#define TOTAL 50019
#define TAX 1869

static gint64
invoice (TestShop *shop, gint64 job, GError **error)
{
  UnsootActing who = test_as (shop->advisor, 5 * SHOP_HOUR);

  return unsoot_job_invoice (shop->db, &who, job, error);
}

static gint64
invoiced (TestShop *shop, gint64 vehicle, const char *po_number)
{
  GError *error = NULL;
  gint64 id = invoice (shop, test_done (shop, vehicle, po_number), &error);

  ck_no_error (error);
  return id;
}

static gint64
pay (TestShop *shop, gint64 id, gint64 amount, GError **error)
{
  UnsootActing who = test_as (shop->advisor, 6 * SHOP_HOUR);

  return unsoot_invoice_pay (shop->db, &who, id, amount, "card", NULL, NULL, error);
}

static void
add_line (TestShop *shop, gint64 job, const char *kind, gint64 price)
{
  UnsootActing who = test_as (shop->advisor, 0);
  g_autoptr (UnsootJobLineRow) line = unsoot_job_line_row_new ();
  GError *error = NULL;

  line->job_id = job;
  line->kind = g_strdup (kind);
  line->text = g_strdup ("Seized bolt");
  line->quantity_milli = 1000;
  line->unit = g_strdup ("job");
  line->unit_price_minor = price;
  unsoot_job_line_save (shop->db, &who, line, &error);
  ck_no_error (error);
}

/* The limit is 10 % of 500.19: 50.01, rounded down. Labour carries no tax here. */
START_TEST (test_overrun)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);

  add_line (shop, job, "labour", 5002);
  ck_assert_int_eq (invoice (shop, job, &error), 0);
  ck_assert_ptr_nonnull (strstr (error->message, "$50.02 above the $500.19 authorised"));
  ck_constraint (error, "ask the customer again");
  ck_ask (shop, "SELECT count (*) FROM invoices", 0);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "done");
}
END_TEST

START_TEST (test_overrun_within_the_limit)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);

  add_line (shop, job, "labour", 5001);
  ck_assert_int_ne (invoice (shop, job, &error), 0);
  ck_ask (shop, "SELECT total_minor FROM invoices WHERE number = 1", TOTAL + 5001);
}
END_TEST

START_TEST (test_a_new_word_covers_it)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 5 * SHOP_HOUR);
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);

  add_line (shop, job, "labour", 90000);
  unsoot_job_estimate (shop->db, &who, job, &error);
  ck_no_error (error);
  unsoot_job_authorise (shop->db, &who, job, "Ansel Reed", "email", 0, NULL, NULL, &error);
  ck_no_error (error);
  ck_assert_int_ne (invoice (shop, job, &error), 0);
  ck_no_error (error);
  ck_ask (shop, "SELECT count (*) FROM authorisations", 2);
}
END_TEST

START_TEST (test_a_fleet_needs_its_order)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 60);
  GError *error = NULL;
  gint64 job = test_quote (shop, shop->fleet_vehicle, NULL);

  ck_assert (
      !unsoot_job_authorise (shop->db, &who, job, "Dispatch", "email", 0, NULL, NULL, &error));
  ck_refused (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, "Harrow Creek Gravel");
  ck_assert (!unsoot_job_authorise (shop->db, &who, job, "Dispatch", "email", 100001, "PO-1", NULL,
                                    &error));
  ck_refused (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, "$1,000.00 at most");
  ck_ask (shop, "SELECT count (*) FROM authorisations", 0);
  ck_ask (shop, "SELECT count (*) FROM jobs WHERE po_number IS NOT NULL", 0);
  ck_assert (unsoot_job_authorise (shop->db, &who, job, "Dispatch", "email", 100000, "PO-1", NULL,
                                   &error));
  ck_no_error (error);
}
END_TEST

START_TEST (test_no_invoice_without_the_order)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 5 * SHOP_HOUR);
  GError *error = NULL;
  gint64 job = test_done (shop, shop->fleet_vehicle, "PO-7");

  unsoot_job_set_po (shop->db, &who, job, NULL, &error);
  ck_no_error (error);
  ck_assert_int_eq (invoice (shop, job, &error), 0);
  ck_refused (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, "Harrow Creek Gravel");
  unsoot_job_set_po (shop->db, &who, job, "PO-8", &error);
  ck_assert_int_ne (invoice (shop, job, &error), 0);
  ck_ask_text (shop, "SELECT po_number FROM invoices", "PO-8");
  /* 30 days on from 18 November. */
  ck_ask_text (shop, "SELECT due_on FROM invoices", "2025-12-18");
}
END_TEST

START_TEST (test_an_exempt_customer_pays_no_tax)
{
  g_autoptr (TestShop) shop = test_shop_new ();

  invoiced (shop, shop->exempt_vehicle, NULL);
  ck_ask (shop, "SELECT total_minor FROM invoices", 48150);
  ck_ask (shop, "SELECT tax_minor FROM invoices", 0);
  ck_ask (shop, "SELECT taxable_minor FROM invoice_taxes WHERE category = 'E'", 22650);
  ck_ask_text (shop, "SELECT label FROM invoice_taxes WHERE category = 'E'",
               "Farm use, number F-88");
  ck_ask (shop, "SELECT count (*) FROM invoice_lines WHERE category = 'E'", 4);
}
END_TEST

START_TEST (test_who_may_and_when)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing technician = test_as (shop->technician, 5 * SHOP_HOUR);
  GError *error = NULL;
  gint64 early = test_quote (shop, shop->exempt_vehicle, NULL);
  gint64 job = test_done (shop, shop->vehicle, NULL);

  ck_assert_int_eq (invoice (shop, early, &error), 0);
  ck_constraint (error, "Job 1");
  ck_assert_int_eq (unsoot_job_invoice (shop->db, &technician, job, &error), 0);
  ck_not_allowed (error, "technician");
  ck_assert_int_ne (invoice (shop, job, &error), 0);
  ck_assert_int_eq (invoice (shop, job, &error), 0);
  ck_constraint (error, "Job 2");
}
END_TEST

/* A deed that fails takes no number. */
START_TEST (test_numbers_have_no_gaps)
{
  g_autoptr (TestShop) shop = test_shop_new_file ();
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);

  test_outside (shop, "CREATE TRIGGER broken BEFORE INSERT ON invoice_taxes"
                      " BEGIN SELECT RAISE (ABORT, 'broken'); END");
  ck_assert_int_eq (invoice (shop, job, &error), 0);
  g_clear_error (&error);
  ck_ask (shop, "SELECT count (*) FROM invoices", 0);
  ck_ask (shop, "SELECT count (*) FROM invoice_lines", 0);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "done");
  test_outside (shop, "DROP TRIGGER broken");
  ck_assert_int_ne (invoice (shop, job, &error), 0);
  ck_ask (shop, "SELECT number FROM invoices", 1);
}
END_TEST

START_TEST (test_payments)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing advisor = test_as (shop->advisor, 7 * SHOP_HOUR);
  GError *error = NULL;
  gint64 id = invoiced (shop, shop->vehicle, NULL);
  gint64 open = 0;

  ck_assert_int_eq (pay (shop, id, TOTAL + 1, &error), 0);
  ck_constraint (error, "$500.19 is open on invoice 1");
  ck_assert_int_eq (pay (shop, id, 0, &error), 0);
  ck_invalid (error, "more than nothing");
  gint64 payment = pay (shop, id, TOTAL, &error);
  ck_no_error (error);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "paid");
  ck_assert_int_eq (invoice (shop, 1, &error), 0);
  ck_constraint (error, "paid already");
  ck_assert_int_ne (unsoot_payment_reverse (shop->db, &advisor, payment, "bounced", &error), 0);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "invoiced");
  ck_assert (unsoot_invoice_open_minor (shop->db, id, &open, &error));
  ck_assert_int_eq (open, TOTAL);
  ck_assert_int_eq (unsoot_payment_reverse (shop->db, &advisor, payment, "again", &error), 0);
  ck_constraint (error, "already");
  ck_ask (shop, "SELECT count (*) FROM payments", 2);
}
END_TEST

static gint64
credit (TestShop *shop, gint64 id, const gint64 *positions, gsize n, GError **error)
{
  UnsootActing who = test_as (shop->advisor, 8 * SHOP_HOUR);

  return unsoot_invoice_credit (shop->db, &who, id, positions, n, "agreed", error);
}

START_TEST (test_credit_of_the_whole)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 id = invoiced (shop, shop->vehicle, NULL);
  gint64 open = 1;

  ck_assert_int_ne (credit (shop, id, NULL, 0, &error), 0);
  ck_no_error (error);
  ck_ask (shop, "SELECT total_minor FROM invoices WHERE number = 2", -TOTAL);
  ck_ask (shop, "SELECT credits_id FROM invoices WHERE number = 2", id);
  ck_ask (shop, "SELECT sum (net_minor) FROM invoice_lines", 0);
  ck_ask (shop, "SELECT sum (tax_minor) FROM invoice_taxes", 0);
  ck_assert (unsoot_invoice_open_minor (shop->db, id, &open, &error));
  ck_assert_int_eq (open, 0);
  /* The job can be invoiced anew, under the next number. */
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "done");
  ck_assert_int_eq (credit (shop, id, NULL, 0, &error), 0);
  ck_constraint (error, "left to credit");
  ck_assert_int_ne (invoice (shop, 1, &error), 0);
  ck_ask (shop, "SELECT max (number) FROM invoices", 3);
}
END_TEST

/* 500.19 less 100.00 paid and 56.29 (52.00 and its tax of 4.29) credited: 343.90. */
START_TEST (test_a_statement_counts_what_was_credited)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 id = invoiced (shop, shop->vehicle, NULL);
  const gint64 second[] = { 2 };

  ck_assert_int_ne (credit (shop, id, second, 1, &error), 0);
  ck_assert_int_ne (pay (shop, id, 10000, &error), 0);
  g_autoptr (UnsootStatementFile) file
      = unsoot_statement_load (shop->db, shop->person, SHOP_NOW + SHOP_DAY, &error);
  g_autoptr (GPtrArray) owing = unsoot_owing_list (shop->db, "2025-11-19", &error);
  ck_no_error (error);
  ck_assert_uint_eq (file->lines->len, 1);
  const UnsootStatementLine *line = file->lines->pdata[0];
  ck_assert_int_eq (line->total_minor, TOTAL);
  ck_assert_int_eq (line->paid_minor, 10000);
  ck_assert_int_eq (line->credited_minor, 5629);
  ck_assert_int_eq (line->open_minor, 34390);
  ck_assert_uint_eq (owing->len, 1);
  ck_assert_int_eq (((const UnsootOwing *) owing->pdata[0])->customer_id, shop->person);
  ck_assert_int_eq (((const UnsootOwing *) owing->pdata[0])->owes.total, 34390);
  /* Paid up, it is on neither any more. */
  ck_assert_int_ne (pay (shop, id, 34390, &error), 0);
  g_autoptr (UnsootStatementFile) none
      = unsoot_statement_load (shop->db, shop->person, SHOP_NOW + SHOP_DAY, &error);
  g_autoptr (GPtrArray) nobody = unsoot_owing_list (shop->db, "2025-11-19", &error);
  ck_no_error (error);
  ck_assert_uint_eq (none->lines->len, 0);
  ck_assert_uint_eq (nobody->len, 0);
}
END_TEST

/* Line 2 is 52.00 of fuel fluid: its tax is 4.29. Taken back in two parts, the tax of the
   whole is taken back to the cent. */
START_TEST (test_credit_of_a_part)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 id = invoiced (shop, shop->vehicle, NULL);
  const gint64 second[] = { 2 };

  ck_assert_int_ne (credit (shop, id, second, 1, &error), 0);
  ck_no_error (error);
  ck_ask (shop, "SELECT net_minor FROM invoices WHERE number = 2", -5200);
  ck_ask (shop, "SELECT tax_minor FROM invoices WHERE number = 2", -429);
  ck_assert_int_eq (credit (shop, id, second, 1, &error), 0);
  ck_constraint (error, "credited before");
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "invoiced");
  ck_assert_int_ne (credit (shop, id, NULL, 0, &error), 0);
  ck_ask (shop, "SELECT sum (total_minor) FROM invoices", 0);
  ck_ask (shop, "SELECT sum (tax_minor) FROM invoice_taxes", 0);
}
END_TEST

/* 18.50 has 1.53 of tax, 0.10 has 0.01, the other 208.00 have 17.16: 18.70, where the whole,
   226.60, had 18.69. The part that completes it takes back what is left. */
START_TEST (test_credit_leaves_no_cent)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 job = test_done (shop, shop->vehicle, NULL);
  const gint64 gasket[] = { 4 };
  const gint64 extra[] = { 7 };

  add_line (shop, job, "other", 10);
  gint64 id = invoice (shop, job, &error);
  ck_no_error (error);
  ck_ask (shop, "SELECT tax_minor FROM invoices", TAX);
  credit (shop, id, gasket, 1, &error);
  ck_no_error (error);
  ck_ask (shop, "SELECT tax_minor FROM invoices WHERE number = 2", -153);
  credit (shop, id, extra, 1, &error);
  ck_no_error (error);
  ck_ask (shop, "SELECT tax_minor FROM invoices WHERE number = 3", -1);
  credit (shop, id, NULL, 0, &error);
  ck_no_error (error);
  ck_ask (shop, "SELECT sum (total_minor) FROM invoices", 0);
}
END_TEST

START_TEST (test_a_credit_can_pay_the_rest)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  gint64 id = invoiced (shop, shop->vehicle, NULL);
  const gint64 second[] = { 2 };

  pay (shop, id, TOTAL - 5200 - 429, &error);
  ck_no_error (error);
  ck_assert_int_ne (credit (shop, id, second, 1, &error), 0);
  ck_ask_text (shop, "SELECT status FROM jobs WHERE id = 1", "paid");
}
END_TEST

START_TEST (test_what_a_customer_owes)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  GError *error = NULL;
  UnsootOwes owes;

  invoiced (shop, shop->fleet_vehicle, "PO-1");
  ck_assert (unsoot_customer_owes (shop->db, shop->fleet, "2025-12-17", &owes, &error));
  ck_assert_int_eq (owes.not_due, TOTAL);
  ck_assert (unsoot_customer_owes (shop->db, shop->fleet, "2026-01-18", &owes, &error));
  ck_assert_int_eq (owes.to_60, TOTAL);
  ck_assert_int_eq (owes.total, TOTAL);
  ck_assert_int_eq (owes.invoices, 1);
  ck_assert (unsoot_customer_owes (shop->db, shop->person, "2026-01-18", &owes, &error));
  ck_assert_int_eq (owes.total, 0);
}
END_TEST

static guint
count_wanted (TestShop *shop, UnsootInvoicesWanted wanted, const char *today)
{
  const UnsootListPage page = { .limit = 10, .order = UNSOOT_LIST_DOWN };
  GError *error = NULL;
  g_autoptr (GPtrArray) lines = unsoot_invoice_page (shop->db, &page, wanted, today, 0, &error);

  ck_no_error (error);
  return lines->len;
}

/* 30 days from 18 November: due on 18 December. Line 2 is 52.00 with 4.29 of tax. */
START_TEST (test_what_all_owe_and_which_are_late)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  const gint64 second[] = { 2 };
  GError *error = NULL;
  UnsootOwes owes;
  gint64 id = invoiced (shop, shop->fleet_vehicle, "PO-1");

  pay (shop, id, TOTAL - 5648, &error);
  ck_no_error (error);
  ck_assert_int_ne (credit (shop, id, second, 1, &error), 0);
  ck_assert (unsoot_customer_owes (shop->db, 0, "2025-12-19", &owes, &error));
  ck_assert_int_eq (owes.not_due, 0);
  ck_assert_int_eq (owes.to_30, 19);
  ck_assert_int_eq (owes.total, 19);
  ck_assert_int_eq (owes.invoices, 1);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_ALL, NULL), 2);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_OPEN, NULL), 1);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_OVERDUE, "2025-12-18"), 0);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_OVERDUE, "2025-12-19"), 1);
  pay (shop, id, 19, &error);
  ck_no_error (error);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_OPEN, NULL), 0);
  ck_assert_uint_eq (count_wanted (shop, UNSOOT_INVOICES_OVERDUE, "2025-12-19"), 0);
}
END_TEST

/* What was billed stays as it was, whatever becomes of the customer. */
START_TEST (test_frozen)
{
  g_autoptr (TestShop) shop = test_shop_new ();
  UnsootActing who = test_as (shop->advisor, 9 * SHOP_HOUR);
  GError *error = NULL;

  invoiced (shop, shop->vehicle, NULL);
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (shop->db, shop->person, &error);
  g_free (customer->name);
  customer->name = g_strdup ("Ansel Weir");
  ck_assert (unsoot_customer_save (shop->db, &who, customer, NULL, NULL, &error));
  ck_ask_text (shop, "SELECT bill_to FROM invoices", "Ansel Reed");
  ck_assert (!unsoot_db_run (shop->db, &error, "UPDATE invoices SET total_minor = 0"));
  g_clear_error (&error);
}
END_TEST

static Suite *
invoice_deeds_suite (void)
{
  Suite *suite = suite_create ("invoice deeds");
  TCase *tcase = tcase_create ("invoices");

  tcase_set_timeout (tcase, 60);
  tcase_add_test (tcase, test_overrun);
  tcase_add_test (tcase, test_overrun_within_the_limit);
  tcase_add_test (tcase, test_a_new_word_covers_it);
  tcase_add_test (tcase, test_a_fleet_needs_its_order);
  tcase_add_test (tcase, test_no_invoice_without_the_order);
  tcase_add_test (tcase, test_an_exempt_customer_pays_no_tax);
  tcase_add_test (tcase, test_who_may_and_when);
  tcase_add_test (tcase, test_numbers_have_no_gaps);
  tcase_add_test (tcase, test_payments);
  tcase_add_test (tcase, test_credit_of_the_whole);
  tcase_add_test (tcase, test_credit_of_a_part);
  tcase_add_test (tcase, test_a_statement_counts_what_was_credited);
  tcase_add_test (tcase, test_credit_leaves_no_cent);
  tcase_add_test (tcase, test_a_credit_can_pay_the_rest);
  tcase_add_test (tcase, test_what_a_customer_owes);
  tcase_add_test (tcase, test_what_all_owe_and_which_are_late);
  tcase_add_test (tcase, test_frozen);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (invoice_deeds_suite)
