/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-invoice.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "page-block.h"
#include "page-table.h"
#include "paper-bill.h"
#include "paper-cautions.h"
#include "paper-words.h"
#include "pay-method.h"

static gboolean
is_credit (const UnsootInvoiceRow *row)
{
  return g_strcmp0 (row->kind, "credit") == 0;
}

/* The number of the invoice that a credit note takes back, if the file has it. */
static char *
credited_number (const UnsootJobFile *file, const UnsootInvoiceRow *row)
{
  for (guint i = 0; i < file->invoices->len; i++)
    {
      const UnsootInvoiceFile *other = g_ptr_array_index (file->invoices, i);

      if (row->credits_id != 0 && other->invoice->id == row->credits_id)
        return unsoot_paper_serial (other->invoice->number);
    }
  return NULL;
}

static char *
due_words (const UnsootInvoiceRow *row)
{
  g_autofree char *day = unsoot_paper_day (row->due_on);

  if (is_credit (row))
    return NULL;
  return g_strcmp0 (row->due_on, row->issued_on) == 0 ? g_strdup_printf (_ ("%s, at once"), day)
                                                      : g_steal_pointer (&day);
}

static void
draw_facts (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootInvoiceRow *row)
{
  g_autofree char *issued = unsoot_paper_day (row->issued_on);
  g_autofree char *due = due_words (row);
  g_autofree char *credited = credited_number (file, row);
  g_autofree char *job = unsoot_paper_serial (file->job->number);
  g_autofree char *odometer = unsoot_paper_meter_of_job (file, "odometer");
  g_autofree char *hours = unsoot_paper_meter_of_job (file, "hours");
  g_autofree char *meters = unsoot_paper_join ("\n", odometer != NULL ? odometer : "",
                                               hours != NULL ? hours : "", NULL);
  const UnsootFact who[] = {
    { is_credit (row) ? _ ("Credit to") : _ ("Bill to"), row->bill_to, NULL },
    { _ ("Vehicle"), row->vehicle, meters },
  };
  const UnsootFact what[] = {
    { _ ("Issued"), issued, NULL },
    { _ ("Due"), due, NULL },
    { _ ("Takes back invoice"), credited, NULL },
    { _ ("Your PO number"), row->po_number, NULL },
    { _ ("Job"), job, NULL },
    { _ ("Our tax number"), file->shop->tax_number, NULL },
  };

  unsoot_page_facts (kit, who, G_N_ELEMENTS (who), 2);
  unsoot_page_facts (kit, what, G_N_ELEMENTS (what), 5);
}

static void
draw_lines (UnsootPageKit *kit, const UnsootInvoiceFile *invoice)
{
  g_autofree UnsootPaperLine *printed = g_new0 (UnsootPaperLine, invoice->lines->len + 1);

  for (guint i = 0; i < invoice->lines->len; i++)
    {
      const UnsootInvoiceLineRow *line = g_ptr_array_index (invoice->lines, i);
      printed[i] = (UnsootPaperLine){ line->text, line->quantity_milli, line->unit,
                                      line->unit_price_minor, line->net_minor };
    }
  unsoot_paper_lines (kit, printed, invoice->lines->len, invoice->invoice->currency);
}

