/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "runs.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "authorise.h"
#include "booking-states.h"
#include "bookings.h"
#include "deed.h"
#include "families.h"
#include "job-status.h"
#include "jobs.h"
#include "prechecks.h"
#include "procedure-text.h"
#include "procedures.h"
#include "quotes.h"
#include "run-rows.h"
#include "services.h"
#include "tanks.h"

UnsootRunRow *
unsoot_job_run_row (UnsootDb *db, gint64 run_id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_run_row_type, run_id, error);
}

UnsootRunRow *
unsoot_job_run_of (UnsootDb *db, gint64 job_id, GError **error)
{
  return unsoot_rows_maybe (db, &unsoot_run_row_type, error,
                            "WHERE job_id = $1 ORDER BY id DESC LIMIT 1", unsoot_int (job_id));
}

UnsootRunRow *
unsoot_bay_run (UnsootDb *db, gint64 bay_id, GError **error)
{
  return unsoot_rows_maybe (db, &unsoot_run_row_type, error,
                            "WHERE outcome IS NULL AND job_id IN (SELECT job_id FROM bookings"
                            " WHERE bay_id = $1 AND state = 'planned') ORDER BY id DESC LIMIT 1",
                            unsoot_int (bay_id));
}

GPtrArray *
unsoot_job_run_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_run_row_type, error,
                           "WHERE outcome IS NULL ORDER BY began_at, id");
}

GPtrArray *
unsoot_job_run_events (UnsootDb *db, gint64 run_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_run_event_row_type, error, "WHERE run_id = $1 ORDER BY seq",
                           unsoot_int (run_id));
}

UnsootRun *
unsoot_job_run_load (UnsootDb *db, gint64 run_id, GError **error)
{
  g_autoptr (UnsootRunRow) row = unsoot_job_run_row (db, run_id, error);
  g_autoptr (GPtrArray) events = row != NULL ? unsoot_job_run_events (db, run_id, error) : NULL;

  return events != NULL ? unsoot_run_from_rows (row, events, error) : NULL;
}

double
unsoot_job_run_progress (const UnsootRun *run)
{
  guint steps = unsoot_run_procedure (run)->steps->len;
  guint done = 0;

  for (guint i = 0; i < steps; i++)
    if (unsoot_run_step_done (run, (int) i) || unsoot_run_step_passed_over (run, (int) i))
      done++;
  return steps > 0 ? (double) done / steps : 0.0;
}

/* The version in use for the job's family and service, which may be run. */
static UnsootProcedureRow *
procedure_for (UnsootDb *db, const UnsootJobRow *job, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootServiceRow) service = unsoot_service_load (db, job->service_id, error);
  g_autoptr (UnsootProcedureRow) row
      = service != NULL ? unsoot_procedure_in_use (db, job->family_id, service->sides, &failed)
                        : NULL;

  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (row == NULL && service != NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("There is no procedure for “%s” on this engine family. The lead "
                         "technician writes one."),
                      service->name);
  else if (row != NULL && row->stop_reason != NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("The procedure “%s” is not to be run: %s."), row->title, row->stop_reason);
  else
    return g_steal_pointer (&row);
  return NULL;
}

/* The family's facts with this job's own doses. */
static UnsootFamilyFacts *
facts_for (UnsootDb *db, const UnsootJobRow *job, const UnsootProcedure *procedure, GError **error)
{
  g_autoptr (UnsootFamilyRow) family = unsoot_family_load (db, job->family_id, error);
  if (family == NULL)
    return NULL;

  if (!(family->window_min_pa > 0.0))
    {
      unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                        _ ("%s has no pressure window entered, so it can't be run."), family->name);
      return NULL;
    }
  if ((procedure->cleans[UNSOOT_SIDE_FUEL] && job->fuel_dose_ml <= 0)
      || (procedure->cleans[UNSOOT_SIDE_INTAKE] && job->intake_dose_ml <= 0))
    {
      unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                        _ ("Job %" PRId64 " has no dose for a side that is cleaned."), job->number);
      return NULL;
    }
  UnsootFamilyFacts *facts = unsoot_family_row_facts (family);
  facts->dose_ml[UNSOOT_SIDE_FUEL] = job->fuel_dose_ml;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = job->intake_dose_ml;
  return facts;
}

