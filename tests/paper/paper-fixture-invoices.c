/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-fixture-private.h"

#define MORNING PAPER_FIXTURE_MORNING
#define MINUTE 60

static UnsootInvoiceFile *
add_invoice (UnsootJobFile *file, gint64 id, gint64 number, const char *kind, gint64 sign)
{
  UnsootInvoiceFile *invoice = g_new0 (UnsootInvoiceFile, 1);
  UnsootInvoiceRow *row = unsoot_invoice_row_new ();

  row->id = id;
  row->number = number;
  row->kind = g_strdup (kind);
  row->issued_on = g_strdup ("2026-11-14");
  row->due_on = g_strdup ("2026-12-14");
  row->currency = g_strdup ("USD");
  row->bill_to
      = g_strdup ("Żółć, Ærø & Señor Ñandú Gravel, Sand and Aggregate Haulage "
                  "Cooperative\nGwenllian Þórðardóttir-Åkesson\n1200 Quarry Approach Road\n"
                  "Harrow Creek Westmark 40233");
  row->vehicle = g_strdup ("2014 Brindle T4 5.1, unit 12, plate 7KD 204, VIN 1M8GDM9AXKP042788");
  row->po_number = g_strdup ("HCG-2026-1187");
  row->at = MORNING + 180 * MINUTE;
  invoice->invoice = row;
  invoice->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_line_row_free);
  invoice->taxes = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_tax_row_free);
  invoice->payments = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_payment_row_free);
  g_ptr_array_add (file->invoices, invoice);
  return invoice;
}

static void
add_invoice_line (UnsootInvoiceFile *invoice, const char *text, gint64 quantity_milli,
                  const char *unit, gint64 price, gint64 net)
{
  UnsootInvoiceLineRow *line = unsoot_invoice_line_row_new ();

  line->text = g_strdup (text);
  line->quantity_milli = quantity_milli;
  line->unit = g_strdup (unit);
  line->unit_price_minor = price;
  line->net_minor = net;
  g_ptr_array_add (invoice->lines, line);
}

static void
add_invoice_tax (UnsootInvoiceFile *invoice, const char *category, gint64 rate, gint64 taxable,
                 gint64 tax, const char *label)
{
  UnsootInvoiceTaxRow *row = unsoot_invoice_tax_row_new ();

  row->category = g_strdup (category);
  row->rate_milli_percent = rate;
  row->taxable_minor = taxable;
  row->tax_minor = tax;
  row->label = g_strdup (label);
  g_ptr_array_add (invoice->taxes, row);
}

static void
add_payment (UnsootInvoiceFile *invoice, gint64 amount, const char *method, const char *day)
{
  UnsootPaymentRow *payment = unsoot_payment_row_new ();

  payment->amount_minor = amount;
  payment->method = g_strdup (method);
  payment->received_on = g_strdup (day);
  g_ptr_array_add (invoice->payments, payment);
}

void
paper_fixture_fill_invoices (UnsootJobFile *file)
{
  UnsootInvoiceFile *invoice = add_invoice (file, 71, 1031, "invoice", 1);
  UnsootInvoiceFile *credit;

  add_invoice_line (invoice, "Both sides clean, fuel and intake with EGR cooler", 1000, "job",
                    46000, 46000);
  add_invoice_line (invoice, "Heron Fuel Cleaner", 1000, "L", 2875, 2875);
  add_invoice_line (invoice, "Rook Intake Cleaner", 2000, "L", 3150, 6300);
  for (int i = 1; i <= 32; i++)
    {
      g_autofree char *text = g_strdup_printf ("Gasket set no. %d", i);
      add_invoice_line (invoice, text, 1000, "pc", 1100, 1100);
    }
  invoice->invoice->net_minor = 90375;
  invoice->invoice->tax_minor = 3217;
  invoice->invoice->total_minor = 93592;
  add_invoice_tax (invoice, "S", 7250, 44375, 3217, "Sales tax");
  add_invoice_tax (invoice, "Z", 0, 46000, 0, "labour");
  add_payment (invoice, 50000, "transfer", "2026-11-20");
  credit = add_invoice (file, 72, 1032, "credit", -1);
  credit->invoice->credits_id = 71;
  credit->invoice->note = g_strdup ("Gasket set no. 32 was not fitted");
  add_invoice_line (credit, "Gasket set no. 32", -1000, "pc", 1100, -1100);
  credit->invoice->net_minor = -1100;
  credit->invoice->tax_minor = -80;
  credit->invoice->total_minor = -1180;
  add_invoice_tax (credit, "S", 7250, -1100, -80, "Sales tax");
}
