/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "booking-file.h"
#include "session.h"

/* What was done on the chosen vehicle before and when it is due next, in short; NULL where nothing
 * is known. */
GtkWidget *unsoot_booking_past_new (const UnsootBookingFile *file, UnsootSession *session);
