/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* One day of the shop: lanes of bays, and of machines, technicians and adapters where they are
 * asked for. Bookings are moved and stretched here; what that would break is said meanwhile. */
#define UNSOOT_TYPE_PLANNER_PAGE (unsoot_planner_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPlannerPage, unsoot_planner_page, UNSOOT, PLANNER_PAGE, UnsootView)

G_END_DECLS
