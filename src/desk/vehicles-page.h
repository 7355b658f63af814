/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "records-page.h"

G_BEGIN_DECLS

/* All vehicles by make, model and unit. */
#define UNSOOT_TYPE_VEHICLES_PAGE (unsoot_vehicles_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootVehiclesPage, unsoot_vehicles_page, UNSOOT, VEHICLES_PAGE,
                      UnsootRecordsPage)

G_END_DECLS
