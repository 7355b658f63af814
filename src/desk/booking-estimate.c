/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-estimate.h"

struct _UnsootBookingEstimate
{
  UnsootActing who;
  UnsootBookingPlan *plan;
  UnsootBookingDraft *draft;
};

UnsootBookingEstimate *
unsoot_booking_estimate_new (const UnsootActing *who, const UnsootBookingPlan *plan,
                             gint64 wanted_at, UnsootBookingDraft *draft)
{
  UnsootBookingEstimate *estimate = g_new0 (UnsootBookingEstimate, 1);

  estimate->who = *who;
  estimate->plan = unsoot_booking_plan_copy (plan);
  if (estimate->plan->starts_at == 0)
    estimate->plan->starts_at = wanted_at;
  estimate->draft = draft;
  return estimate;
}

void
unsoot_booking_estimate_free (gpointer data)
{
  UnsootBookingEstimate *estimate = data;

  unsoot_booking_plan_free (estimate->plan);
  unsoot_booking_draft_free (estimate->draft);
  g_free (estimate);
}

static GPtrArray *
phones_of (const UnsootBookingPlan *plan)
{
  GPtrArray *phones;

  if (plan->customer == NULL || plan->phone == NULL)
    return NULL;
  phones = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_phone_row_free);
  UnsootPhoneRow *phone = unsoot_phone_row_new ();
  phone->number = g_strdup (plan->phone);
  g_ptr_array_add (phones, phone);
  return phones;
}

gpointer
unsoot_booking_estimate_give (UnsootDb *db, gpointer data, GCancellable *cancellable,
                              GError **error)
{
  UnsootBookingEstimate *estimate = data;
  g_autoptr (GPtrArray) phones = phones_of (estimate->plan);
  UnsootQuoteWish wish;
  gint64 id;

  unsoot_booking_plan_wish (estimate->plan, &wish);
  id = unsoot_job_quote_first (db, &estimate->who, &wish, phones, error);
  if (id == 0)
    return NULL;
  /* A draft too many is thrown away by hand; the estimate stands. */
  unsoot_booking_draft_put (db, estimate->draft, cancellable, NULL);
  return g_memdup2 (&id, sizeof id);
}
