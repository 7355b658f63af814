/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* Who is calling: found, shown, or typed anew. */
#define UNSOOT_TYPE_BOOKING_WHO (unsoot_booking_who_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingWho, unsoot_booking_who, UNSOOT, BOOKING_WHO, GtkBox)

/* What is said here goes into @talk. Once. */
void unsoot_booking_who_begin (UnsootBookingWho *self, UnsootBookingTalk *talk);

/* What is being typed is left alone. */
void unsoot_booking_who_show (UnsootBookingWho *self, const UnsootBookingFile *file);

void unsoot_booking_who_focus (UnsootBookingWho *self);

G_END_DECLS
