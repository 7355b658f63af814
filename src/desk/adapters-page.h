/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The place Adapters: a board with a box for each bin, filtered by where things are and by what
 * is typed; above it what is lent, the longest overdue first. */
#define UNSOOT_TYPE_ADAPTERS_PAGE (unsoot_adapters_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootAdaptersPage, unsoot_adapters_page, UNSOOT, ADAPTERS_PAGE, UnsootView)

G_END_DECLS
