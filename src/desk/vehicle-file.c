/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-file.h"

#include "calls.h"
#include "job-readings.h"
#include "jobs.h"
#include "meters.h"

enum
{
  MOST_JOBS = 200
};

void
unsoot_vehicle_file_free (UnsootVehicleFile *file)
{
  g_clear_pointer (&file->vehicle, unsoot_vehicle_row_free);
  g_clear_pointer (&file->customer, unsoot_customer_row_free);
  g_clear_pointer (&file->family, unsoot_family_row_free);
  g_clear_pointer (&file->meters, g_ptr_array_unref);
  g_clear_pointer (&file->readings, g_ptr_array_unref);
  g_clear_pointer (&file->jobs, g_ptr_array_unref);
  g_clear_pointer (&file->calls, g_ptr_array_unref);
  g_clear_pointer (&file->due, unsoot_job_row_free);
  g_free (file);
}

static gboolean
load_due (UnsootDb *db, UnsootVehicleFile *file, GError **error)
{
  g_autoptr (GPtrArray) jobs = unsoot_vehicle_jobs (db, file->vehicle->id, error);

  for (guint i = 0; jobs != NULL && i < jobs->len && file->due == NULL; i++)
    {
      const UnsootJobRow *job = g_ptr_array_index (jobs, i);
      if (job->next_due_on != NULL)
        file->due = unsoot_record_copy (&unsoot_job_row_type, job);
    }
  return jobs != NULL;
}

static gboolean
load_family (UnsootDb *db, UnsootVehicleFile *file, GError **error)
{
  if (file->vehicle->family_id == 0)
    return TRUE;
  file->family = unsoot_family_load (db, file->vehicle->family_id, error);
  return file->family != NULL;
}

UnsootVehicleFile *
unsoot_vehicle_file_load (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootVehicleFile) file = g_new0 (UnsootVehicleFile, 1);
  const UnsootListPage page = { .limit = MOST_JOBS, .order = UNSOOT_LIST_DOWN };

  if ((file->vehicle = unsoot_vehicle_load (db, id, error)) == NULL
      || (file->customer = unsoot_customer_load (db, file->vehicle->customer_id, error)) == NULL
      || !load_family (db, file, error)
      || (file->meters = unsoot_vehicle_meters (db, id, error)) == NULL
      || (file->readings = unsoot_vehicle_readings (db, id, error)) == NULL
      || (file->jobs = unsoot_job_page (db, &page, NULL, 0, id, error)) == NULL
      || (file->calls = unsoot_calls_shown_on (db, "vehicle", id, error)) == NULL
      || !load_due (db, file, error))
    return NULL;
  return g_steal_pointer (&file);
}
