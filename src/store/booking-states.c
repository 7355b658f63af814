/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-states.h"

#include "bookings.h"
#include "deed.h"

static gboolean
set_state (UnsootDb *db, const UnsootActing *who, UnsootBookingRow *booking, const char *state,
           GError **error)
{
  g_free (booking->state);
  booking->state = g_strdup (state);
  return unsoot_rows_update (db, &unsoot_booking_row_type, booking, who, error);
}

gboolean
unsoot_job_drop_bookings (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (GPtrArray) bookings = unsoot_rows_list (
      db, &unsoot_booking_row_type, error, "WHERE job_id = $1 AND state = 'planned' ORDER BY id",
      unsoot_int (job_id));

  if (bookings == NULL)
    return FALSE;
  for (guint i = 0; i < bookings->len; i++)
    if (!set_state (db, who, bookings->pdata[i], "dropped", error))
      return FALSE;
  return TRUE;
}

static gboolean
restate (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *state, GError **error)
{
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootBookingRow) booking = unsoot_job_booking (db, job_id, &failed);

  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (booking == NULL)
    return TRUE;
  if (g_str_equal (state, "kept") && who->now > booking->starts_at)
    booking->ends_at = who->now;
  return set_state (db, who, booking, state, error);
}

gboolean
unsoot_job_keep_booking (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  return restate (db, who, job_id, "kept", error);
}

gboolean
unsoot_job_renew_booking (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  return restate (db, who, job_id, "planned", error);
}
