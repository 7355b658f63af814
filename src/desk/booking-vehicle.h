/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* Which vehicle: one of the customer's with what was done on it before, or a new one. */
#define UNSOOT_TYPE_BOOKING_VEHICLE (unsoot_booking_vehicle_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingVehicle, unsoot_booking_vehicle, UNSOOT, BOOKING_VEHICLE, GtkBox)

/* What is said here goes into @talk. Once. */
void unsoot_booking_vehicle_begin (UnsootBookingVehicle *self, UnsootBookingTalk *talk);

/* What is being typed is left alone. */
void unsoot_booking_vehicle_show (UnsootBookingVehicle *self, const UnsootBookingFile *file);

void unsoot_booking_vehicle_focus (UnsootBookingVehicle *self);

G_END_DECLS
