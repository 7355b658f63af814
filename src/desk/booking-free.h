/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-file.h"

/* The free times for what is quoted in @file, the one that is chosen, and what stands in its way.
 * What can't be found is said there, and no error. */
void unsoot_booking_free_load (UnsootDb *db, UnsootBookingFile *file, gint64 now);
