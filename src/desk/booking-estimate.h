/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-draft.h"

G_BEGIN_DECLS

/* The first deed of a booking on its way to the store: what is new of customer and vehicle is
 * kept, the job is quoted, and the draft it came from is dropped. It outlives the page. */
typedef struct _UnsootBookingEstimate UnsootBookingEstimate;

/* @plan: copied, with the defaults that were shown; @wanted_at: the time that was shown where none
 * was chosen; @draft: (transfer full): an empty one, which takes the former away. */
UnsootBookingEstimate *unsoot_booking_estimate_new (const UnsootActing *who,
                                                    const UnsootBookingPlan *plan, gint64 wanted_at,
                                                    UnsootBookingDraft *draft);
void unsoot_booking_estimate_free (gpointer estimate);

/* On the worker, with such an estimate. Returns the job's id (gint64 *, to be freed), NULL on
 * error: as unsoot_job_quote_first (). */
gpointer unsoot_booking_estimate_give (UnsootDb *db, gpointer estimate, GCancellable *cancellable,
                                       GError **error);

G_END_DECLS
