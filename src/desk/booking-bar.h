/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-file.h"
#include "deed-form.h"
#include "session.h"

G_BEGIN_DECLS

/* How far a booking has come, what the next deed asks for, and the one button that does it.
 * Signals "deed" (the next one) and "past-word" (book without an authorisation). */
#define UNSOOT_TYPE_BOOKING_BAR (unsoot_booking_bar_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingBar, unsoot_booking_bar, UNSOOT, BOOKING_BAR, GtkBox)

void unsoot_booking_bar_set_session (UnsootBookingBar *self, UnsootSession *session);

/* @without_word: it is to be booked though nobody has authorised it yet. */
void unsoot_booking_bar_show (UnsootBookingBar *self, const UnsootBookingFile *file,
                              gboolean without_word);

/* What went wrong with the last deed; NULL: nothing. */
void unsoot_booking_bar_say (UnsootBookingBar *self, const char *trouble);

/* While a deed is under way nothing else is begun. */
void unsoot_booking_bar_set_busy (UnsootBookingBar *self, gboolean busy);

/* The authorisation that was typed, as an order for its form; NULL where something is wrong,
 * which is said. */
UnsootDeedOrder *unsoot_booking_bar_word (UnsootBookingBar *self, gint64 job_id);

/* Where the next deed waits: at what it still asks for, else at the button. */
void unsoot_booking_bar_focus (UnsootBookingBar *self);

G_END_DECLS
