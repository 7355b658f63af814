/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-lines.h"

#include "jobs.h"
#include "services.h"
#include "vehicles.h"

static UnsootJobLine *
line_of (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, id, error);
  g_autoptr (UnsootVehicleRow) vehicle
      = job != NULL ? unsoot_vehicle_load (db, job->vehicle_id, error) : NULL;
  g_autoptr (UnsootServiceRow) service
      = vehicle != NULL ? unsoot_service_load (db, job->service_id, error) : NULL;
  UnsootJobLine *line;

  if (service == NULL)
    return NULL;
  line = g_new0 (UnsootJobLine, 1);
  line->id = job->id;
  line->number = job->number;
  line->vehicle_id = job->vehicle_id;
  line->customer_id = job->customer_id;
  line->status = g_strdup (job->status);
  line->vehicle = unsoot_vehicle_title (vehicle);
  line->service = g_strdup (service->name);
  line->sides = g_strdup (service->sides);
  line->made_at = job->made_at;
  return line;
}

GPtrArray *
unsoot_job_lines_of (UnsootDb *db, const GArray *ids, GError **error)
{
  g_autoptr (GPtrArray) lines
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_job_line_free);

  for (guint i = 0; i < ids->len; i++)
    {
      UnsootJobLine *line = line_of (db, g_array_index (ids, gint64, i), error);
      if (line == NULL)
        return NULL;
      g_ptr_array_add (lines, line);
    }
  return g_steal_pointer (&lines);
}
