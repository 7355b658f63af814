/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "session.h"

G_BEGIN_DECLS

/* A vehicle's fields in their dialog. */
#define UNSOOT_TYPE_VEHICLE_EDIT (unsoot_vehicle_edit_get_type ())
G_DECLARE_FINAL_TYPE (UnsootVehicleEdit, unsoot_vehicle_edit, UNSOOT, VEHICLE_EDIT, GtkBox)

/* Changes the vehicle; @vehicle_id 0: a new one of @customer_id. */
void unsoot_vehicle_edit_open (GtkWidget *over, UnsootSession *session, gint64 vehicle_id,
                               gint64 customer_id);

G_END_DECLS
