/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bookings.h"

#include <glib/gi18n-lib.h>

#include "adapters.h"
#include "booking-conflicts.h"
#include "booking-states.h"
#include "deed.h"
#include "job-status.h"
#include "jobs.h"
#include "services.h"
#include "vehicles.h"

GPtrArray *
unsoot_bay_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_bay_row_type, error, "ORDER BY active DESC, position, id");
}

gboolean
unsoot_bay_save (UnsootDb *db, const UnsootActing *who, UnsootBayRow *bay, GError **error)
{
  if (unsoot_deed_blank (bay->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("The bay needs a name."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_SHOP, &unsoot_bay_row_type, bay, NULL, error);
}

GPtrArray *
unsoot_booking_list (UnsootDb *db, gint64 from, gint64 to, GError **error)
{
  return unsoot_rows_list (db, &unsoot_booking_row_type, error,
                           "WHERE starts_at < $2 AND ends_at > $1 AND state <> 'dropped'"
                           " ORDER BY starts_at, id",
                           unsoot_int (from), unsoot_int (to));
}

UnsootBookingRow *
unsoot_job_booking (UnsootDb *db, gint64 job_id, GError **error)
{
  return unsoot_rows_maybe (db, &unsoot_booking_row_type, error,
                            "WHERE job_id = $1 AND state <> 'dropped' ORDER BY id DESC LIMIT 1",
                            unsoot_int (job_id));
}

GArray *
unsoot_booking_items (UnsootDb *db, gint64 booking_id, GError **error)
{
  g_autoptr (GPtrArray) rows
      = unsoot_rows_list (db, &unsoot_booking_adapter_row_type, error,
                          "WHERE booking_id = $1 ORDER BY id", unsoot_int (booking_id));
  GArray *items;

  if (rows == NULL)
    return NULL;
  items = g_array_new (FALSE, FALSE, sizeof (gint64));
  for (guint i = 0; i < rows->len; i++)
    g_array_append_val (items, ((const UnsootBookingAdapterRow *) rows->pdata[i])->item_id);
  return items;
}

/* The adapters a job needs: of every kind that fits the first that is free, or else the
 * first there is, so that what stands in its way can be named. */
static gboolean
choose_items (UnsootDb *db, const UnsootBookingWish *wish, const UnsootJobRow *job,
              const UnsootServiceRow *service, GArray *items, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, job->vehicle_id, error);
  g_autoptr (GPtrArray) fits
      = vehicle != NULL ? unsoot_adapters_fitting (db, vehicle, service->sides, wish->starts_at,
                                                   wish->ends_at, job->id, error)
                        : NULL;

  if (fits == NULL)
    return FALSE;
  for (guint i = 0; i < fits->len; i++)
    {
      const UnsootAdapterFit *fit = fits->pdata[i];
      if (fit->items->len == 0)
        continue;
      const UnsootItemState *first = fit->items->pdata[0];
      g_array_append_val (items, first->item->id);
    }
  return TRUE;
}

/* The wish with nothing left open: its end, and its adapters in @items. */
static gboolean
complete (UnsootDb *db, const UnsootBookingWish *wish, UnsootBookingWish *whole, GArray *items,
          GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, wish->job_id, error);
  g_autoptr (UnsootServiceRow) service
      = job != NULL ? unsoot_service_load (db, job->service_id, error) : NULL;

  if (service == NULL)
    return FALSE;
  *whole = *wish;
  if (whole->ends_at == 0)
    whole->ends_at = whole->starts_at + service->planned_minutes * 60;
  if (whole->ends_at <= whole->starts_at)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The booking ends before it starts."));
  if (wish->items != NULL)
    g_array_append_vals (items, wish->items, (guint) wish->n_items);
  else if (!choose_items (db, whole, job, service, items, error))
    return FALSE;
  whole->items = (const gint64 *) (gconstpointer) items->data;
  whole->n_items = items->len;
  return TRUE;
}

GPtrArray *
unsoot_booking_conflicts (UnsootDb *db, const UnsootBookingWish *wish, gint64 now, GError **error)
{
  g_autoptr (GArray) items = g_array_new (FALSE, TRUE, sizeof (gint64));
  UnsootBookingWish whole;

  return complete (db, wish, &whole, items, error)
             ? unsoot_booking_find_conflicts (db, &whole, TRUE, now, error)
             : NULL;
}

static gboolean
check_conflicts (UnsootDb *db, const UnsootBookingWish *wish, gint64 now, GError **error)
{
  g_autoptr (GPtrArray) conflicts = unsoot_booking_find_conflicts (db, wish, FALSE, now, error);

  if (conflicts == NULL)
    return FALSE;
  if (conflicts->len > 0)
    {
      g_autofree char *lines = unsoot_deed_lines (conflicts);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", lines);
    }
  return TRUE;
}

