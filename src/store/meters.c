/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "meters.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "deed.h"
#include "shops.h"
#include "unit.h"

GPtrArray *
unsoot_vehicle_meters (UnsootDb *db, gint64 vehicle_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_meter_reading_row_type, error,
                           "WHERE vehicle_id = $1 ORDER BY taken_on, id", unsoot_int (vehicle_id));
}

/* Metres or seconds that the meter itself shows: rounded here, once. */
static gboolean
shown (const char *kind, double typed, const char *unit_slug, gint64 *si, GError **error)
{
  gboolean odometer = g_strcmp0 (kind, "odometer") == 0;
  UnsootUnit unit = unit_slug != NULL ? unsoot_unit_from_words (unit_slug) : UNSOOT_UNIT_NONE;
  gboolean fits = odometer ? unit == UNSOOT_UNIT_MI || unit == UNSOOT_UNIT_KM
                           : unit == UNSOOT_UNIT_H && g_strcmp0 (kind, "hours") == 0;

  if (!fits)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             odometer ? _ ("An odometer reads miles or kilometres, not “%s”.")
                                      : _ ("An hour meter reads hours, not “%s”."),
                             unit_slug != NULL ? unit_slug : "");
  if (!isfinite (typed) || typed < 0.0 || typed > 1e8)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("%g is no reading of a meter."),
                             typed);
  *si = llround (unsoot_unit_to_si (unit, typed));
  return TRUE;
}

static gint64
total_of (const UnsootMeterReadingRow *reading)
{
  return g_strcmp0 (reading->kind, "odometer") == 0 ? reading->metres : reading->seconds;
}

/* Since new: what the meter shows, and what meters before it had counted. A new meter that
 * shows less than that began at nothing; one that shows as much or more was set on. */
static gboolean
since_new (const UnsootMeterReadingRow *last, gint64 meter, const UnsootMeterReadingRow *reading,
           gint64 *total, GError **error)
{
  gint64 last_meter = 0;

  *total = meter;
  if (last == NULL)
    return TRUE;
  if (g_strcmp0 (reading->taken_on, last->taken_on) < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The reading is dated %s, before the last one of %s."),
                             reading->taken_on, last->taken_on);
  if (reading->new_meter)
    {
      *total = meter >= total_of (last) ? meter : total_of (last) + meter;
      return TRUE;
    }
  if (!shown (last->kind, last->typed, last->unit, &last_meter, error))
    return FALSE;
  if (meter < last_meter)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("%g %s is less than the last reading, %g %s on %s. Look again, or say that the meter "
           "is a new one."),
        reading->typed, reading->unit, last->typed, last->unit, last->taken_on);
  *total = total_of (last) + meter - last_meter;
  return TRUE;
}

static gboolean
set_total (UnsootDb *db, UnsootMeterReadingRow *reading, GError **error)
{
  g_autoptr (GError) failed = NULL;
  gint64 meter;
  gint64 total;

  if (!shown (reading->kind, reading->typed, reading->unit, &meter, error))
    return FALSE;
  g_autoptr (UnsootMeterReadingRow) last = unsoot_rows_maybe (
      db, &unsoot_meter_reading_row_type, &failed,
      "WHERE vehicle_id = $1 AND kind = $2 ORDER BY taken_on DESC, id DESC LIMIT 1",
      unsoot_int (reading->vehicle_id), unsoot_text (reading->kind));
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (!since_new (last, meter, reading, &total, error))
    return FALSE;
  *(g_strcmp0 (reading->kind, "odometer") == 0 ? &reading->metres : &reading->seconds) = total;
  return TRUE;
}

static char *
today_of (UnsootDb *db, gint64 now, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (db, error);

  return shop != NULL ? unsoot_shop_date (shop, now) : NULL;
}

gint64
unsoot_vehicle_meter_add (UnsootDb *db, const UnsootActing *who, gint64 vehicle_id, gint64 job_id,
                          const char *kind, double typed, const char *unit, const char *taken_on,
                          gboolean new_meter, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_VEHICLE, error);
  if (deed == NULL)
    return 0;
  g_autoptr (UnsootMeterReadingRow) reading = unsoot_meter_reading_row_new ();
  reading->vehicle_id = vehicle_id;
  reading->job_id = job_id;
  reading->kind = g_strdup (kind);
  reading->typed = typed;
  reading->unit = g_strdup (unit);
  reading->taken_on = taken_on != NULL ? g_strdup (taken_on) : today_of (db, who->now, error);
  reading->new_meter = new_meter;
  gboolean done = reading->taken_on != NULL && set_total (db, reading, error)
                  && unsoot_rows_insert (db, &unsoot_meter_reading_row_type, reading, who, error);
  return unsoot_deed_end (&deed, done, error) ? reading->id : 0;
}
