/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* What is wanted: the service, why, the customer's order, and doses where the lead technician
 * gives them. */
#define UNSOOT_TYPE_BOOKING_SERVICE (unsoot_booking_service_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingService, unsoot_booking_service, UNSOOT, BOOKING_SERVICE, GtkBox)

/* What is said here goes into @talk. Once. */
void unsoot_booking_service_begin (UnsootBookingService *self, UnsootBookingTalk *talk);

/* Another plan was begun: shows what was typed of it. */
void unsoot_booking_service_show_plan (UnsootBookingService *self, const UnsootBookingPlan *plan);

/* What is being typed is left alone. */
void unsoot_booking_service_show (UnsootBookingService *self, const UnsootBookingFile *file);

G_END_DECLS
