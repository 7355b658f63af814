/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoices.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>
#include <math.h>

#include "authorise.h"
#include "civil.h"
#include "contact.h"
#include "customers.h"
#include "deed.h"
#include "ageing.h"
#include "indexing.h"
#include "invoice-rows.h"
#include "job-bills.h"
#include "job-status.h"
#include "jobs.h"
#include "shops.h"
#include "vehicles.h"

UnsootInvoiceFile *
unsoot_invoice_load (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootInvoiceFile) file = g_new0 (UnsootInvoiceFile, 1);

  file->invoice = unsoot_rows_get (db, &unsoot_invoice_row_type, id, error);
  if (file->invoice == NULL)
    return NULL;
  file->lines = unsoot_rows_list (db, &unsoot_invoice_line_row_type, error,
                                  "WHERE invoice_id = $1 ORDER BY position, id", unsoot_int (id));
  file->taxes = file->lines != NULL
                    ? unsoot_rows_list (db, &unsoot_invoice_tax_row_type, error,
                                        "WHERE invoice_id = $1 ORDER BY id", unsoot_int (id))
                    : NULL;
  file->payments = file->taxes != NULL
                       ? unsoot_rows_list (db, &unsoot_payment_row_type, error,
                                           "WHERE invoice_id = $1 ORDER BY id", unsoot_int (id))
                       : NULL;
  return file->payments != NULL ? g_steal_pointer (&file) : NULL;
}

gboolean
unsoot_invoice_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (unsoot_db_int (db, id, &failed, "SELECT id FROM invoices WHERE number = $1",
                     unsoot_int (number)))
    return TRUE;
  if (g_error_matches (failed, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND,
                             _ ("There is no invoice %" PRId64 "."), number);
  g_propagate_error (error, g_steal_pointer (&failed));
  return FALSE;
}

GPtrArray *
unsoot_job_invoices (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (GPtrArray) rows
      = unsoot_rows_list (db, &unsoot_invoice_row_type, error, "WHERE job_id = $1 ORDER BY number",
                          unsoot_int (job_id));
  g_autoptr (GPtrArray) files
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_file_free);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const UnsootInvoiceRow *row = rows->pdata[i];
      UnsootInvoiceFile *file = unsoot_invoice_load (db, row->id, error);
      if (file == NULL)
        return NULL;
      g_ptr_array_add (files, file);
    }
  return rows != NULL ? g_steal_pointer (&files) : NULL;
}

static gboolean
check_authority (UnsootDb *db, gint64 job_id, gint64 total, GError **error)
{
  g_auto (UnsootAuthorityResult) result = { 0 };

  if (!unsoot_job_authority (db, job_id, total, &result, error))
    return FALSE;
  if (result.verdict == UNSOOT_AUTHORITY_NONE || result.verdict == UNSOOT_AUTHORITY_ASK)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", result.sentence);
  return TRUE;
}

static gboolean
set_due (UnsootInvoiceRow *invoice, const UnsootCustomerRow *customer, GError **error)
{
  int issued;

  if (!unsoot_day_parse (invoice->issued_on, &issued, error))
    return FALSE;
  invoice->due_on = unsoot_day_iso (unsoot_ageing_due (issued, (int) customer->terms_days));
  return TRUE;
}

/* All that an invoice is made from. */
typedef struct
{
  UnsootDb *db;
  const UnsootActing *who;
  UnsootJobRow *job;
  UnsootShopRow *shop;
  UnsootCustomerRow *customer;
  UnsootVehicleRow *vehicle;
  UnsootShopTerms *terms;
  GPtrArray *lines;
  UnsootBill *bill;
} Billing;

static void
billing_clear (Billing *billing)
{
  unsoot_job_row_free (billing->job);
  unsoot_shop_row_free (billing->shop);
  unsoot_customer_row_free (billing->customer);
  unsoot_vehicle_row_free (billing->vehicle);
  g_clear_pointer (&billing->terms, unsoot_shop_terms_free);
  g_clear_pointer (&billing->lines, g_ptr_array_unref);
  g_clear_pointer (&billing->bill, unsoot_bill_free);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Billing, billing_clear)

static gboolean
gather (Billing *billing, gint64 job_id, GError **error)
{
  UnsootDb *db = billing->db;

  return (billing->job = unsoot_job_load (db, job_id, error)) != NULL
         && (billing->shop = unsoot_shop_load (db, error)) != NULL
         && (billing->customer = unsoot_customer_load (db, billing->job->customer_id, error))
                != NULL
         && (billing->vehicle = unsoot_vehicle_load (db, billing->job->vehicle_id, error)) != NULL
         && (billing->terms = unsoot_shop_terms_load (db, billing->customer, error)) != NULL
         && (billing->lines = unsoot_job_lines_standing (db, job_id, TRUE, error)) != NULL
         && (billing->bill = unsoot_job_lines_bill (billing->lines, billing->terms, error)) != NULL;
}

