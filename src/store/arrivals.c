/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "jobs.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "deed.h"
#include "job-status.h"
#include "meters.h"
#include "trouble-code.h"
#include "vehicles.h"

static gboolean
add_meters (UnsootDb *db, const UnsootActing *who, const UnsootJobRow *job,
            const UnsootArrival *arrival, GError **error)
{
  if (!isnan (arrival->odometer)
      && unsoot_vehicle_meter_add (db, who, job->vehicle_id, job->id, "odometer", arrival->odometer,
                                   arrival->odometer_unit, NULL, arrival->new_meter, error)
             == 0)
    return FALSE;
  return isnan (arrival->hours)
         || unsoot_vehicle_meter_add (db, who, job->vehicle_id, job->id, "hours", arrival->hours,
                                      "h", NULL, arrival->new_meter, error)
                != 0;
}

static gboolean
take_codes (UnsootJobRow *job, const char *typed, GError **error)
{
  if (unsoot_deed_blank (typed))
    return TRUE;
  g_auto (GStrv) codes = unsoot_trouble_codes_parse (typed, error);
  if (codes == NULL)
    return FALSE;
  g_free (job->codes);
  job->codes = g_strjoinv (" ", codes);
  return TRUE;
}

/* What is seen on the vehicle stays with the vehicle. */
static gboolean
note_altered (UnsootDb *db, const UnsootActing *who, gint64 vehicle_id, const char *altered,
              GError **error)
{
  if (unsoot_deed_blank (altered))
    return TRUE;
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, vehicle_id, error);
  if (vehicle == NULL)
    return FALSE;
  vehicle->emission_altered = TRUE;
  g_free (vehicle->emission_note);
  vehicle->emission_note = g_strdup (altered);
  return unsoot_rows_update (db, &unsoot_vehicle_row_type, vehicle, who, error);
}

gboolean
unsoot_job_arrive (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                   const UnsootArrival *arrival, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ARRIVE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL || !take_codes (job, arrival->codes, error))
    return FALSE;
  if (!unsoot_deed_blank (arrival->complaint))
    {
      g_free (job->complaint);
      job->complaint = g_strdup (arrival->complaint);
    }
  job->arrived_at = who->now;
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_ARRIVED, NULL, error)
                  && add_meters (db, who, job, arrival, error)
                  && note_altered (db, who, job->vehicle_id, arrival->altered, error);
  return unsoot_deed_end (&deed, done, error);
}
