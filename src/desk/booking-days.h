/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "free-times.h"
#include "session.h"

G_BEGIN_DECLS

/* The days of a week, each with how many of its times are free.
 * Signals: "day" (text, ISO), it is to be looked at; "week" (gint, one back or on). */
#define UNSOOT_TYPE_BOOKING_DAYS (unsoot_booking_days_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingDays, unsoot_booking_days, UNSOOT, BOOKING_DAYS, GtkBox)

/* @days: UnsootFreeDay; @shown: the one that is looked at; @back: whether there are earlier. */
void unsoot_booking_days_show (UnsootBookingDays *self, UnsootSession *session,
                               const GPtrArray *days, const UnsootFreeDay *shown, gboolean back);

G_END_DECLS