static gboolean
check_authorised (UnsootDb *db, const UnsootJobRow *job, GError **error)
{
  gint64 words = 0;

  if (!unsoot_db_int (db, &words, error, "SELECT count (*) FROM authorisations WHERE job_id = $1",
                      unsoot_int (job->id)))
    return FALSE;
  if (words == 0)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        _ ("Nobody has authorised job %" PRId64 " yet; ask the customer before it starts."),
        job->number);
  return TRUE;
}

/* By the rule of the invoice, which counts what is offered too: more than was agreed to is asked
 * again before anything is opened. */
static gboolean
check_covered (UnsootDb *db, const UnsootJobRow *job, GError **error)
{
  g_autoptr (UnsootBill) bill = unsoot_job_bill (db, job->id, TRUE, error);
  g_auto (UnsootAuthorityResult) result = { 0 };

  if (bill == NULL || !unsoot_job_authority (db, job->id, bill->with_tax, &result, error))
    return FALSE;
  if (result.verdict == UNSOOT_AUTHORITY_ASK)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", result.sentence);
  return TRUE;
}

static gboolean
check_machine_free (UnsootDb *db, gint64 machine_id, GError **error)
{
  g_autoptr (UnsootMachineRow) machine = unsoot_machine_load (db, machine_id, error);
  gint64 runs = 0;

  if (machine == NULL
      || !unsoot_db_int (db, &runs, error,
                         "SELECT count (*) FROM runs WHERE machine_id = $1 AND outcome IS NULL",
                         unsoot_int (machine_id)))
    return FALSE;
  if (runs > 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("%s is in use by another run."), machine->name);
  if (!machine->active)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("%s is out of use."),
                             machine->name);
  return TRUE;
}

static gint64
machine_for (UnsootDb *db, const UnsootJobRow *job, gint64 machine_id, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootBookingRow) booking
      = machine_id == 0 ? unsoot_job_booking (db, job->id, &failed) : NULL;

  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (machine_id == 0 && (booking == NULL || booking->machine_id == 0))
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                      _ ("Say on which machine job %" PRId64 " is run: its booking names none."),
                      job->number);
  else
    return machine_id != 0 ? machine_id : booking->machine_id;
  return 0;
}

static gint64
insert_run (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, gint64 machine_id,
            const UnsootProcedureRow *version, GError **error)
{
  g_autoptr (UnsootProcedure) procedure = unsoot_procedure_load (db, version->id, error);
  g_autoptr (UnsootFamilyFacts) facts
      = procedure != NULL ? facts_for (db, job, procedure, error) : NULL;
  g_autoptr (GPtrArray) tanks = facts != NULL ? unsoot_machine_tanks (db, machine_id, error) : NULL;
  g_autoptr (UnsootRunRow) row = unsoot_run_row_new ();

  if (tanks == NULL)
    return 0;
  row->job_id = job->id;
  row->procedure_id = version->id;
  row->machine_id = machine_id;
  row->technician_id = who->staff_id;
  row->began_at = who->now;
  row->start_tanks = unsoot_run_tanks_text (tanks);
  row->basis = unsoot_procedure_print (procedure, facts);
  return unsoot_rows_insert (db, &unsoot_run_row_type, row, who, error) ? row->id : 0;
}

static gboolean
post_began (UnsootDb *db, const UnsootActing *who, gint64 run_id, GError **error)
{
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (UNSOOT_RUN_BEGAN, who->now);

  return unsoot_run_event_add (db, who, run_id, event, NULL, error);
}

/* The path leads from stopped into the bay too; but what is off the engine is known to the run
 * that took it off, and a new one would not ask for it back. */
static gboolean
check_whole (const UnsootJobRow *job, GError **error)
{
  if (unsoot_job_row_status (job) != UNSOOT_JOB_STOPPED)
    return TRUE;
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                           _ ("Job %" PRId64 " stands in pieces: take up its run again "
                              "instead of beginning another."),
                           job->number);
}

gint64
unsoot_job_run_begin (UnsootDb *db, const UnsootActing *who, gint64 job_id, gint64 machine_id,
                      GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_RUN_STEP, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;
  gint64 machine = 0;
  gint64 run = 0;

  if (job == NULL || !check_authorised (db, job, error) || !check_covered (db, job, error)
      || !check_whole (job, error) || (machine = machine_for (db, job, machine_id, error)) == 0
      || !check_machine_free (db, machine, error))
    return 0;
  g_autoptr (UnsootProcedureRow) version = procedure_for (db, job, error);
  if (version == NULL)
    return 0;
  job->procedure_id = version->id;
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_IN_BAY, NULL, error)
                  && unsoot_job_precheck_gate (db, job_id, error)
                  && (run = insert_run (db, who, job, machine, version, error)) != 0
                  && post_began (db, who, run, error);
  return unsoot_deed_end (&deed, done, error) ? run : 0;
}

