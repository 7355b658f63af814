/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-file.h"
#include "session.h"

G_BEGIN_DECLS

/* Who is calling: found, shown, or typed anew.
 * Signals "customer" and "vehicle" (gint64 id), "somebody-new" (text), "forget", "edited". */
#define UNSOOT_TYPE_BOOKING_WHO (unsoot_booking_who_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingWho, unsoot_booking_who, UNSOOT, BOOKING_WHO, GtkBox)

GtkWidget *unsoot_booking_who_new (UnsootSession *session);

/* What is being typed is left alone. */
void unsoot_booking_who_show (UnsootBookingWho *self, const UnsootBookingFile *file);

/* Writes what was typed of somebody new into @plan. */
void unsoot_booking_who_read (UnsootBookingWho *self, UnsootBookingPlan *plan);

void unsoot_booking_who_focus (UnsootBookingWho *self);

G_END_DECLS
