/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-talk.h"

G_BEGIN_DECLS

/* How far a booking has come, what the next deed asks for, and the one button that does it:
 * estimate, word, booking. */
#define UNSOOT_TYPE_BOOKING_BAR (unsoot_booking_bar_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingBar, unsoot_booking_bar, UNSOOT, BOOKING_BAR, GtkBox)

/* What is done here is told to @talk. Once. */
void unsoot_booking_bar_begin (UnsootBookingBar *self, UnsootBookingTalk *talk);

void unsoot_booking_bar_show (UnsootBookingBar *self, const UnsootBookingFile *file);

/* What went wrong; NULL: nothing. */
void unsoot_booking_bar_say (UnsootBookingBar *self, const char *trouble);

/* Whether a deed is under way. */
gboolean unsoot_booking_bar_is_busy (UnsootBookingBar *self);

/* Does the next deed, where it can be done. */
void unsoot_booking_bar_do (UnsootBookingBar *self);

/* Where the next deed waits: at what it still asks for, else at the button. */
void unsoot_booking_bar_focus (UnsootBookingBar *self);

G_END_DECLS
