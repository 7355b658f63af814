/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records-page.h"

G_BEGIN_DECLS

/* Every invoice and credit note, the newest first; what all customers owe stands above. */
#define UNSOOT_TYPE_INVOICES_PAGE (unsoot_invoices_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootInvoicesPage, unsoot_invoices_page, UNSOOT, INVOICES_PAGE,
                      UnsootRecordsPage)

G_END_DECLS
