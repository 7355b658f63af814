/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records-page.h"

G_BEGIN_DECLS

/* All customers by name. */
#define UNSOOT_TYPE_CUSTOMERS_PAGE (unsoot_customers_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCustomersPage, unsoot_customers_page, UNSOOT, CUSTOMERS_PAGE,
                      UnsootRecordsPage)

G_END_DECLS
