/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-file.h"
#include "deed-form.h"
#include "session.h"

G_BEGIN_DECLS

/* The word that a customer gives: who, how, up to which total, on which order.
 * Signal "activate": Return was pressed in a field. */
#define UNSOOT_TYPE_BOOKING_WORD (unsoot_booking_word_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBookingWord, unsoot_booking_word, UNSOOT, BOOKING_WORD, GtkBox)

/* Filled in once for each job; what was typed since is left alone, and kept as a draft. @total: what stands where
 * nothing is typed. */
void unsoot_booking_word_show (UnsootBookingWord *self, UnsootSession *session,
                               const UnsootBookingFile *file, const char *total);

/* It was given: nothing of it is kept as a draft any more. */
void unsoot_booking_word_given (UnsootBookingWord *self);

/* The word as an order for unsoot_job_authorise_form. Errors: an amount that is none, at which
 * the keyboard is then. */
UnsootDeedOrder *unsoot_booking_word_read (UnsootBookingWord *self, UnsootSession *session,
                                           GError **error);

/* Puts the keyboard at what is still asked for; FALSE where that is nothing. */
gboolean unsoot_booking_word_focus (UnsootBookingWord *self);

G_END_DECLS
