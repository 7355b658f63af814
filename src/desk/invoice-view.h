/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "customer-row.h"
#include "invoices.h"

G_BEGIN_DECLS

/* What the page of one invoice or credit note shows. */
typedef struct
{
  UnsootInvoiceFile *file;
  UnsootCustomerRow *customer;
  GPtrArray *phones;      /* UnsootPhoneRow of the customer: who owes is called */
  GPtrArray *calls;       /* UnsootCallLine, newest first */
  GPtrArray *credits;     /* UnsootInvoiceFile: the credit notes over it, oldest first */
  gint64 job_number;      /* 0: of no job */
  gint64 open_minor;      /* 0 for a credit note */
  gint64 credited_number; /* of a credit note: the invoice it takes back; 0 else */
} UnsootInvoiceView;

UnsootInvoiceView *unsoot_invoice_view_load (UnsootDb *db, gint64 id, GError **error);
void unsoot_invoice_view_free (UnsootInvoiceView *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootInvoiceView, unsoot_invoice_view_free)

gboolean unsoot_invoice_view_is_credit (const UnsootInvoiceView *self);

/* Whether a credit note took that line back. */
gboolean unsoot_invoice_view_credited (const UnsootInvoiceView *self, gint64 position);

/* Whether a payment was taken back by another. */
gboolean unsoot_invoice_view_reversed (const UnsootInvoiceView *self, gint64 payment_id);

G_END_DECLS
