/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "suite.h"

#include "bill.h"
#include "trade-error.h"

#include <string.h>

#define EVERY_KIND(tax_category, tax_rate, why)                                                    \
  {                                                                                                \
    { tax_category, tax_rate, why }, { tax_category, tax_rate, why },                              \
        { tax_category, tax_rate, why }, { tax_category, tax_rate, why },                          \
        { tax_category, tax_rate, why },                                                           \
  }

/* Labour is not taxed, fluids and kits are, disposal at another rate: a shop's own choice. */
static const UnsootBillTerms mixed = {
  .rules = { { UNSOOT_TAX_EXEMPT, 0, "labour is not taxed here" },
             { UNSOOT_TAX_STANDARD, 8250, NULL },
             { UNSOOT_TAX_STANDARD, 8250, NULL },
             { UNSOOT_TAX_STANDARD, 2000, NULL },
             { UNSOOT_TAX_ZERO, 0, NULL } },
};

static UnsootTaxRow *
row_at (const UnsootBill *bill, guint i)
{
  ck_assert_uint_lt (i, bill->rows->len);
  return &g_array_index (bill->rows, UnsootTaxRow, i);
}

static UnsootBill *
reckon_one (gint64 unit_price, gint64 quantity, gint64 rate)
{
  UnsootBillTerms terms = { .rules = EVERY_KIND (UNSOOT_TAX_STANDARD, rate, NULL) };
  UnsootBillLine line = { UNSOOT_BILL_FLUID, quantity, unit_price, 0, 0, 0 };
  g_autoptr (GError) error = NULL;
  UnsootBill *bill = unsoot_bill_reckon (&line, 1, NULL, 0, &terms, &error);
  ck_no_error (error);
  return bill;
}

/* EN 16931-1: 1460.50 at 25 % is 365.125, so 365.13. */
START_TEST (half_a_cent_goes_up)
{
  g_autoptr (UnsootBill) bill = reckon_one (146050, 1000, 25000);
  ck_assert_int_eq (bill->tax, 36513);
  ck_assert_int_eq (bill->with_tax, 182563);
  ck_assert_int_eq (bill->due, 182563);
}
END_TEST

/* EN 16931-1, price base quantity: 132 × 15.24 / 12 = 167.64. */
START_TEST (price_for_a_dozen)
{
  UnsootBillLine line = { UNSOOT_BILL_KIT, 132000, 1524, 12000, 0, 0 };
  gint64 net = 0;
  ck_assert (unsoot_bill_line_net (&line, &net, NULL));
  ck_assert_int_eq (net, 16764);
}
END_TEST

/* EN 16931-1, BR-CO-17: 908.91 at 21 % is 190.87 by category. Taxed line by
 * line it would be 190.88, which is wrong: 454.12 gives 95.37, 454.79 95.51. */
START_TEST (tax_is_by_category_not_by_line)
{
  UnsootBillTerms terms = { .rules = EVERY_KIND (UNSOOT_TAX_STANDARD, 21000, NULL) };
  UnsootBillLine lines[]
      = { { UNSOOT_BILL_FLUID, 1000, 45412, 0, 0, 0 }, { UNSOOT_BILL_KIT, 1000, 45479, 0, 0, 0 } };
  g_autoptr (UnsootBill) bill = unsoot_bill_reckon (lines, 2, NULL, 0, &terms, NULL);
  ck_assert_uint_eq (bill->rows->len, 1);
  ck_assert_int_eq (row_at (bill, 0)->taxable, 90891);
  ck_assert_int_eq (row_at (bill, 0)->tax, 19087);
}
END_TEST

/* Worked by hand: labour 1.5 h × 120.00 = 180.00 (exempt); fluid 2 × 48.50 less
 * 10 % = 87.30, kit 31.25 less 1.25 = 30.00, shop-supply charge 5.00 on kit, so
 * 122.30 × 8.25 % = 10.08975 → 10.09; disposal 3.33 × 2 % = 0.0666 → 0.07;
 * allowance 20.00 on labour. 300.63 − 20 + 5 = 285.63; + 10.16 = 295.79. */
