/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-life.h"

#include <glib/gi18n-lib.h>

#include "civil.h"
#include "drawing-view.h"
#include "format.h"
#include "life-drawing.h"
#include "path.h"
#include "unit.h"

enum
{
  WIDTH = 900,
  HEIGHT = 220
};

/* The drawing's data, with what it points to. */
typedef struct
{
  UnsootLife life;
  GArray *points; /* UnsootMeterPoint */
} Life;

static void
life_free (gpointer data)
{
  Life *self = data;

  g_array_unref (self->points);
  g_array_unref (self->life.services);
  g_free (self);
}

static UnsootDrawing *
make (gconstpointer data, double width, double height)
{
  const Life *self = data;

  return unsoot_life_drawing_new (&self->life, width, height);
}

static int
day_of (const char *iso)
{
  int day = 0;

  if (iso != NULL)
    unsoot_day_parse (iso, &day, NULL);
  return day;
}

/* The odometer, or the hours of what has none. */
static const char *
kind_of (const UnsootVehicleFile *file)
{
  for (guint i = 0; i < file->meters->len; i++)
    {
      const UnsootMeterReadingRow *meter = g_ptr_array_index (file->meters, i);
      if (g_str_equal (meter->kind, "odometer"))
        return "odometer";
    }
  return "hours";
}

static void
take_meters (Life *self, const UnsootVehicleFile *file)
{
  const char *kind = kind_of (file);
  const gboolean odometer = g_str_equal (kind, "odometer");

  self->life.unit = odometer ? UNSOOT_UNIT_MI : UNSOOT_UNIT_H;
  for (guint i = 0; i < file->meters->len; i++)
    {
      const UnsootMeterReadingRow *meter = g_ptr_array_index (file->meters, i);
      const UnsootMeterPoint point
          = { day_of (meter->taken_on), odometer ? meter->metres : meter->seconds };

      if (!g_str_equal (meter->kind, kind) || point.day == 0)
        continue;
      if (odometer)
        self->life.unit = unsoot_unit_from_words (meter->unit);
      g_array_append_val (self->points, point);
    }
  self->life.meter.points = (const UnsootMeterPoint *) (gconstpointer) self->points->data;
  self->life.meter.n_points = self->points->len;
  self->life.target = odometer && file->due != NULL ? file->due->next_due_metres : 0;
}

static gboolean
was_done (const char *slug)
{
  UnsootJobStatus status;

  return unsoot_job_status_find (slug, &status) && unsoot_path_position (status) >= UNSOOT_JOB_DONE;
}

/* Jobs come newest first; only what was really done is a service. */
static void
take_services (Life *self, const UnsootVehicleFile *file, GTimeZone *zone)
{
  for (guint i = file->jobs->len; i > 0; i--)
    {
      const UnsootJobLine *job = g_ptr_array_index (file->jobs, i - 1);
      const gboolean both = g_strcmp0 (job->sides, "both") == 0;
      g_autofree char *on
          = unsoot_format_iso_day (job->starts_at != 0 ? job->starts_at : job->made_at, zone);
      const UnsootLifeService service
          = { day_of (on), (int) job->number, both || g_strcmp0 (job->sides, "fuel") == 0,
              both || g_strcmp0 (job->sides, "intake") == 0 };

      if (was_done (job->status))
        g_array_append_val (self->life.services, service);
    }
}

GtkWidget *
unsoot_vehicle_life_new (const UnsootVehicleFile *file, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  Life *self = g_new0 (Life, 1);

  self->points = g_array_new (FALSE, FALSE, sizeof (UnsootMeterPoint));
  self->life.services = g_array_new (FALSE, FALSE, sizeof (UnsootLifeService));
  self->life.today = day_of (today);
  self->life.due = file->due != NULL ? day_of (file->due->next_due_on) : 0;
  take_meters (self, file);
  take_services (self, file, unsoot_session_zone (session));
  if (self->points->len == 0 && self->life.services->len == 0)
    {
      life_free (self);
      return NULL;
    }
  return unsoot_drawing_view_new (_ ("The vehicle's life"), WIDTH, HEIGHT, make, self, life_free);
}
