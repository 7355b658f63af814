/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "invoices.h"

G_BEGIN_DECLS

/* The store's own steps in invoicing, in the caller's deed. */

/* Posts an invoice or credit note with its lines (UnsootInvoiceLineRow) and taxes
 * (UnsootInvoiceTaxRow) under the next number. */
gboolean unsoot_invoice_post (UnsootDb *db, const UnsootActing *who, UnsootInvoiceRow *invoice,
                              GPtrArray *lines, GPtrArray *taxes, GError **error);

/* Whether an invoice's job is paid now, or no longer is: moves it along its path. */
gboolean unsoot_invoice_settle (UnsootDb *db, const UnsootActing *who, gint64 invoice_id,
                                GError **error);

G_END_DECLS
