/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-view.h"

#include "calls.h"
#include "customers.h"
#include "jobs.h"

void
unsoot_invoice_view_free (UnsootInvoiceView *self)
{
  g_clear_pointer (&self->file, unsoot_invoice_file_free);
  g_clear_pointer (&self->customer, unsoot_customer_row_free);
  g_clear_pointer (&self->phones, g_ptr_array_unref);
  g_clear_pointer (&self->credits, g_ptr_array_unref);
  g_clear_pointer (&self->calls, g_ptr_array_unref);
  g_free (self);
}

/* The credit notes among the job's papers, and the number that a credit note takes back. */
static void
sort_out (UnsootInvoiceView *self, GPtrArray *papers)
{
  const UnsootInvoiceRow *invoice = self->file->invoice;

  self->credits = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_invoice_file_free);
  for (guint i = 0; i < papers->len;)
    {
      const UnsootInvoiceFile *other = g_ptr_array_index (papers, i);
      if (other->invoice->id == invoice->credits_id)
        self->credited_number = other->invoice->number;
      if (other->invoice->credits_id == invoice->id)
        g_ptr_array_add (self->credits, g_ptr_array_steal_index (papers, i));
      else
        i++;
    }
}

static gboolean
load_job (UnsootDb *db, UnsootInvoiceView *self, GError **error)
{
  const gint64 job_id = self->file->invoice->job_id;
  g_autoptr (UnsootJobRow) job = job_id != 0 ? unsoot_job_load (db, job_id, error) : NULL;

  if (job_id == 0)
    return TRUE;
  if (job == NULL)
    return FALSE;
  self->job_number = job->number;
  return TRUE;
}

UnsootInvoiceView *
unsoot_invoice_view_load (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootInvoiceView) self = g_new0 (UnsootInvoiceView, 1);
  g_autoptr (GPtrArray) papers = NULL;

  if ((self->file = unsoot_invoice_load (db, id, error)) == NULL
      || (self->customer = unsoot_customer_load (db, self->file->invoice->customer_id, error))
             == NULL
      || (self->phones = unsoot_customer_phones (db, self->customer->id, error)) == NULL
      || (papers = unsoot_job_invoices (db, self->file->invoice->job_id, error)) == NULL
      || (self->calls = unsoot_calls_shown_on (db, "invoice", id, error)) == NULL
      || !load_job (db, self, error))
    return NULL;
  sort_out (self, papers);
  if (!unsoot_invoice_view_is_credit (self)
      && !unsoot_invoice_open_minor (db, id, &self->open_minor, error))
    return NULL;
  return g_steal_pointer (&self);
}

gboolean
unsoot_invoice_view_is_credit (const UnsootInvoiceView *self)
{
  return g_strcmp0 (self->file->invoice->kind, "credit") == 0;
}

gboolean
unsoot_invoice_view_credited (const UnsootInvoiceView *self, gint64 position)
{
  for (guint i = 0; i < self->credits->len; i++)
    {
      const UnsootInvoiceFile *credit = g_ptr_array_index (self->credits, i);
      for (guint j = 0; j < credit->lines->len; j++)
        if (((const UnsootInvoiceLineRow *) g_ptr_array_index (credit->lines, j))->position
            == position)
          return TRUE;
    }
  return FALSE;
}

gboolean
unsoot_invoice_view_reversed (const UnsootInvoiceView *self, gint64 payment_id)
{
  for (guint i = 0; i < self->file->payments->len; i++)
    if (((const UnsootPaymentRow *) g_ptr_array_index (self->file->payments, i))->reverses_id
        == payment_id)
      return TRUE;
  return FALSE;
}
