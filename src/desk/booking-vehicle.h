/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-file.h"
#include "session.h"

G_BEGIN_DECLS

/* Which vehicle: one of the customer's, or a new one.
 * Signals "vehicle" (gint64 id), "new-vehicle", "edited". */
#define UNSOOT_TYPE_BOOKING_VEHICLE (unsoot_booking_vehicle_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingVehicle, unsoot_booking_vehicle, UNSOOT, BOOKING_VEHICLE, GtkBox)

GtkWidget *unsoot_booking_vehicle_new (UnsootSession *session);

/* What is being typed is left alone. */
void unsoot_booking_vehicle_show (UnsootBookingVehicle *self, const UnsootBookingFile *file);

/* Writes what was typed of a new one into @plan. */
void unsoot_booking_vehicle_read (UnsootBookingVehicle *self, UnsootBookingPlan *plan);

void unsoot_booking_vehicle_focus (UnsootBookingVehicle *self);

G_END_DECLS
