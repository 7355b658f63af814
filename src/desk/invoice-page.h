/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* One invoice or credit note: what was frozen on it, what was paid on it and taken back from it,
 * what is open, and the deeds that change that. */
#define UNSOOT_TYPE_INVOICE_PAGE (unsoot_invoice_page_view_get_type ())
G_DECLARE_FINAL_TYPE (UnsootInvoicePage, unsoot_invoice_page_view, UNSOOT, INVOICE_PAGE, UnsootView)

G_END_DECLS
