/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "customer-row.h"
#include "quotes.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* What somebody at the desk has chosen and typed of a booking, and nothing that follows from it.
 * Ids of 0 leave the choice to the shop's data. */
typedef struct
{
  gint64 job_id;               /* quoted already */
  gint64 customer_id;          /* 0: nobody yet, or somebody new */
  gint64 vehicle_id;           /* likewise */
  UnsootCustomerRow *customer; /* somebody new; NULL: none */
  UnsootVehicleRow *vehicle;   /* one that is new; NULL: none */
  char *phone;                 /* of somebody new */
  gint64 service_id;
  char *complaint;
  char *po_number;
  gint64 fuel_ml; /* the lead technician's doses */
  gint64 intake_ml;
  GArray *again; /* gint64: declined lines to be offered again */
  gint64 bay_id;
  gint64 machine_id;
  gint64 technician_id;
  gint64 starts_at;  /* 0: the first that is free */
  gboolean walks_in; /* now, whatever the clock says */
  guint days_on;     /* from which day on times are looked for */
} UnsootBookingPlan;

UnsootBookingPlan *unsoot_booking_plan_new (void);
UnsootBookingPlan *unsoot_booking_plan_copy (const UnsootBookingPlan *plan);
void unsoot_booking_plan_free (UnsootBookingPlan *plan);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBookingPlan, unsoot_booking_plan_free)

/* Somebody or something new, with what a new row begins with. */
void unsoot_booking_plan_new_customer (UnsootBookingPlan *plan, const char *typed);
void unsoot_booking_plan_new_vehicle (UnsootBookingPlan *plan, const char *typed);

/* Whichever of both @typed looks like. */
void unsoot_booking_plan_begin (UnsootBookingPlan *plan, const char *typed);

/* Somebody who is known, and no vehicle of theirs yet; one that is known, and so whose it is;
 * another of the same customer's, so that the service is asked anew; nobody any more. */
void unsoot_booking_plan_take_customer (UnsootBookingPlan *plan, gint64 id);
void unsoot_booking_plan_take_vehicle (UnsootBookingPlan *plan, gint64 id);
void unsoot_booking_plan_change_vehicle (UnsootBookingPlan *plan, gint64 id);
void unsoot_booking_plan_forget_caller (UnsootBookingPlan *plan);

/* Whether a line that was declined is offered again. */
void unsoot_booking_plan_offer_again (UnsootBookingPlan *plan, gint64 line_id, gboolean again);

/* When: at that time (0: the first that is free), or now. */
void unsoot_booking_plan_pick (UnsootBookingPlan *plan, gint64 starts_at);
void unsoot_booking_plan_walk_in (UnsootBookingPlan *plan);

/* Whether there is anything that would be missed. */
gboolean unsoot_booking_plan_is_empty (const UnsootBookingPlan *plan);

/* As a draft keeps it. What can't be read is as if it was never typed; NULL where nothing can. */
char *unsoot_booking_plan_to_text (const UnsootBookingPlan *plan);
UnsootBookingPlan *unsoot_booking_plan_from_text (const char *text);

/* What is asked of the store; borrows from @plan. */
void unsoot_booking_plan_wish (const UnsootBookingPlan *plan, UnsootQuoteWish *wish);

G_END_DECLS
