/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "booking-plan.h"
#include "rows.h"

G_BEGIN_DECLS

/* What a booking's page begins with. */
typedef struct
{
  UnsootBookingPlan *plan;
  gint64 kept_at; /* when the draft was kept; 0: it is none */
} UnsootBookingStart;

void unsoot_booking_start_free (UnsootBookingStart *start);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBookingStart, unsoot_booking_start_free)

/* The plan of a page on which nothing was typed yet; @slug is the page's. */
UnsootBookingPlan *unsoot_booking_plan_for (const char *slug, gint64 record);

/* What @staff_id left on that page, else its beginning. Errors: the store's. */
UnsootBookingStart *unsoot_booking_start_load (UnsootDb *db, gint64 staff_id, const char *slug,
                                               gint64 record, GError **error);

/* A draft on its way to the store; it outlives the page. */
typedef struct
{
  UnsootActing who;
  char *place;
  gint64 record;
  char *text; /* NULL: there is nothing to keep any more */
} UnsootBookingDraft;

/* @plan: (nullable): nothing is kept of one that is empty. */
UnsootBookingDraft *unsoot_booking_draft_new (const UnsootActing *who, const char *slug,
                                              gint64 record, const UnsootBookingPlan *plan);
void unsoot_booking_draft_free (gpointer draft);

/* On the worker, with such a draft: keeps it in place of the former. Returns NULL. */
gpointer unsoot_booking_draft_put (UnsootDb *db, gpointer draft, GCancellable *cancellable,
                                   GError **error);

G_END_DECLS