static gboolean
check (Billing *billing, GError **error)
{
  if (billing->lines->len == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Job %" PRId64 " has nothing to charge."), billing->job->number);
  return unsoot_po_number_check (billing->job->po_number, billing->customer->po_required,
                                 billing->customer->name, error)
         && check_authority (billing->db, billing->job->id, billing->bill->with_tax, error);
}

static UnsootInvoiceRow *
head_of (Billing *billing, GError **error)
{
  g_autoptr (UnsootInvoiceRow) invoice = unsoot_invoice_row_new ();

  invoice->kind = g_strdup ("invoice");
  invoice->job_id = billing->job->id;
  invoice->customer_id = billing->customer->id;
  invoice->issued_on = unsoot_shop_date (billing->shop, billing->who->now);
  invoice->currency = g_strdup (billing->shop->currency);
  invoice->bill_to = unsoot_customer_bill_to (billing->db, billing->customer, error);
  invoice->vehicle = unsoot_vehicle_whole_title (billing->vehicle);
  invoice->po_number = g_strdup (billing->job->po_number);
  invoice->net_minor = billing->bill->without_tax;
  invoice->tax_minor = billing->bill->tax;
  invoice->total_minor = billing->bill->with_tax;
  if (invoice->bill_to == NULL || !set_due (invoice, billing->customer, error))
    return NULL;
  return g_steal_pointer (&invoice);
}

static GPtrArray *
frozen_lines (const Billing *billing)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_line_row_free);

  for (guint i = 0; i < billing->lines->len; i++)
    {
      const UnsootJobLineRow *from = billing->lines->pdata[i];
      UnsootInvoiceLineRow *line = unsoot_invoice_line_row_new ();
      UnsootTaxCategory category;
      unsoot_shop_terms_of (billing->terms, from->kind, &category, &line->rate_milli_percent);
      line->position = i + 1;
      line->kind = g_strdup (from->kind);
      line->text = g_strdup (from->text);
      line->quantity_milli = from->quantity_milli;
      line->unit = g_strdup (from->unit);
      line->unit_price_minor = from->unit_price_minor;
      line->net_minor = g_array_index (billing->bill->nets, gint64, i);
      line->category = g_strdup (unsoot_slug_of (unsoot_tax_categories, (int) category));
      g_ptr_array_add (lines, line);
    }
  return lines;
}

static GPtrArray *
frozen_taxes (const Billing *billing)
{
  GPtrArray *taxes = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_tax_row_free);

  for (guint i = 0; i < billing->bill->rows->len; i++)
    {
      const UnsootTaxRow *from = &g_array_index (billing->bill->rows, UnsootTaxRow, i);
      UnsootInvoiceTaxRow *tax = unsoot_invoice_tax_row_new ();
      tax->category = g_strdup (unsoot_slug_of (unsoot_tax_categories, (int) from->category));
      tax->rate_milli_percent = from->rate;
      tax->taxable_minor = from->taxable;
      tax->tax_minor = from->tax;
      tax->label = g_strdup (unsoot_shop_terms_label (billing->terms, from));
      g_ptr_array_add (taxes, tax);
    }
  return taxes;
}

/* From paid the path leads back to invoiced, when a payment returns; not to a second invoice. */
static gboolean
check_not_paid (const Billing *billing, GError **error)
{
  if (unsoot_job_row_status (billing->job) != UNSOOT_JOB_PAID)
    return TRUE;
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                           _ ("Job %" PRId64 " is invoiced and paid already."),
                           billing->job->number);
}

gint64
unsoot_job_invoice (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_INVOICE, error);
  g_auto (Billing) billing = { .db = db, .who = who };

  if (deed == NULL || !gather (&billing, job_id, error) || !check_not_paid (&billing, error)
      || !unsoot_job_move (db, who, billing.job, UNSOOT_JOB_INVOICED, NULL, error)
      || !check (&billing, error))
    return 0;
  g_autoptr (UnsootInvoiceRow) invoice = head_of (&billing, error);
  g_autoptr (GPtrArray) lines = frozen_lines (&billing);
  g_autoptr (GPtrArray) taxes = frozen_taxes (&billing);
  gboolean done = invoice != NULL && unsoot_invoice_post (db, who, invoice, lines, taxes, error);
  return unsoot_deed_end (&deed, done, error) ? invoice->id : 0;
}
