/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* The free times of a week, a day at a time, and what would be taken at the one chosen. */
#define UNSOOT_TYPE_BOOKING_TIMES (unsoot_booking_times_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingTimes, unsoot_booking_times, UNSOOT, BOOKING_TIMES, GtkBox)

/* What is chosen here goes into @talk. Once. */
void unsoot_booking_times_begin (UnsootBookingTimes *self, UnsootBookingTalk *talk);

void unsoot_booking_times_show (UnsootBookingTimes *self, const UnsootBookingFile *file);

G_END_DECLS
