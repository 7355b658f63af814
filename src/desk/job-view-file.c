/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-view-file.h"

#include "bookings.h"
#include "calls.h"
#include "jobs.h"
#include "path.h"
#include "prechecks.h"
#include "quotes.h"
#include "run-traces.h"
#include "services.h"

enum
{
  MOST_TRACES = 4
};

static void
clear (gpointer data)
{
  UnsootJobViewFile *self = data;

  for (int side = 0; side < UNSOOT_SIDES; side++)
    g_clear_pointer (&self->doses[side], unsoot_dose_free);
  g_clear_pointer (&self->file, unsoot_job_file_free);
  g_clear_pointer (&self->bill, unsoot_bill_free);
  g_clear_pointer (&self->conflicts, g_ptr_array_unref);
  g_clear_pointer (&self->traces, g_ptr_array_unref);
  g_clear_pointer (&self->prechecks, g_ptr_array_unref);
  g_clear_pointer (&self->calls, g_ptr_array_unref);
  g_free (self->overrun);
  g_free (self->bill_trouble);
}

UnsootJobViewFile *
unsoot_job_view_file_ref (UnsootJobViewFile *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
unsoot_job_view_file_unref (UnsootJobViewFile *self)
{
  g_atomic_rc_box_release_full (self, clear);
}

static GArray *
load_rules (UnsootDb *db, GPtrArray **rows, GError **error)
{
  GArray *rules;

  *rows = unsoot_dose_rule_list (db, error);
  if (*rows == NULL)
    return NULL;
  rules = g_array_new (FALSE, FALSE, sizeof (UnsootDoseRule));
  for (guint i = 0; i < (*rows)->len; i++)
    {
      const UnsootDoseRuleRow *row = g_ptr_array_index (*rows, i);
      UnsootDoseRule rule = { .ml = row->dose_ml, .source = row->source };

      if (unsoot_side_from_slug (row->side, &rule.side)
          && unsoot_size_class_find (row->size_class, &rule.size))
        g_array_append_val (rules, rule);
    }
  return rules;
}

static UnsootDose *
reason (const UnsootJobFile *file, UnsootSide side, const GArray *rules)
{
  const UnsootFamilyRow *family = file->family;
  UnsootDoseAsk ask = { .side = side,
                        .gvwr_lb = file->vehicle->gvwr_lb,
                        .rules = (const UnsootDoseRule *) rules->data,
                        .n_rules = rules->len };

  if (family != NULL)
    {
      ask.family_name = family->name;
      ask.family_ml = side == UNSOOT_SIDE_FUEL ? family->fuel_dose_ml : family->intake_dose_ml;
      unsoot_size_class_find (family->size_class, &ask.family_size);
    }
  return unsoot_dose (&ask);
}

static gboolean
load_doses (UnsootDb *db, UnsootJobViewFile *self, GError **error)
{
  g_autoptr (GPtrArray) rows = NULL;
  g_autoptr (GArray) rules = load_rules (db, &rows, error);

  if (rules == NULL)
    return FALSE;
  if (self->file->job->fuel_dose_ml > 0)
    self->doses[UNSOOT_SIDE_FUEL] = reason (self->file, UNSOOT_SIDE_FUEL, rules);
  if (self->file->job->intake_dose_ml > 0)
    self->doses[UNSOOT_SIDE_INTAKE] = reason (self->file, UNSOOT_SIDE_INTAKE, rules);
  return TRUE;
}

/* A bill that can't be reckoned is no reason not to show the job. */
static void
load_bill (UnsootDb *db, UnsootJobViewFile *self)
{
  g_autoptr (GError) error = NULL;

  self->bill = unsoot_job_bill (db, self->file->job->id, TRUE, &error);
  if (self->bill == NULL)
    self->bill_trouble = g_strdup (error->message);
}

static gboolean
load_traces (UnsootDb *db, UnsootJobViewFile *self, GError **error)
{
  if (self->file->run == NULL)
    self->traces = g_ptr_array_new ();
  else
    self->traces = unsoot_run_traces (db, self->file->run->id, MOST_TRACES, error);
  return self->traces != NULL;
}

/* Only a plan can be broken: what is under way or over is as it is. */
static gboolean
load_conflicts (UnsootDb *db, UnsootJobViewFile *self, gint64 now, GError **error)
{
  const UnsootBookingRow *booking = self->file->booking;
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (gint64));
  UnsootBookingWish wish;

  if (booking == NULL
      || g_strcmp0 (self->file->job->status, unsoot_job_status_slug (UNSOOT_JOB_BOOKED)) != 0)
    {
      self->conflicts = g_ptr_array_new ();
      return TRUE;
    }
  for (guint i = 0; i < self->file->adapters->len; i++)
    {
      const UnsootJobAdapter *adapter = g_ptr_array_index (self->file->adapters, i);
      if (adapter->item != NULL)
        g_array_append_val (items, adapter->item->id);
    }
  wish = (UnsootBookingWish){ .booking_id = booking->id,
                              .job_id = booking->job_id,
                              .bay_id = booking->bay_id,
                              .machine_id = booking->machine_id,
                              .technician_id = booking->technician_id,
                              .starts_at = booking->starts_at,
                              .ends_at = booking->ends_at,
                              .items = (const gint64 *) items->data,
                              .n_items = items->len };
  self->conflicts = unsoot_booking_conflicts (db, &wish, now, error);
  return self->conflicts != NULL;
}

/* Before the work is billed an overrun asks again; after that there is nothing to ask. */
static gboolean
load_authority (UnsootDb *db, UnsootJobViewFile *self, GError **error)
{
  const gint64 job_id = self->file->job->id;
  g_auto (UnsootAuthorityResult) result = { 0 };
  UnsootJobStatus status = UNSOOT_JOB_PAID;

  if (!unsoot_job_authorised_minor (db, job_id, &self->authorised_minor, error))
    return FALSE;
  unsoot_job_status_find (self->file->job->status, &status);
  self->asks = self->authorised_minor == 0;
  if (self->bill == NULL || (status > UNSOOT_JOB_DONE && status != UNSOOT_JOB_STOPPED))
    return TRUE;
  if (!unsoot_job_authority (db, job_id, self->bill->with_tax, &result, error))
    return FALSE;
  self->asks = result.verdict == UNSOOT_AUTHORITY_NONE || result.verdict == UNSOOT_AUTHORITY_ASK;
  if (result.verdict == UNSOOT_AUTHORITY_ASK || result.verdict == UNSOOT_AUTHORITY_WITHIN)
    self->overrun = g_strdup (result.sentence);
  return TRUE;
}

UnsootJobViewFile *
unsoot_job_view_file_load (UnsootDb *db, gint64 job_id, gint64 now, GError **error)
{
  g_autoptr (UnsootJobViewFile) self = g_atomic_rc_box_new0 (UnsootJobViewFile);

  self->file = unsoot_job_file_load (db, job_id, error);
  if (self->file == NULL || !load_doses (db, self, error) || !load_traces (db, self, error)
      || !load_conflicts (db, self, now, error))
    return NULL;
  load_bill (db, self);
  self->prechecks = unsoot_job_prechecks (db, job_id, error);
  if (self->prechecks == NULL || !load_authority (db, self, error))
    return NULL;
  self->calls = unsoot_calls_shown_on (db, "job", job_id, error);
  if (self->calls == NULL)
    return NULL;
  return g_steal_pointer (&self);
}
