/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"
#include "vehicle-file.h"

/* The vehicle's life as a picture (life-drawing.h). NULL where nothing of it is known yet. */
GtkWidget *unsoot_vehicle_life_new (const UnsootVehicleFile *file, UnsootSession *session);
