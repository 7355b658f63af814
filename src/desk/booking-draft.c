/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-draft.h"

#include "drafts.h"

void
unsoot_booking_start_free (UnsootBookingStart *start)
{
  if (start == NULL)
    return;
  g_clear_pointer (&start->plan, unsoot_booking_plan_free);
  g_free (start);
}

UnsootBookingPlan *
unsoot_booking_plan_for (const char *slug, gint64 record)
{
  UnsootBookingPlan *plan = unsoot_booking_plan_new ();

  if (g_str_equal (slug, "booking-party"))
    plan->customer_id = record;
  else if (g_str_equal (slug, "booking-vehicle"))
    plan->vehicle_id = record;
  else if (g_str_equal (slug, "booking-job"))
    plan->job_id = record;
  return plan;
}

UnsootBookingStart *
unsoot_booking_start_load (UnsootDb *db, gint64 staff_id, const char *slug, gint64 record,
                           GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootDraftRow) draft = unsoot_draft_load (db, staff_id, slug, record, &failed);
  UnsootBookingStart *start;

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return NULL;
    }
  start = g_new0 (UnsootBookingStart, 1);
  start->plan = draft != NULL ? unsoot_booking_plan_from_text (draft->text) : NULL;
  if (start->plan != NULL)
    start->kept_at = draft->at;
  else
    start->plan = unsoot_booking_plan_for (slug, record);
  return start;
}

UnsootBookingDraft *
unsoot_booking_draft_new (const UnsootActing *who, const char *slug, gint64 record,
                          const UnsootBookingPlan *plan)
{
  UnsootBookingDraft *draft = g_new0 (UnsootBookingDraft, 1);

  draft->who = *who;
  draft->place = g_strdup (slug);
  draft->record = record;
  if (plan != NULL && !unsoot_booking_plan_is_empty (plan))
    draft->text = unsoot_booking_plan_to_text (plan);
  return draft;
}

void
unsoot_booking_draft_free (gpointer data)
{
  UnsootBookingDraft *draft = data;

  if (draft == NULL)
    return;
  g_free (draft->place);
  g_free (draft->text);
  g_free (draft);
}

gpointer
unsoot_booking_draft_put (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootBookingDraft *draft = data;

  if (draft->text != NULL)
    unsoot_draft_keep (db, &draft->who, draft->place, draft->record, draft->text, error);
  else
    unsoot_draft_drop (db, &draft->who, draft->place, draft->record, error);
  return NULL;
}
