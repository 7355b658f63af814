/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField invoice_columns[] = {
  UNSOOT_COLUMN (UnsootInvoiceRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, number, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootInvoiceRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootInvoiceRow, issued_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, due_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, currency, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, bill_to, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, vehicle, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, po_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, net_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, tax_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, total_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, credits_id, INT64, REF),
  UNSOOT_COLUMN (UnsootInvoiceRow, note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootInvoiceRow, unsoot_invoice_row, "invoices", N_ ("invoice"), TRUE,
                      invoice_columns)

static const UnsootField invoice_line_columns[] = {
  UNSOOT_COLUMN (UnsootInvoiceLineRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, invoice_id, INT64, REF),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, text, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, quantity_milli, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, unit, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, unit_price_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, net_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, category, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceLineRow, rate_milli_percent, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootInvoiceLineRow, unsoot_invoice_line_row, "invoice_lines",
                      N_ ("invoice line"), TRUE, invoice_line_columns)

static const UnsootField invoice_tax_columns[] = {
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, invoice_id, INT64, REF),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, category, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, rate_milli_percent, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, taxable_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, tax_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootInvoiceTaxRow, label, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootInvoiceTaxRow, unsoot_invoice_tax_row, "invoice_taxes",
                      N_ ("invoice tax"), TRUE, invoice_tax_columns)

static const UnsootField payment_columns[] = {
  UNSOOT_COLUMN (UnsootPaymentRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, invoice_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPaymentRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPaymentRow, amount_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, method, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, reference, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, received_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPaymentRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPaymentRow, reverses_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootPaymentRow, unsoot_payment_row, "payments", N_ ("payment"), TRUE,
                      payment_columns)
