/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-file.h"
#include "card.h"
#include "session.h"

/* A declined line was wanted again, or not any more. */
typedef void (*UnsootAgainFunc) (gpointer owner, gint64 line_id, gboolean again);

/* Fills an emptied card with what the job would take and cost, and why. */
void unsoot_booking_quote_show (UnsootCard *card, const UnsootBookingFile *file,
                                UnsootSession *session, UnsootAgainFunc again, gpointer owner);
