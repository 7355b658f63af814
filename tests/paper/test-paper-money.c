/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Estimates and invoices as poppler reads them. Amounts are reckoned by hand beside the fixture. */
#include "printed.h"

#include <math.h>
#include <string.h>

#include "suite.h"

START_TEST (the_estimate_says_it_all)
{
  static const char *const wanted[] = {
    "Estimate 119",
    "Żółć, Ærø & Señor Ñandú Gravel, Sand and Aggregate Haulage Cooperative",
    "Gwenllian Þórðardóttir-Åkesson",
    "VIN 1M8GDM9AXKP042788",
    "120 400 mi on 14 Nov 2026",
    "P0401 P2463 P0299",
    "HCG-2026-1187",
    "Fuel side",
    "1 L",
    "Intake side",
    "2 L",
    "Why this much: fuel side 1 L: class 3, one-ton; intake side 2 L: class 3, one-ton",
    "Both sides clean, fuel and intake with EGR cooler",
    "Fleet discount",
    "$903.30",
    "Sales tax 7.25 %",
    "$34.89",
    "Estimated total",
    "$938.19",
    "Declined, not in the total",
    "Turbocharger vane check (next visit)",
    "valid until 14 Dec 2026",
    "more than 10 % or $100.00 over it, whichever is less",
    "by phone",
    "13 Nov 2026 09:30",
    "$1,050.00",
    "licensed practice come first",
    NULL,
  };
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_ESTIMATE, UNSOOT_PAPER_LETTER, -1);
  g_autofree char *text = probe_text (pdf, 0);

  printed_has_all (text, wanted);
  for (int i = 1; i <= 35; i++)
    {
      g_autofree char *line = g_strdup_printf ("Gasket set no. %d, inlet manifold", i);
      g_autofree char *price = g_strdup_printf ("$%d.%02d", (1095 + i) / 100, (1095 + i) % 100);
      printed_has (text, line);
      printed_has (text, price);
    }
}
END_TEST
/* A written estimate is shown as it was given, even where the job's lines went on. */
START_TEST (an_estimate_is_shown_as_given)
{
  UnsootEstimateRow *estimate = g_ptr_array_index (printed_job->estimates, 0);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  estimate->text = g_strdup ("Intake side clean, 1 job × 240.00 = 240.00");
  estimate->net_minor = 24000;
  estimate->tax_minor = 0;
  estimate->total_minor = 24000;
  pdf = printed_make (UNSOOT_PAPER_ESTIMATE, UNSOOT_PAPER_LETTER, -1);
  text = probe_text (pdf, 0);
  printed_has (text, "Intake side clean, 1 job × 240.00 = 240.00");
  printed_has (text, "Estimated total");
  printed_has (text, "$240.00");
  ck_assert_ptr_null (strstr (text, "938.19"));
}
END_TEST
START_TEST (an_unsigned_estimate_has_room_to_sign)
{
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  g_ptr_array_set_size (printed_job->authorisations, 0);
  pdf = printed_make (UNSOOT_PAPER_ESTIMATE, UNSOOT_PAPER_A4, -1);
  text = probe_text (pdf, 0);
  printed_has (text, "I authorise the work above up to a total of $938.19");
  printed_has (text, "Signature");
}
END_TEST
/* The state's limit in its four forms. */
START_TEST (the_limit_is_the_shops_setting)
{
  const struct
  {
    double percent;
    gint64 minor;
    const char *sentence;
  } cases[] = {
    { NAN, 0, "is done or charged without your word first" },
    { 12.5, 0, "more than 12.5 % over it" },
    { NAN, 5000, "more than $50.00 over it" },
    { 10, 5000, "more than 10 % or $50.00 over it, whichever is less" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GBytes) pdf = NULL;
      g_autofree char *text = NULL;

      printed_job->shop->estimate_over_percent = cases[i].percent;
      printed_job->shop->estimate_over_minor = cases[i].minor;
      pdf = printed_make (UNSOOT_PAPER_ESTIMATE, UNSOOT_PAPER_LETTER, -1);
      text = probe_text (pdf, 0);
      printed_has (text, cases[i].sentence);
    }
}
END_TEST
START_TEST (the_invoice_says_it_all)
{
  static const char *const wanted[] = {
    "Invoice 1031",
    "Bill to",
    "Żółć, Ærø & Señor Ñandú Gravel",
    "VIN 1M8GDM9AXKP042788",
    "14 Dec 2026",
    "HCG-2026-1187",
    "WM-22-0417",
    "Heron Fuel Cleaner",
    "Gasket set no. 32",
    "Sales tax 7.25 %",
    "$443.75",
    "$32.17",
    "Taxed at zero: labour",
    "$460.00",
    "Total",
    "$935.92",
    "Paid, bank transfer, 20 Nov 2026",
    "–$500.00",
    "Credit note 1032", /* 11.00 and its tax of 7.25 %, 0.80 */
    "–$11.80",
    "To be paid",
    "$424.12",
    "Terms: 30 days net.",
    "How to pay: By transfer to account 555 777",
    NULL,
  };
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_INVOICE, UNSOOT_PAPER_LETTER, 0);
  g_autofree char *text = probe_text (pdf, 0);

  printed_has_all (text, wanted);
}
END_TEST
START_TEST (the_credit_note_names_what_it_takes_back)
{
  static const char *const wanted[] = { "Credit note 1032",
                                        "Takes back invoice",
                                        "1031",
                                        "–1 pc",
                                        "–$11.00",
                                        "–$0.80",
                                        "–$11.80",
                                        "Reason: Gasket set no. 32 was not fitted",
                                        NULL };
  g_autoptr (GBytes) pdf = printed_make (UNSOOT_PAPER_INVOICE, UNSOOT_PAPER_LETTER, 1);
  g_autofree char *text = probe_text (pdf, 0);

  printed_has_all (text, wanted);
  ck_assert_ptr_null (strstr (text, "How to pay"));
  ck_assert_ptr_null (strstr (text, "To be paid"));
}
END_TEST
START_TEST (exemption_and_payment_are_told)
{
  UnsootInvoiceFile *invoice = g_ptr_array_index (printed_job->invoices, 0);
  UnsootInvoiceTaxRow *tax = g_ptr_array_index (invoice->taxes, 0);
  UnsootPaymentRow *payment = g_ptr_array_index (invoice->payments, 0);
  g_autoptr (GBytes) pdf = NULL;
  g_autofree char *text = NULL;

  g_free (tax->category);
  tax->category = g_strdup ("E");
  tax->rate_milli_percent = 0;
  g_free (tax->label);
  tax->label = g_strdup ("agricultural use");
  printed_job->customer->tax_exempt_number = g_strdup ("WX-77");
  payment->amount_minor = 93592 - 1180; /* the rest was taken back */
  pdf = printed_make (UNSOOT_PAPER_INVOICE, UNSOOT_PAPER_A4, 0);
  text = probe_text (pdf, 0);
  printed_has (text, "Exempt: agricultural use");
  printed_has (text, "Tax exemption number: WX-77");
  printed_has (text, "Paid in full");
  printed_has (text, "$0.00");
}
END_TEST
static Suite *
paper_money_suite (void)
{
  Suite *suite = suite_create ("paper-money");
  TCase *tests = tcase_create ("pages");

  tcase_add_checked_fixture (tests, printed_setup, printed_teardown);
  tcase_add_test (tests, the_estimate_says_it_all);
  tcase_add_test (tests, an_estimate_is_shown_as_given);
  tcase_add_test (tests, an_unsigned_estimate_has_room_to_sign);
  tcase_add_test (tests, the_limit_is_the_shops_setting);
  tcase_add_test (tests, the_invoice_says_it_all);
  tcase_add_test (tests, the_credit_note_names_what_it_takes_back);
  tcase_add_test (tests, exemption_and_payment_are_told);
  suite_add_tcase (suite, tests);
  return suite;
}

UNSOOT_TEST_MAIN (paper_money_suite)
