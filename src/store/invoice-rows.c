/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-rows.h"

#include "deed.h"
#include "indexing.h"
#include "job-status.h"
#include "jobs.h"

/* The next number is one more than the last: the deed's own write lock keeps others from
 * taking the same, and a deed that fails leaves no gap. */
static gboolean
take_number (UnsootDb *db, UnsootInvoiceRow *invoice, GError **error)
{
  return unsoot_db_int (db, &invoice->number, error,
                        "SELECT COALESCE (max (number), 0) + 1 FROM invoices");
}

gboolean
unsoot_invoice_post (UnsootDb *db, const UnsootActing *who, UnsootInvoiceRow *invoice,
                     GPtrArray *lines, GPtrArray *taxes, GError **error)
{
  invoice->at = who->now;
  invoice->staff_id = who->staff_id;
  if (!take_number (db, invoice, error)
      || !unsoot_rows_post (db, &unsoot_invoice_row_type, invoice, error))
    return FALSE;
  for (guint i = 0; i < lines->len; i++)
    {
      UnsootInvoiceLineRow *line = lines->pdata[i];
      line->invoice_id = invoice->id;
      if (!unsoot_rows_post (db, &unsoot_invoice_line_row_type, line, error))
        return FALSE;
    }
  for (guint i = 0; i < taxes->len; i++)
    {
      UnsootInvoiceTaxRow *tax = taxes->pdata[i];
      tax->invoice_id = invoice->id;
      if (!unsoot_rows_post (db, &unsoot_invoice_tax_row_type, tax, error))
        return FALSE;
    }
  return unsoot_index_invoice (db, invoice->id, error);
}

gboolean
unsoot_invoice_settle (UnsootDb *db, const UnsootActing *who, gint64 invoice_id, GError **error)
{
  g_autoptr (UnsootInvoiceRow) invoice
      = unsoot_rows_get (db, &unsoot_invoice_row_type, invoice_id, error);
  gint64 open = 0;

  if (invoice == NULL || !unsoot_invoice_open_minor (db, invoice_id, &open, error))
    return FALSE;
  if (invoice->job_id == 0)
    return TRUE;
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, invoice->job_id, error);
  if (job == NULL)
    return FALSE;
  UnsootJobStatus status = unsoot_job_row_status (job);
  if (open <= 0 && status == UNSOOT_JOB_INVOICED)
    return unsoot_job_move (db, who, job, UNSOOT_JOB_PAID, NULL, error);
  if (open > 0 && status == UNSOOT_JOB_PAID)
    return unsoot_job_move (db, who, job, UNSOOT_JOB_INVOICED, NULL, error);
  return TRUE;
}