START_TEST (a_job_is_billed)
{
  UnsootBillLine lines[] = { { UNSOOT_BILL_LABOUR, 1500, 12000, 0, 0, 0 },
                             { UNSOOT_BILL_FLUID, 2000, 4850, 0, 10000, 0 },
                             { UNSOOT_BILL_KIT, 1000, 3125, 0, 0, 125 },
                             { UNSOOT_BILL_DISPOSAL, 1000, 333, 0, 0, 0 } };
  UnsootBillAdjustment adjustments[]
      = { { FALSE, UNSOOT_BILL_LABOUR, 2000 }, { TRUE, UNSOOT_BILL_KIT, 500 } };
  UnsootBillTerms terms = mixed;
  terms.prepaid = 10000;
  terms.rounding = 1;
  g_autoptr (GError) error = NULL;
  g_autoptr (UnsootBill) bill = unsoot_bill_reckon (lines, 4, adjustments, 2, &terms, &error);
  ck_no_error (error);
  ck_assert_int_eq (g_array_index (bill->nets, gint64, 1), 8730);
  ck_assert_int_eq (bill->lines, 30063);
  ck_assert_int_eq (bill->allowances, 2000);
  ck_assert_int_eq (bill->charges, 500);
  ck_assert_int_eq (bill->without_tax, 28563);
  ck_assert_int_eq (bill->tax, 1016);
  ck_assert_int_eq (bill->with_tax, 29579);
  ck_assert_int_eq (bill->due, 19580);
  ck_assert_uint_eq (bill->rows->len, 3);
  ck_assert_int_eq (row_at (bill, 0)->rate, 2000);
  ck_assert_int_eq (row_at (bill, 0)->tax, 7);
  ck_assert_int_eq (row_at (bill, 1)->taxable, 12230);
  ck_assert_int_eq (row_at (bill, 1)->tax, 1009);
  ck_assert_int_eq (row_at (bill, 2)->category, UNSOOT_TAX_EXEMPT);
  ck_assert_int_eq (row_at (bill, 2)->taxable, 16000);
  ck_assert_str_eq (row_at (bill, 2)->reason, "labour is not taxed here");
}
END_TEST

START_TEST (exempt_customer_pays_no_tax)
{
  UnsootBillLine lines[] = { { UNSOOT_BILL_LABOUR, 1000, 10000, 0, 0, 0 },
                             { UNSOOT_BILL_FLUID, 1000, 5000, 0, 0, 0 },
                             { UNSOOT_BILL_OTHER, 1000, 700, 0, 0, 0 } };
  UnsootBillTerms terms = mixed;
  terms.exempt_reason = "county road works";
  g_autoptr (UnsootBill) bill = unsoot_bill_reckon (lines, 3, NULL, 0, &terms, NULL);
  ck_assert_int_eq (bill->tax, 0);
  ck_assert_int_eq (bill->due, 15700);
  ck_assert_uint_eq (bill->rows->len, 2);
  ck_assert_int_eq (row_at (bill, 0)->category, UNSOOT_TAX_ZERO);
  ck_assert_int_eq (row_at (bill, 1)->category, UNSOOT_TAX_EXEMPT);
  ck_assert_int_eq (row_at (bill, 1)->taxable, 15000);
  ck_assert_str_eq (row_at (bill, 1)->reason, "labour is not taxed here; county road works");
  terms.exempt_reason = "";
  ck_assert_ptr_null (unsoot_bill_reckon (lines, 3, NULL, 0, &terms, NULL));
}
END_TEST

