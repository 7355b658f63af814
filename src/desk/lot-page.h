/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The record of a lot: how much is left and until when, its opened containers, its moves, and
 * the jobs that had it, which a recall goes by. */
#define UNSOOT_TYPE_LOT_PAGE (unsoot_lot_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootLotPage, unsoot_lot_page, UNSOOT, LOT_PAGE, UnsootView)

G_END_DECLS
