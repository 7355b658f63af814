/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Invoices and credit notes. */
typedef struct
{
  gint64 id;
  gint64 number; /* without gaps */
  char *kind;
  gint64 job_id;      /* of jobs */
  gint64 customer_id; /* of customers */
  char *issued_on;    /* ISO date */
  char *due_on;       /* ISO date */
  char *currency;
  char *bill_to; /* name and address as they were */
  char *vehicle; /* as it was described */
  char *po_number;
  gint64 net_minor;
  gint64 tax_minor;
  gint64 total_minor; /* negative on a credit note */
  gint64 credits_id;  /* of invoices */
  char *note;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
} UnsootInvoiceRow;
UNSOOT_DECLARE_RECORD (UnsootInvoiceRow, unsoot_invoice_row)

/* Frozen lines. */
typedef struct
{
  gint64 id;
  gint64 invoice_id; /* of invoices */
  gint64 position;
  char *kind;
  char *text;
  gint64 quantity_milli;
  char *unit;
  gint64 unit_price_minor;
  gint64 net_minor;
  char *category;
  gint64 rate_milli_percent;
} UnsootInvoiceLineRow;
UNSOOT_DECLARE_RECORD (UnsootInvoiceLineRow, unsoot_invoice_line_row)

/* Tax by category, frozen. */
typedef struct
{
  gint64 id;
  gint64 invoice_id; /* of invoices */
  char *category;
  gint64 rate_milli_percent;
  gint64 taxable_minor;
  gint64 tax_minor;
  char *label;
} UnsootInvoiceTaxRow;
UNSOOT_DECLARE_RECORD (UnsootInvoiceTaxRow, unsoot_invoice_tax_row)

/* Money in, and back. */
typedef struct
{
  gint64 id;
  gint64 invoice_id;   /* of invoices */
  gint64 customer_id;  /* of customers */
  gint64 amount_minor; /* negative where money goes back */
  char *method;
  char *reference;
  char *received_on;  /* ISO date */
  gint64 at;          /* Unix seconds */
  gint64 staff_id;    /* of staff */
  gint64 reverses_id; /* of payments */
} UnsootPaymentRow;
UNSOOT_DECLARE_RECORD (UnsootPaymentRow, unsoot_payment_row)

G_END_DECLS
