/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "invoice-row.h"
#include "job-file.h"
#include "rows.h"

G_BEGIN_DECLS

/* What is owed, by days past due. */
typedef struct
{
  gint64 not_due;
  gint64 to_30; /* up to 30 days over */
  gint64 to_60;
  gint64 to_90;
  gint64 over_90;
  gint64 total;
  gint64 invoices; /* how many are open */
} UnsootOwes;

UnsootInvoiceFile *unsoot_invoice_load (UnsootDb *db, gint64 id, GError **error);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootInvoiceFile, unsoot_invoice_file_free)

/* The id of the invoice or credit note with this number. Errors: NOT_FOUND. */
gboolean unsoot_invoice_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error);

/* UnsootInvoiceFile of a job, oldest first. */
GPtrArray *unsoot_job_invoices (UnsootDb *db, gint64 job_id, GError **error);

/* What is still to be paid: total less payments and credit notes. */
gboolean unsoot_invoice_open_minor (UnsootDb *db, gint64 invoice_id, gint64 *amount,
                                    GError **error);

/**
 * unsoot_job_invoice:
 *
 * Freezes the lines that are not declined with their tax under the next number. Lines that
 * nobody gave a word for count as overrun.
 *
 * Errors: NOT_ALLOWED; CONSTRAINT for a job that is not done or already invoiced, a
 * purchase-order number that is missing, an overrun beyond what was authorised: the
 * sentence says how much.
 *
 * Returns: the invoice's id, 0 on error.
 */
gint64 unsoot_job_invoice (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error);

/**
 * unsoot_invoice_pay:
 * @amount_minor: part of what is open, or all of it
 * @method: cash, card, transfer or cheque
 * @received_on: (nullable): ISO date, the shop's today
 *
 * With the last part the job is paid. Errors: CONSTRAINT for more than is open.
 *
 * Returns: the payment's id, 0 on error.
 */
gint64 unsoot_invoice_pay (UnsootDb *db, const UnsootActing *who, gint64 invoice_id,
                           gint64 amount_minor, const char *method, const char *reference,
                           const char *received_on, GError **error);

/* The counter-posting of a payment that was wrong or bounced. */
gint64 unsoot_payment_reverse (UnsootDb *db, const UnsootActing *who, gint64 payment_id,
                               const char *reason, GError **error);

/**
 * unsoot_invoice_credit:
 * @positions: (nullable): positions of the lines to take back; %NULL is the whole
 * @reason: printed
 *
 * A credit note over whole lines, with their tax. Errors: CONSTRAINT for a line that was
 * taken back before.
 *
 * Returns: the credit note's id, 0 on error.
 */
gint64 unsoot_invoice_credit (UnsootDb *db, const UnsootActing *who, gint64 invoice_id,
                              const gint64 *positions, gsize n_positions, const char *reason,
                              GError **error);

/* What a customer owes on @today (ISO date); @customer_id 0: all of them together. */
gboolean unsoot_customer_owes (UnsootDb *db, gint64 customer_id, const char *today,
                               UnsootOwes *owes, GError **error);

G_END_DECLS
