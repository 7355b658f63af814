/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "view.h"

G_BEGIN_DECLS

/* The call: who, which vehicle, which service, when; then estimate, authorise and book, one deed
 * after another. Its slug says what the record is: "booking" nothing (0), "booking-party",
 * "booking-vehicle", "booking-job" (one that is quoted or booked already). */
#define UNSOOT_TYPE_BOOKING_PAGE (unsoot_booking_page_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingPage, unsoot_booking_page, UNSOOT, BOOKING_PAGE, UnsootView)

/* Begins with what is called so and not known yet: a VIN, a plate, a phone, a name. */
void unsoot_booking_page_begin_with (UnsootBookingPage *self, const char *typed);

/* Puts the keyboard where the next thing is to be typed or pressed. */
void unsoot_booking_page_focus (UnsootBookingPage *self);

G_END_DECLS