/* BR-S-05, BR-Z-05, BR-E-05, BR-E-10, BR-O-05, BR-O-10. */
START_TEST (bad_tax_rules_are_refused)
{
  static const UnsootTaxRule bad[] = {
    { UNSOOT_TAX_STANDARD, 0, NULL },      { UNSOOT_TAX_STANDARD, -1, NULL },
    { UNSOOT_TAX_STANDARD, 100001, NULL }, { UNSOOT_TAX_ZERO, 1, NULL },
    { UNSOOT_TAX_EXEMPT, 0, NULL },        { UNSOOT_TAX_EXEMPT, 5, "why" },
    { UNSOOT_TAX_OUTSIDE, 0, "" },         { UNSOOT_TAX_OUTSIDE, 5, "why" },
    { (UnsootTaxCategory) 'Q', 0, NULL },
  };
  UnsootBillLine line = { UNSOOT_BILL_KIT, 1000, 100, 0, 0, 0 };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      UnsootBillTerms terms = mixed;
      g_autoptr (GError) error = NULL;
      terms.rules[UNSOOT_BILL_KIT] = bad[i];
      ck_assert_ptr_null (unsoot_bill_reckon (&line, 1, NULL, 0, &terms, &error));
      ck_assert_ptr_nonnull (strstr (error->message, "Gaskets and filters"));
    }
}
END_TEST

