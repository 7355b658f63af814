/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* One vehicle: what it is, its meters, its history, and when it is next due. */
#define UNSOOT_TYPE_VEHICLE_PAGE (unsoot_vehicle_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootVehiclePage, unsoot_vehicle_page, UNSOOT, VEHICLE_PAGE, UnsootView)

G_END_DECLS
