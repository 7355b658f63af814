/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-file.h"
#include "session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The free times of a week, a day at a time, and what would be taken at the one chosen.
 * Signals: "picked" (gint64 Unix seconds), "walk-in", "week" (gint, one back or on), "limited":
 * a bay, machine or person was asked for. */
#define UNSOOT_TYPE_BOOKING_TIMES (unsoot_booking_times_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingTimes, unsoot_booking_times, UNSOOT, BOOKING_TIMES, GtkBox)

GtkWidget *unsoot_booking_times_new (UnsootSession *session);

void unsoot_booking_times_show (UnsootBookingTimes *self, const UnsootBookingFile *file);

/* Which ones are asked for; 0: any. */
gint64 unsoot_booking_times_get_bay (UnsootBookingTimes *self);
gint64 unsoot_booking_times_get_machine (UnsootBookingTimes *self);
gint64 unsoot_booking_times_get_technician (UnsootBookingTimes *self);

G_END_DECLS
