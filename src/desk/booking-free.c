/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-free.h"

#include <glib/gi18n-lib.h>

enum
{
  DAYS_AT_ONCE = 7,
  DAYS_AHEAD = 28, /* how far the first free time is looked for by itself */
  DAY_SECONDS = 86400,
  PATIENCE_SECONDS = 15 * 60 /* a time that was chosen is not over at once */
};

static const UnsootFreeTime *
first_time (const GPtrArray *days)
{
  for (guint i = 0; i < days->len; i++)
    {
      const UnsootFreeDay *day = g_ptr_array_index (days, i);
      if (day->times->len > 0)
        return g_ptr_array_index (day->times, 0);
    }
  return NULL;
}

static gboolean
load_days (UnsootDb *db, UnsootBookingFile *file, const UnsootFreeTimeAsk *ask, gint64 now,
           GError **error)
{
  UnsootBookingPlan *plan = file->plan;

  for (;;)
    {
      g_clear_pointer (&file->days, g_ptr_array_unref);
      file->days = unsoot_free_days (db, ask, now + (gint64) plan->days_on * DAY_SECONDS, error);
      if (file->days == NULL)
        return FALSE;
      if (first_time (file->days) != NULL || plan->starts_at != 0 || plan->days_on >= DAYS_AHEAD)
        return TRUE;
      plan->days_on += DAYS_AT_ONCE;
    }
}

void
unsoot_booking_free_load (UnsootDb *db, UnsootBookingFile *file, gint64 now)
{
  g_autoptr (GError) error = NULL;
  UnsootBookingPlan *plan = file->plan;
  const UnsootFreeTimeAsk ask = { .vehicle_id = plan->vehicle_id,
                                  .vehicle = plan->vehicle,
                                  .service_id = plan->service_id,
                                  .job_id = plan->job_id,
                                  .bay_id = plan->bay_id,
                                  .machine_id = plan->machine_id,
                                  .technician_id = plan->technician_id,
                                  .days = DAYS_AT_ONCE };
  const UnsootFreeTime *first;
  gint64 starts_at = plan->walks_in ? now - now % 60 : plan->starts_at;

  file->why = g_ptr_array_new_with_free_func (g_free);
  if (file->quote == NULL)
    return;
  if (!load_days (db, file, &ask, now, &error))
    {
      file->days_trouble = g_strdup (error->message);
      return;
    }
  first = first_time (file->days);
  if (starts_at == 0 && file->booking != NULL)
    starts_at = file->booking->starts_at;
  if (starts_at == 0 && first != NULL)
    starts_at = first->starts_at;
  if (starts_at == 0)
    return;
  if (plan->starts_at != 0 && plan->starts_at < now - PATIENCE_SECONDS)
    g_ptr_array_add (file->why, g_strdup (_ ("That time has passed. Choose a later one.")));
  file->time = unsoot_free_time_at (db, &ask, starts_at, now, file->why, &error);
  if (file->time == NULL)
    file->days_trouble = g_strdup (error->message);
}