START_TEST (bad_lines_are_named)
{
  static const UnsootBillLine bad[] = {
    { UNSOOT_BILL_KIT, 1000, -100, 0, 0, 0 },
    { UNSOOT_BILL_KIT, 1000, 100, -1000, 0, 0 },
    { UNSOOT_BILL_KIT, 1000, 100, 0, 100001, 0 },
    { UNSOOT_BILL_KIT, 1000, 100, 0, -1, 0 },
    { UNSOOT_BILL_KIT, G_MAXINT64, G_MAXINT64, 0, 0, 0 },
    { UNSOOT_BILL_KIT, 1000, 100, 0, 0, G_MININT64 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      UnsootBillLine lines[] = { { UNSOOT_BILL_KIT, 1000, 100, 0, 0, 0 }, bad[i] };
      g_autoptr (GError) error = NULL;
      ck_assert_ptr_null (unsoot_bill_reckon (lines, 2, NULL, 0, &mixed, &error));
      ck_assert_msg (g_str_has_prefix (error->message, "Line 2: "), "%s", error->message);
    }
}
END_TEST

/* UNTDID 5305, the codes that EN 16931 admits for these cases. */
START_TEST (categories_are_stored_by_code)
{
  for (const char *code = "SZEO"; *code; code++)
    {
      const char text[] = { *code, '\0' };
      ck_assert_str_eq (unsoot_slug_of (unsoot_tax_categories, *code), text);
    }
}
END_TEST

START_TEST (outside_does_not_mix)
{
  UnsootBillLine lines[]
      = { { UNSOOT_BILL_LABOUR, 1000, 100, 0, 0, 0 }, { UNSOOT_BILL_KIT, 1000, 100, 0, 0, 0 } };
  UnsootBillTerms terms = mixed;
  terms.rules[UNSOOT_BILL_LABOUR] = (UnsootTaxRule){ UNSOOT_TAX_OUTSIDE, 0, "a service" };
  g_autoptr (UnsootBill) both = unsoot_bill_reckon (lines, 2, NULL, 0, &terms, NULL);
  g_autoptr (UnsootBill) alone = unsoot_bill_reckon (lines, 1, NULL, 0, &terms, NULL);
  g_autoptr (UnsootBill) taxed = unsoot_bill_reckon (lines, 2, NULL, 0, &mixed, NULL);
  ck_assert (unsoot_bill_mixes_outside (both));
  ck_assert (!unsoot_bill_mixes_outside (alone));
  ck_assert (!unsoot_bill_mixes_outside (taxed));
}
END_TEST

static void
random_lines (GRand *rand, UnsootBillLine *lines, gsize n)
{
  for (gsize i = 0; i < n; i++)
    lines[i] = (UnsootBillLine){
      .kind = (UnsootBillKind) g_rand_int_range (rand, 0, UNSOOT_BILL_KINDS),
      .quantity = g_rand_int_range (rand, -2000, 20000),
      .unit_price = g_rand_int_range (rand, 0, 50000),
      .discount_rate = g_rand_boolean (rand) ? 0 : g_rand_int_range (rand, 0, 100001),
    };
}

/* The rules' sums, written out again in plain long double for a whole bill. */
static void
check_sums (const UnsootBill *bill)
{
  gint64 nets = 0, taxable = 0, tax = 0;
  for (guint i = 0; i < bill->nets->len; i++)
    nets += g_array_index (bill->nets, gint64, i);
  for (guint i = 0; i < bill->rows->len; i++)
    {
      const UnsootTaxRow *row = row_at (bill, i);
      long double exact = (long double) row->taxable * (long double) row->rate / 100000.0L;
      ck_assert_msg (exact - (long double) row->tax <= 0.5L
                         && (long double) row->tax - exact <= 0.5L,
                     "tax is off by more than half a minor unit");
      taxable += row->taxable;
      tax += row->tax;
    }
  ck_assert_int_eq (bill->lines, nets);
  ck_assert_int_eq (bill->without_tax, nets - bill->allowances + bill->charges);
  ck_assert_int_eq (taxable, bill->without_tax);
  ck_assert_int_eq (tax, bill->tax);
  ck_assert_int_eq (bill->with_tax, bill->without_tax + tax);
  ck_assert_int_eq (bill->due, bill->with_tax - bill->prepaid + bill->rounding);
}

/* A credit note is the same as billing every quantity taken back. */
START_TEST (credit_takes_back_exactly)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (16931);
  for (int round = 0; round < 3000; round++)
    {
      UnsootBillLine lines[6];
      gsize n = (gsize) g_rand_int_range (rand, 0, 7);
      UnsootBillAdjustment adjustments[]
          = { { g_rand_boolean (rand), UNSOOT_BILL_FLUID, g_rand_int_range (rand, 0, 3000) } };
      UnsootBillTerms terms = mixed;
      terms.prepaid = g_rand_int_range (rand, 0, 9000);
      random_lines (rand, lines, n);
      g_autoptr (UnsootBill) bill = unsoot_bill_reckon (lines, n, adjustments, 1, &terms, NULL);
      g_autoptr (UnsootBill) note = unsoot_bill_negate (bill, NULL);
      check_sums (bill);
      check_sums (note);
      for (gsize i = 0; i < n; i++)
        lines[i].quantity = -lines[i].quantity;
      adjustments[0].amount = -adjustments[0].amount;
      terms.prepaid = -terms.prepaid;
      g_autoptr (UnsootBill) back = unsoot_bill_reckon (lines, n, adjustments, 1, &terms, NULL);
      ck_assert_int_eq (note->due, back->due);
      ck_assert_int_eq (note->tax, back->tax);
      ck_assert_int_eq (note->due, -bill->due);
      ck_assert_uint_eq (note->rows->len, bill->rows->len);
    }
}
END_TEST

static Suite *
bill_suite (void)
{
  Suite *suite = suite_create ("bill");
  TCase *tests = tcase_create ("bill");
  tcase_add_test (tests, half_a_cent_goes_up);
  tcase_add_test (tests, price_for_a_dozen);
  tcase_add_test (tests, tax_is_by_category_not_by_line);
  tcase_add_test (tests, a_job_is_billed);
  tcase_add_test (tests, exempt_customer_pays_no_tax);
  tcase_add_test (tests, bad_tax_rules_are_refused);
  tcase_add_test (tests, bad_lines_are_named);
  tcase_add_test (tests, categories_are_stored_by_code);
  tcase_add_test (tests, outside_does_not_mix);
  tcase_add_test (tests, credit_takes_back_exactly);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (bill_suite)
