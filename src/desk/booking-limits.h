/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* A bay, a machine or a person that is asked for by name; any otherwise. */
#define UNSOOT_TYPE_BOOKING_LIMITS (unsoot_booking_limits_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingLimits, unsoot_booking_limits, UNSOOT, BOOKING_LIMITS, GtkBox)

/* What is chosen here goes into @talk. Once. */
void unsoot_booking_limits_begin (UnsootBookingLimits *self, UnsootBookingTalk *talk);

void unsoot_booking_limits_show (UnsootBookingLimits *self, const UnsootBookingFile *file);

G_END_DECLS
