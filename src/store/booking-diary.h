/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bookings.h"
#include "conflict.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* What a booking is held against, read from the book for the trade's rules: the slots of a span
 * of time, opening hours, holidays, and adapters that are away. */
typedef struct _UnsootBookingDiary UnsootBookingDiary;

UnsootBookingDiary *unsoot_booking_diary_new (UnsootDb *db, GError **error);
void unsoot_booking_diary_free (UnsootBookingDiary *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBookingDiary, unsoot_booking_diary_free)

/* Reads the bookings that touch the span (Unix seconds), hours and holidays. */
gboolean unsoot_booking_diary_read (UnsootBookingDiary *self, gint64 from, gint64 to,
                                    GError **error);

/* Reads where these adapters are in that span; loans for @job_id itself don't count. */
gboolean unsoot_booking_diary_read_items (UnsootBookingDiary *self, const gint64 *items, gsize n,
                                          gint64 from, gint64 to, gint64 job_id, gint64 now,
                                          GError **error);

/* Reads what fluid would be short for the wish. */
gboolean unsoot_booking_diary_read_shorts (UnsootBookingDiary *self, const UnsootBookingWish *wish,
                                           gint64 now, GError **error);

/* The wish as a slot with names; borrows from @self. */
gboolean unsoot_booking_diary_slot (UnsootBookingDiary *self, const UnsootBookingWish *wish,
                                    UnsootSlot *slot, GError **error);

/* All that was read, for the trade; borrows from @self. */
UnsootDiary unsoot_booking_diary_get (const UnsootBookingDiary *self);

/* Minutes by the clock on the shop's wall (conflict.h), and back to Unix seconds. */
gint64 unsoot_booking_diary_wall (const UnsootBookingDiary *self, gint64 at);
gint64 unsoot_booking_diary_unix (const UnsootBookingDiary *self, gint64 minute);

const UnsootShopRow *unsoot_booking_diary_shop (const UnsootBookingDiary *self);

/* A name that lasts as long as @self. */
const char *unsoot_booking_diary_keep (UnsootBookingDiary *self, const char *name);

G_END_DECLS
