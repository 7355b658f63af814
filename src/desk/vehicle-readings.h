/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"
#include "vehicle-file.h"

/* What each kind of reading did over the vehicle's visits, a small picture each
 * (reading-history.h). NULL where nothing was ever read. */
GtkWidget *unsoot_vehicle_readings_new (UnsootVehicleFile *file, UnsootSession *session);
