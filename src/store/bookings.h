/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* What is wanted of the planner. */
typedef struct
{
  gint64 booking_id; /* 0: a new one */
  gint64 job_id;
  gint64 bay_id;
  gint64 machine_id;
  gint64 technician_id;
  gint64 starts_at;
  gint64 ends_at;      /* 0: after the service's planned minutes */
  const gint64 *items; /* adapters; NULL: a free one of every kind that fits */
  gsize n_items;
} UnsootBookingWish;

/* UnsootBayRow in order. */
GPtrArray *unsoot_bay_list (UnsootDb *db, GError **error);
gboolean unsoot_bay_save (UnsootDb *db, const UnsootActing *who, UnsootBayRow *bay, GError **error);

/* UnsootBookingRow that stand and touch the time, by start. */
GPtrArray *unsoot_booking_list (UnsootDb *db, gint64 from, gint64 to, GError **error);

/* The job's booking that stands, NULL without an error where there is none. */
UnsootBookingRow *unsoot_job_booking (UnsootDb *db, gint64 job_id, GError **error);

/* gint64: the adapters that a booking holds. */
GArray *unsoot_booking_items (UnsootDb *db, gint64 booking_id, GError **error);

/* What the wish would break, a sentence each (char *); empty: nothing. */
GPtrArray *unsoot_booking_conflicts (UnsootDb *db, const UnsootBookingWish *wish, gint64 now,
                                     GError **error);

/**
 * unsoot_job_book:
 *
 * Books the job, or moves its booking, and holds the adapters. A job that was quoted is
 * booked from then on.
 *
 * Errors: NOT_ALLOWED; CONSTRAINT with everything it would break, or for a job that is in
 * the bay or beyond, declined or cancelled.
 *
 * Returns: the booking's id, 0 on error.
 */
gint64 unsoot_job_book (UnsootDb *db, const UnsootActing *who, const UnsootBookingWish *wish,
                        GError **error);

/* Drops the booking; the job is quoted again. */
gboolean unsoot_booking_drop (UnsootDb *db, const UnsootActing *who, gint64 booking_id,
                              const char *reason, GError **error);

G_END_DECLS
