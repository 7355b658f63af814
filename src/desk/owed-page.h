/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* What each customer owes, by how long it has been owed, with a statement of account for each. */
#define UNSOOT_TYPE_OWED_PAGE (unsoot_owed_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootOwedPage, unsoot_owed_page, UNSOOT, OWED_PAGE, UnsootView)

G_END_DECLS