static void
draw_taxes (UnsootPageKit *kit, const UnsootInvoiceFile *invoice)
{
  const char *currency = invoice->invoice->currency;
  const UnsootColumn columns[] = {
    { _ ("Tax"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("On"), 90, UNSOOT_ALIGN_RIGHT },
    { _ ("Tax amount"), 90, UNSOOT_ALIGN_RIGHT },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < invoice->taxes->len; i++)
    {
      const UnsootInvoiceTaxRow *tax = g_ptr_array_index (invoice->taxes, i);
      g_autofree char *label
          = unsoot_paper_tax_label (tax->category, tax->rate_milli_percent, tax->label);
      g_autofree char *taxable = unsoot_paper_money (tax->taxable_minor, currency);
      g_autofree char *amount = unsoot_paper_money (tax->tax_minor, currency);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TEXT, .text = label },
        { UNSOOT_CELL_TEXT, .text = taxable },
        { UNSOOT_CELL_TEXT, .text = amount },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static char *
payment_label (const UnsootPaymentRow *payment)
{
  g_autofree char *day = unsoot_paper_day (payment->received_on);
  const char *words = payment->method;
  int method;

  if (unsoot_slug_find (unsoot_pay_methods, payment->method, &method))
    words = unsoot_slug_words (unsoot_pay_methods, method);
  if (payment->amount_minor < 0)
    /* Translators: the way it was paid, the day */
    return g_strdup_printf (_ ("Paid back, %s, %s"), words, day);
  return g_strdup_printf (_ ("Paid, %s, %s"), words, day);
}

static const char *
balance_words (gint64 due)
{
  if (due == 0)
    return _ ("Paid in full");
  return due > 0 ? _ ("To be paid") : _ ("Paid too much");
}

/* What credit notes took back of it. */
static gint64
add_credits (GArray *totals, const UnsootJobFile *file, const UnsootInvoiceRow *row)
{
  gint64 credited = 0;

  for (guint i = 0; i < file->invoices->len; i++)
    {
      const UnsootInvoiceRow *note
          = ((UnsootInvoiceFile *) g_ptr_array_index (file->invoices, i))->invoice;

      if (!is_credit (note) || note->credits_id != row->id)
        continue;
      g_autofree char *number = unsoot_paper_serial (note->number);
      unsoot_paper_totals_add (totals, g_strdup_printf (_ ("Credit note %s"), number),
                               note->total_minor, FALSE);
      credited += note->total_minor;
    }
  return credited;
}

static void
draw_totals (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootInvoiceFile *invoice)
{
  const UnsootInvoiceRow *row = invoice->invoice;
  g_autoptr (GArray) totals = unsoot_paper_totals_new ();
  gint64 due = row->total_minor;

  unsoot_paper_totals_add (totals, g_strdup (_ ("Without tax")), row->net_minor, FALSE);
  unsoot_paper_totals_add (totals, g_strdup (_ ("Tax")), row->tax_minor, FALSE);
  unsoot_paper_totals_add (totals, g_strdup (_ ("Total")), row->total_minor, TRUE);
  for (guint i = 0; i < invoice->payments->len; i++)
    {
      const UnsootPaymentRow *payment = g_ptr_array_index (invoice->payments, i);

      unsoot_paper_totals_add (totals, payment_label (payment), -payment->amount_minor, FALSE);
      due -= payment->amount_minor;
    }
  if (!is_credit (row))
    due += add_credits (totals, file, row);
  if (!is_credit (row))
    unsoot_paper_totals_add (totals, g_strdup (balance_words (due)), due, TRUE);
  unsoot_paper_totals_draw (kit, totals, row->currency);
}

static void
add_sentence (GPtrArray *sentences, const char *lead, const char *text)
{
  if (text != NULL && *text != '\0')
    g_ptr_array_add (sentences, g_strconcat (lead, text, NULL));
}

/* The terms are those of the day it was issued, whatever the customer's are now. */
static void
add_terms (GPtrArray *sentences, const UnsootInvoiceRow *row)
{
  int issued, due;

  if (unsoot_day_parse (row->issued_on, &issued, NULL) && unsoot_day_parse (row->due_on, &due, NULL)
      && due > issued)
    g_ptr_array_add (sentences, g_strdup_printf (ngettext ("Terms: %d day net.",
                                                           "Terms: %d days net.", due - issued),
                                                 due - issued));
}

static gboolean
has_exempt (const UnsootInvoiceFile *invoice)
{
  for (guint i = 0; i < invoice->taxes->len; i++)
    if (g_strcmp0 (((UnsootInvoiceTaxRow *) g_ptr_array_index (invoice->taxes, i))->category, "E")
        == 0)
      return TRUE;
  return FALSE;
}

static void
draw_notes (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootInvoiceFile *invoice)
{
  const UnsootInvoiceRow *row = invoice->invoice;
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  const UnsootNotice notice = { UNSOOT_NOTICE_PLAIN, NULL, sentences, NULL };

  if (has_exempt (invoice))
    add_sentence (sentences, _ ("Tax exemption number: "), file->customer->tax_exempt_number);
  if (is_credit (row))
    add_sentence (sentences, _ ("Reason: "), row->note);
  else
    {
      add_terms (sentences, row);
      add_sentence (sentences, _ ("How to pay: "), file->shop->payment_note);
      add_sentence (sentences, "", row->note);
    }
  if (sentences->len > 0)
    unsoot_page_notice (kit, &notice);
}

GBytes *
unsoot_paper_invoice (const UnsootJobFile *file, const UnsootInvoiceFile *invoice,
                      UnsootPaperSize size, char **remark, GError **error)
{
  const UnsootInvoiceRow *row = invoice->invoice;
  g_autoptr (UnsootPageKit) kit = NULL;

  if (!unsoot_paper_check (file, error))
    return NULL;
  kit = unsoot_page_kit_new (
      size,
      unsoot_paper_head (file, g_strdup (is_credit (row) ? _ ("Credit note") : _ ("Invoice")),
                         unsoot_paper_serial (row->number), unsoot_paper_day (row->issued_on),
                         row->at),
      error);
  if (kit == NULL)
    return NULL;
  draw_facts (kit, file, row);
  unsoot_page_skip (kit, 6);
  draw_lines (kit, invoice);
  unsoot_page_skip (kit, 6);
  draw_taxes (kit, invoice);
  draw_totals (kit, file, invoice);
  draw_notes (kit, file, invoice);
  unsoot_paper_cautions (kit, UNSOOT_SHEET_CUSTOMER, UNSOOT_SIDE_NONE);
  return unsoot_page_kit_finish (kit, remark, error);
}
