/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bill.h"
#include "job-file.h"

G_BEGIN_DECLS

/* The job's lines that were not declined: offered and authorised. Borrowed rows. */
GPtrArray *unsoot_paper_quote_lines (const UnsootJobFile *file);
/* Those declined. */
GPtrArray *unsoot_paper_quote_declined (const UnsootJobFile *file);

/* The bill over @lines (UnsootJobLineRow) by the shop's tax rules and the customer's
 * exemption; its nets are in the order of @lines. Errors: of the trade's arithmetic. */
UnsootBill *unsoot_paper_quote_bill (const UnsootJobFile *file, const GPtrArray *lines,
                                     GError **error);

G_END_DECLS
