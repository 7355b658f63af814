/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The bays of the shop: what runs in each, what waits for it, and the way in. */
#define UNSOOT_TYPE_BAYS_PAGE (unsoot_bays_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBaysPage, unsoot_bays_page, UNSOOT, BAYS_PAGE, UnsootView)

G_END_DECLS
