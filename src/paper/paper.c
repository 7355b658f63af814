/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper.h"

#include <glib/gi18n-lib.h>

#include "paper-customer-report.h"
#include "paper-estimate.h"
#include "paper-incomplete-tag.h"
#include "paper-invoice.h"
#include "paper-words.h"
#include "paper-work-order.h"

const UnsootSlug unsoot_papers[] = {
  { UNSOOT_PAPER_ESTIMATE, "estimate", N_ ("Estimate") },
  { UNSOOT_PAPER_WORK_ORDER, "work-order", N_ ("Work order") },
  { UNSOOT_PAPER_INVOICE, "invoice", N_ ("Invoice") },
  { UNSOOT_PAPER_CUSTOMER_REPORT, "customer-report", N_ ("Service report") },
  { UNSOOT_PAPER_INCOMPLETE_TAG, "incomplete-tag", N_ ("Incomplete tag") },
  { 0, NULL, NULL },
};

const char *
unsoot_paper_slug (UnsootPaper paper)
{
  return unsoot_slug_of (unsoot_papers, (int) paper);
}

const char *
unsoot_paper_title (UnsootPaper paper)
{
  return unsoot_slug_words (unsoot_papers, (int) paper);
}

gboolean
unsoot_paper_find (const char *slug, UnsootPaper *paper)
{
  int value;

  if (!unsoot_slug_find (unsoot_papers, slug, &value))
    return FALSE;
  *paper = (UnsootPaper) value;
  return TRUE;
}

static const UnsootInvoiceFile *
latest_invoice (const UnsootJobFile *file)
{
  return file->invoices->len > 0 ? g_ptr_array_index (file->invoices, file->invoices->len - 1)
                                 : NULL;
}

static GBytes *
make_invoice (const UnsootJobFile *file, UnsootPaperSize size, const UnsootInvoiceFile *invoice,
              char **remark, GError **error)
{
  g_autofree char *number = NULL;

  if (invoice == NULL)
    invoice = latest_invoice (file);
  if (invoice != NULL)
    return unsoot_paper_invoice (file, invoice, size, remark, error);
  number = unsoot_paper_serial (file->job != NULL ? file->job->number : 0);
  g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD,
               /* Translators: a job's number */
               _ ("Job %s has not been invoiced yet."), number);
  return NULL;
}

GBytes *
unsoot_paper_make (UnsootPaper paper, const UnsootJobFile *file, UnsootPaperSize size,
                   const UnsootInvoiceFile *invoice, char **remark, GError **error)
{
  if (remark != NULL)
    *remark = NULL;
  switch (paper)
    {
    case UNSOOT_PAPER_ESTIMATE:
      return unsoot_paper_estimate (file, size, remark, error);
    case UNSOOT_PAPER_WORK_ORDER:
      return unsoot_paper_work_order (file, size, remark, error);
    case UNSOOT_PAPER_INVOICE:
      return make_invoice (file, size, invoice, remark, error);
    case UNSOOT_PAPER_CUSTOMER_REPORT:
      return unsoot_paper_customer_report (file, size, remark, error);
    case UNSOOT_PAPER_INCOMPLETE_TAG:
      return unsoot_paper_incomplete_tag (file, size, remark, error);
    }
  g_assert_not_reached ();
}

char *
unsoot_paper_file_name (UnsootPaper paper, const UnsootJobFile *file,
                        const UnsootInvoiceFile *invoice)
{
  const char *slug = unsoot_paper_slug (paper);
  gint64 number = file->job->number;

  if (paper == UNSOOT_PAPER_ESTIMATE && file->estimates->len > 0)
    number = ((UnsootEstimateRow *) g_ptr_array_index (file->estimates, file->estimates->len - 1))
                 ->number;
  if (paper == UNSOOT_PAPER_INVOICE && invoice == NULL)
    invoice = latest_invoice (file);
  if (paper == UNSOOT_PAPER_INVOICE && invoice != NULL)
    {
      number = invoice->invoice->number;
      if (g_strcmp0 (invoice->invoice->kind, "credit") == 0)
        slug = "credit-note";
    }
  return g_strdup_printf ("%s-%" G_GINT64_FORMAT ".pdf", slug, number);
}
