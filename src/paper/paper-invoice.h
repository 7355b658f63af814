/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "paper-size.h"

/* An invoice or credit note as it was frozen, with what has been paid on it since. @invoice
 * is one of file->invoices. @remark as in unsoot_paper_make (). Errors: UNSOOT_PAPER_ERROR. */
GBytes *unsoot_paper_invoice (const UnsootJobFile *file, const UnsootInvoiceFile *invoice,
                              UnsootPaperSize size, char **remark, GError **error);
