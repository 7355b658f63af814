/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The record of an adapter, and of a loan of it: where it is, what it fits, its inspections,
 * who had it, which jobs. */
#define UNSOOT_TYPE_ADAPTER_PAGE (unsoot_adapter_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootAdapterPage, unsoot_adapter_page, UNSOOT, ADAPTER_PAGE, UnsootView)

G_END_DECLS
