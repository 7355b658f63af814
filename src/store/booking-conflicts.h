/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bookings.h"

G_BEGIN_DECLS

/* Sentences (char *) on what @wish, complete with end and adapters, would break.
 * @with_fluid: a shortage of fluid too, which is a warning: it can still be delivered. */
GPtrArray *unsoot_booking_find_conflicts (UnsootDb *db, const UnsootBookingWish *wish,
                                          gboolean with_fluid, gint64 now, GError **error);

G_END_DECLS