static gboolean
check_kind (const UnsootRunEvent *event, GError **error)
{
  if (event->kind == UNSOOT_RUN_SIGNED || event->kind == UNSOOT_RUN_RELEASED)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A run ends by finishing the job or by releasing the vehicle."));
  return TRUE;
}

/* STOP is anyone's: whoever sees it must not need another role. */
static UnsootDeed
deed_for (const UnsootRunEvent *event)
{
  gboolean stop = unsoot_run_event_stops (event) || event->kind == UNSOOT_RUN_ALARM_HEARD;

  return stop ? UNSOOT_DEED_HALT : UNSOOT_DEED_RUN_STEP;
}

gboolean
unsoot_job_run_post (UnsootDb *db, const UnsootActing *who, gint64 run_id, UnsootRunEvent *event,
                     UnsootRun **after, GError **error)
{
  if (!check_kind (event, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, deed_for (event), error);
  g_autoptr (UnsootRun) run = NULL;
  if (deed == NULL)
    return FALSE;
  gboolean done = unsoot_run_event_check_lot (db, who, event, error)
                  && unsoot_run_event_add (db, who, run_id, event, &run, error);
  if (!unsoot_deed_end (&deed, done, error))
    return FALSE;
  if (after != NULL)
    *after = g_steal_pointer (&run);
  return TRUE;
}

static gboolean
put_event (UnsootDb *db, const UnsootActing *who, gint64 run_id, UnsootRun *run,
           UnsootRunEvent *event, GError **error)
{
  UnsootActing then = { .staff_id = who->staff_id, .now = event->at };

  event->staff_id = who->staff_id;
  return check_kind (event, error) && unsoot_deed_allowed (db, &then, deed_for (event), error)
         && unsoot_run_event_check_lot (db, &then, event, error)
         && unsoot_run_event_put (db, run_id, run, event, error);
}

gboolean
unsoot_job_run_post_all (UnsootDb *db, const UnsootActing *who, gint64 run_id, GPtrArray *events,
                         GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_RUN_STEP, error);
  if (deed == NULL)
    return FALSE;
  g_autoptr (UnsootRun) run = unsoot_job_run_load (db, run_id, error);
  gboolean done = run != NULL;

  for (guint i = 0; done && i < events->len; i++)
    done = put_event (db, who, run_id, run, events->pdata[i], error);
  return unsoot_deed_end (&deed, done, error);
}

/* A vehicle released in pieces comes into the bay again. */
static gboolean
take_up (UnsootDb *db, const UnsootActing *who, UnsootRunRow *row, GError **error)
{
  if (row->outcome == NULL)
    return TRUE;
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, row->job_id, error);
  if (job == NULL || !check_machine_free (db, row->machine_id, error))
    return FALSE;
  g_clear_pointer (&row->outcome, g_free);
  row->ended_at = 0;
  return unsoot_rows_update (db, &unsoot_run_row_type, row, who, error)
         && unsoot_job_move (db, who, job, UNSOOT_JOB_IN_BAY, NULL, error)
         && unsoot_job_renew_booking (db, who, job->id, error);
}

gboolean
unsoot_job_run_resume (UnsootDb *db, const UnsootActing *who, gint64 run_id, UnsootRun **after,
                       GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_RUN_STEP, error);
  g_autoptr (UnsootRunRow) row = deed != NULL ? unsoot_job_run_row (db, run_id, error) : NULL;
  g_autoptr (UnsootRunEvent) event = unsoot_run_event_new (UNSOOT_RUN_RESUMED, who->now);
  g_autoptr (UnsootRun) run = NULL;

  if (row == NULL)
    return FALSE;
  gboolean done
      = take_up (db, who, row, error) && unsoot_run_event_add (db, who, run_id, event, &run, error);
  if (!unsoot_deed_end (&deed, done, error))
    return FALSE;
  if (after != NULL)
    *after = g_steal_pointer (&run);
  return TRUE;
}