static gboolean
hold_items (UnsootDb *db, const UnsootActing *who, gint64 booking_id, const UnsootBookingWish *wish,
            GError **error)
{
  g_autoptr (GPtrArray) held
      = unsoot_rows_list (db, &unsoot_booking_adapter_row_type, error,
                          "WHERE booking_id = $1 ORDER BY id", unsoot_int (booking_id));

  for (guint i = 0; held != NULL && i < held->len; i++)
    if (!unsoot_rows_delete (db, &unsoot_booking_adapter_row_type, held->pdata[i], who, error))
      return FALSE;
  for (gsize i = 0; held != NULL && i < wish->n_items; i++)
    {
      g_autoptr (UnsootBookingAdapterRow) row = unsoot_booking_adapter_row_new ();
      row->booking_id = booking_id;
      row->item_id = wish->items[i];
      if (!unsoot_rows_insert (db, &unsoot_booking_adapter_row_type, row, who, error))
        return FALSE;
    }
  return held != NULL;
}

static gint64
keep_booking (UnsootDb *db, const UnsootActing *who, const UnsootBookingWish *wish, GError **error)
{
  g_autoptr (UnsootBookingRow) booking
      = wish->booking_id != 0
            ? unsoot_rows_get (db, &unsoot_booking_row_type, wish->booking_id, error)
            : unsoot_booking_row_new ();

  if (booking == NULL)
    return 0;
  booking->job_id = wish->job_id;
  booking->bay_id = wish->bay_id;
  booking->machine_id = wish->machine_id;
  booking->technician_id = wish->technician_id;
  booking->starts_at = wish->starts_at;
  booking->ends_at = wish->ends_at;
  g_free (booking->state);
  booking->state = g_strdup ("planned");
  if (!unsoot_deed_keep (db, &unsoot_booking_row_type, booking, who, error)
      || !hold_items (db, who, booking->id, wish, error))
    return 0;
  return booking->id;
}

/* A job has one booking that stands: a second wish moves it. */
static gboolean
find_own (UnsootDb *db, UnsootBookingWish *wish, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (wish->booking_id != 0)
    return TRUE;
  g_autoptr (UnsootBookingRow) own = unsoot_job_booking (db, wish->job_id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  wish->booking_id = own != NULL ? own->id : 0;
  return TRUE;
}

static gboolean
set_booked (UnsootDb *db, const UnsootActing *who, UnsootJobRow *job, GError **error)
{
  UnsootJobStatus status = unsoot_job_row_status (job);

  if (status == UNSOOT_JOB_BOOKED || status == UNSOOT_JOB_ARRIVED || status == UNSOOT_JOB_STOPPED)
    return TRUE;
  return unsoot_job_move (db, who, job, UNSOOT_JOB_BOOKED, NULL, error);
}

gint64
unsoot_job_book (UnsootDb *db, const UnsootActing *who, const UnsootBookingWish *wish,
                 GError **error)
{
  UnsootDeed kind = wish->booking_id != 0 ? UNSOOT_DEED_MOVE_BOOKING : UNSOOT_DEED_BOOK;
  g_autoptr (GArray) items = g_array_new (FALSE, TRUE, sizeof (gint64));
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, kind, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, wish->job_id, error) : NULL;
  UnsootBookingWish whole;

  if (job == NULL || !complete (db, wish, &whole, items, error) || !find_own (db, &whole, error)
      || !set_booked (db, who, job, error) || !check_conflicts (db, &whole, who->now, error))
    return 0;
  gint64 id = keep_booking (db, who, &whole, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

gboolean
unsoot_booking_drop (UnsootDb *db, const UnsootActing *who, gint64 booking_id, const char *reason,
                     GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_MOVE_BOOKING, error);
  g_autoptr (UnsootBookingRow) booking
      = deed != NULL ? unsoot_rows_get (db, &unsoot_booking_row_type, booking_id, error) : NULL;
  g_autoptr (UnsootJobRow) job
      = booking != NULL ? unsoot_job_load (db, booking->job_id, error) : NULL;

  if (job == NULL)
    return FALSE;
  /* From declined and cancelled the path leads to quoted too, but not for want of a bay. */
  if (g_strcmp0 (booking->state, "planned") != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This booking does not stand any more."));
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_QUOTED, reason, error)
                  && unsoot_job_drop_bookings (db, who, job->id, error);
  return unsoot_deed_end (&deed, done, error);
}
