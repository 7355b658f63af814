/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* One customer: how to reach them, what they owe, their vehicles and jobs. */
#define UNSOOT_TYPE_CUSTOMER_PAGE (unsoot_customer_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootCustomerPage, unsoot_customer_page, UNSOOT, CUSTOMER_PAGE, UnsootView)

G_END_DECLS
