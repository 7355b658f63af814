/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-error.h"
#include "paper-size.h"
#include "slug.h"

G_BEGIN_DECLS

/* The papers about a job, as PDF. Nothing here reads a clock or a file beyond the fonts: the
 * same records give the same bytes. */
typedef enum
{
  UNSOOT_PAPER_ESTIMATE,
  UNSOOT_PAPER_WORK_ORDER,
  UNSOOT_PAPER_INVOICE, /* or credit note */
  UNSOOT_PAPER_CUSTOMER_REPORT,
  UNSOOT_PAPER_INCOMPLETE_TAG,
} UnsootPaper;

#define UNSOOT_PAPERS (UNSOOT_PAPER_INCOMPLETE_TAG + 1)

/* "estimate", "work-order", "invoice", "customer-report", "incomplete-tag", with their names
 * ("Work order"). */
extern const UnsootSlug unsoot_papers[];

const char *unsoot_paper_slug (UnsootPaper paper);
/* Translated. */
const char *unsoot_paper_title (UnsootPaper paper);
gboolean unsoot_paper_find (const char *slug, UnsootPaper *paper);

/**
 * unsoot_paper_make:
 * @file: everything about the job
 * @size: of the sheet; the shop's own is in file->shop->paper
 * @invoice: (nullable): for UNSOOT_PAPER_INVOICE one of file->invoices; %NULL is the latest
 * @remark: (out) (optional) (nullable): a sentence about what could not be shown as written:
 *   characters that the font lacks, damaged text or pictures; the paper itself shows a mark
 *   in their place
 *
 * Errors: UNSOOT_PAPER_ERROR: FONT where the font is not installed (the sentence names the
 * package), RECORD where the job has not got what the paper is made from, PDF; or the trade's,
 * where amounts don't fit.
 *
 * Returns: (transfer full): the PDF file, or %NULL
 */
GBytes *unsoot_paper_make (UnsootPaper paper, const UnsootJobFile *file, UnsootPaperSize size,
                           const UnsootInvoiceFile *invoice, char **remark, GError **error);

/* "work-order-2417.pdf", "invoice-1031.pdf": letters, digits, hyphens. Free it. */
char *unsoot_paper_file_name (UnsootPaper paper, const UnsootJobFile *file,
                              const UnsootInvoiceFile *invoice);

G_END_DECLS
