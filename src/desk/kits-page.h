/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The kits: what gaskets, O-rings and filters each engine family needs, and what they cost. */
#define UNSOOT_TYPE_KITS_PAGE (unsoot_kits_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootKitsPage, unsoot_kits_page, UNSOOT, KITS_PAGE, UnsootView)

G_END_DECLS
