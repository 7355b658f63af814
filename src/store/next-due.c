/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "next-due.h"

#include "civil.h"
#include "due.h"
#include "meters.h"
#include "shops.h"

/* Like vehicles that are looked at for a usual rate. */
#define FLEET_MOST 20

static UnsootMeterPoint
point_of (const UnsootMeterReadingRow *reading)
{
  gboolean odometer = g_strcmp0 (reading->kind, "odometer") == 0;
  UnsootMeterPoint point = { 0, odometer ? reading->metres : reading->seconds };

  unsoot_day_parse (reading->taken_on, &point.day, NULL);
  return point;
}

static GArray *
points_of (GPtrArray *readings, const char *kind)
{
  GArray *points = g_array_new (FALSE, TRUE, sizeof (UnsootMeterPoint));

  for (guint i = 0; i < readings->len; i++)
    {
      const UnsootMeterReadingRow *reading = readings->pdata[i];
      UnsootMeterPoint point = point_of (reading);
      if (g_strcmp0 (reading->kind, kind) == 0 && point.day != 0)
        g_array_append_val (points, point);
    }
  return points;
}

static UnsootMeter
meter_of (GArray *points, double fleet_rate)
{
  UnsootMeter meter
      = { -1, (const UnsootMeterPoint *) (gconstpointer) points->data, points->len, fleet_rate };

  if (points->len > 0)
    meter.at_service = g_array_index (points, UnsootMeterPoint, points->len - 1).value;
  return meter;
}

static GArray *
like_vehicles (UnsootDb *db, const UnsootJobRow *job, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, error,
      "SELECT id FROM vehicles WHERE family_id = $1 AND id <> $2"
      " ORDER BY id DESC LIMIT $3",
      unsoot_key (job->family_id), unsoot_int (job->vehicle_id), unsoot_int (FLEET_MOST));
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      gint64 id = unsoot_query_get_int (query, 0);
      g_array_append_val (ids, id);
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&ids) : NULL;
}

/* The mean of what like vehicles add in a day, where their own readings tell. */
static gboolean
fleet_rate (UnsootDb *db, const UnsootJobRow *job, const char *kind, double *rate, GError **error)
{
  g_autoptr (GArray) ids = like_vehicles (db, job, error);
  double sum = 0.0;
  int n = 0;

  for (guint i = 0; ids != NULL && i < ids->len; i++)
    {
      g_autoptr (GPtrArray) readings
          = unsoot_vehicle_meters (db, g_array_index (ids, gint64, i), error);
      if (readings == NULL)
        return FALSE;
      g_autoptr (GArray) points = points_of (readings, kind);
      UnsootMeter meter = meter_of (points, 0.0);
      gboolean from_fleet;
      double own = unsoot_due_rate (&meter, &from_fleet);
      sum += own;
      n += own > 0.0 ? 1 : 0;
    }
  *rate = n > 0 ? sum / n : 0.0;
  return ids != NULL;
}

static UnsootUnit
distance_unit (GPtrArray *readings)
{
  for (guint i = readings->len; i > 0; i--)
    {
      const UnsootMeterReadingRow *reading = readings->pdata[i - 1];
      if (g_strcmp0 (reading->unit, "km") == 0)
        return UNSOOT_UNIT_KM;
      if (g_strcmp0 (reading->unit, "mi") == 0)
        return UNSOOT_UNIT_MI;
    }
  return UNSOOT_UNIT_MI;
}

static void
take (UnsootJobRow *job, const UnsootDue *due, const UnsootShopRow *shop,
      const UnsootMeter *odometer)
{
  g_clear_pointer (&job->next_due_on, g_free);
  g_clear_pointer (&job->next_due_reason, g_free);
  job->next_due_metres = 0;
  if (due->by == UNSOOT_DUE_NEVER)
    return;
  job->next_due_on = unsoot_day_iso (due->day);
  job->next_due_reason = g_strdup (due->sentence);
  if (shop->next_due_metres > 0 && odometer->at_service >= 0)
    job->next_due_metres = odometer->at_service + shop->next_due_metres;
}

gboolean
unsoot_job_set_next_due (UnsootDb *db, UnsootJobRow *job, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);
  g_autoptr (GPtrArray) readings
      = shop != NULL ? unsoot_vehicle_meters (db, job->vehicle_id, error) : NULL;
  double metres_a_day;
  double seconds_a_day;
  int today;

  if (readings == NULL || !fleet_rate (db, job, "odometer", &metres_a_day, error)
      || !fleet_rate (db, job, "hours", &seconds_a_day, error))
    return FALSE;
  g_autofree char *date = unsoot_shop_date (shop, now);
  if (!unsoot_day_parse (date, &today, error))
    return FALSE;
  g_autoptr (GArray) driven = points_of (readings, "odometer");
  g_autoptr (GArray) run = points_of (readings, "hours");
  UnsootMeter odometer = meter_of (driven, metres_a_day);
  UnsootMeter hours = meter_of (run, seconds_a_day);
  UnsootDueInterval interval
      = { (int) shop->next_due_months, shop->next_due_metres, shop->next_due_seconds };
  g_auto (UnsootDue) due
      = unsoot_due_next (today, &interval, &odometer, &hours, distance_unit (readings));
  take (job, &due, shop, &odometer);
  return TRUE;
}
