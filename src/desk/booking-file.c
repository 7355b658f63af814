/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-file.h"

#include "bookings.h"
#include "customers.h"
#include "families.h"
#include "job-bills.h"
#include "job-status.h"
#include "jobs.h"
#include "machines.h"
#include "path.h"
#include "role.h"
#include "services.h"
#include "staff.h"
#include "vehicles.h"

enum
{
  DAYS_AT_ONCE = 7,
  DAYS_AHEAD = 28, /* how far the first free time is looked for by itself */
  DAY_SECONDS = 86400
};

void
unsoot_booking_file_free (UnsootBookingFile *file)
{
  if (file == NULL)
    return;
  g_clear_pointer (&file->plan, unsoot_booking_plan_free);
  g_clear_pointer (&file->customer, unsoot_customer_row_free);
  g_free (file->phone);
  g_clear_pointer (&file->vehicles, g_ptr_array_unref);
  g_clear_pointer (&file->vehicle, unsoot_vehicle_row_free);
  g_clear_pointer (&file->services, g_ptr_array_unref);
  g_clear_pointer (&file->families, g_ptr_array_unref);
  g_clear_pointer (&file->bays, g_ptr_array_unref);
  g_clear_pointer (&file->machines, g_ptr_array_unref);
  g_clear_pointer (&file->people, g_ptr_array_unref);
  g_clear_pointer (&file->quote, unsoot_quote_free);
  g_free (file->quote_trouble);
  g_clear_pointer (&file->days, g_ptr_array_unref);
  g_free (file->days_trouble);
  g_clear_pointer (&file->time, unsoot_free_time_free);
  g_clear_pointer (&file->why, g_ptr_array_unref);
  g_clear_pointer (&file->job, unsoot_job_row_free);
  g_clear_pointer (&file->lines, g_ptr_array_unref);
  g_clear_pointer (&file->bill, unsoot_bill_free);
  g_clear_pointer (&file->booking, unsoot_booking_row_free);
  g_free (file);
}

/* Takes out of @rows those that @active says are of no use any more. */
static GPtrArray *
only_active (GPtrArray *rows, gsize active)
{
  for (guint i = rows != NULL ? rows->len : 0; i-- > 0;)
    if (!G_STRUCT_MEMBER (gboolean, g_ptr_array_index (rows, i), active))
      g_ptr_array_remove_index (rows, i);
  return rows;
}

static GPtrArray *
who_carry_out (GPtrArray *staff)
{
  for (guint i = staff != NULL ? staff->len : 0; i-- > 0;)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      UnsootRole role;
      if (!person->active || !unsoot_role_find (person->role, &role)
          || (role != UNSOOT_ROLE_TECHNICIAN && role != UNSOOT_ROLE_LEAD))
        g_ptr_array_remove_index (staff, i);
    }
  return staff;
}

static gboolean
load_choices (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  file->services
      = only_active (unsoot_service_list (db, error), G_STRUCT_OFFSET (UnsootServiceRow, active));
  if (file->services == NULL)
    return FALSE;
  file->families = unsoot_family_list (db, error);
  if (file->families == NULL)
    return FALSE;
  file->bays = only_active (unsoot_bay_list (db, error), G_STRUCT_OFFSET (UnsootBayRow, active));
  if (file->bays == NULL)
    return FALSE;
  file->machines
      = only_active (unsoot_machine_list (db, error), G_STRUCT_OFFSET (UnsootMachineRow, active));
  if (file->machines == NULL)
    return FALSE;
  file->people = who_carry_out (unsoot_staff_list (db, error));
  return file->people != NULL;
}

static gboolean
load_job (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (file->plan->job_id == 0)
    return TRUE;
  file->job = unsoot_job_load (db, file->plan->job_id, error);
  if (file->job == NULL
      || !unsoot_job_authorised_minor (db, file->job->id, &file->authorised_minor, error))
    return FALSE;
  file->booking = unsoot_job_booking (db, file->job->id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  file->plan->customer_id = file->job->customer_id;
  file->plan->vehicle_id = file->job->vehicle_id;
  file->plan->service_id = file->job->service_id;
  g_clear_pointer (&file->plan->customer, unsoot_customer_row_free);
  g_clear_pointer (&file->plan->vehicle, unsoot_vehicle_row_free);
  file->stage = file->booking != NULL         ? UNSOOT_BOOKING_BOOKED
                : file->authorised_minor != 0 ? UNSOOT_BOOKING_AUTHORISED
                                              : UNSOOT_BOOKING_QUOTED;
  return TRUE;
}

static gboolean
load_whom (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  UnsootBookingPlan *plan = file->plan;
  g_autoptr (GPtrArray) phones = NULL;

  if (plan->vehicle_id != 0)
    {
      file->vehicle = unsoot_vehicle_load (db, plan->vehicle_id, error);
      if (file->vehicle == NULL)
        return FALSE;
      if (plan->job_id == 0)
        plan->customer_id = file->vehicle->customer_id;
    }
  if (plan->customer_id == 0)
    return TRUE;
  file->customer = unsoot_customer_load (db, plan->customer_id, error);
  phones = file->customer != NULL ? unsoot_customer_phones (db, plan->customer_id, error) : NULL;
  file->vehicles = phones != NULL
                       ? only_active (unsoot_customer_vehicles (db, plan->customer_id, error),
                                      G_STRUCT_OFFSET (UnsootVehicleRow, active))
                       : NULL;
  if (file->vehicles == NULL)
    return FALSE;
  if (phones->len > 0)
    file->phone = g_strdup (((const UnsootPhoneRow *) g_ptr_array_index (phones, 0))->number);
  return TRUE;
}

/* The only vehicle there is needs no choosing. */
static void
choose_vehicle (UnsootBookingFile *file)
{
  UnsootBookingPlan *plan = file->plan;

  if (plan->vehicle != NULL)
    {
      plan->vehicle->customer_id = plan->customer_id;
      return;
    }
  if (file->vehicle != NULL || file->vehicles == NULL)
    return;
  if (file->vehicles->len == 1)
    {
      file->vehicle
          = unsoot_record_copy (&unsoot_vehicle_row_type, g_ptr_array_index (file->vehicles, 0));
      plan->vehicle_id = file->vehicle->id;
    }
}

static gboolean
is_sold (const UnsootBookingFile *file, gint64 service_id)
{
  for (guint i = 0; i < file->services->len; i++)
    if (((const UnsootServiceRow *) g_ptr_array_index (file->services, i))->id == service_id)
      return TRUE;
  return FALSE;
}

/* What was done last time; else both sides where there is an EGR to clean. */
static gboolean
choose_service (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  const UnsootVehicleRow *vehicle
      = file->plan->vehicle != NULL ? file->plan->vehicle : file->vehicle;
  g_autoptr (GPtrArray) jobs = NULL;

  if (file->plan->service_id != 0 || vehicle == NULL)
    return TRUE;
  jobs = unsoot_vehicle_jobs (db, vehicle->id, error);
  if (jobs == NULL)
    return FALSE;
  for (guint i = 0; i < jobs->len && file->plan->service_id == 0; i++)
    {
      const UnsootJobRow *job = g_ptr_array_index (jobs, i);
      if (is_sold (file, job->service_id))
        file->plan->service_id = job->service_id;
    }
  for (guint i = 0; i < file->services->len && file->plan->service_id == 0; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (file->services, i);
      if (g_strcmp0 (service->sides, vehicle->has_egr ? "both" : "fuel") == 0)
        file->plan->service_id = service->id;
    }
  return TRUE;
}

static void
load_quote (UnsootDb *db, UnsootBookingFile *file, gint64 now)
{
  g_autoptr (GError) error = NULL;
  UnsootQuoteWish wish;

  if ((file->vehicle == NULL && file->plan->vehicle == NULL) || file->plan->service_id == 0)
    return;
  unsoot_booking_plan_wish (file->plan, &wish);
  if (file->job != NULL)
    {
      wish.fuel_ml = file->job->fuel_dose_ml;
      wish.intake_ml = file->job->intake_dose_ml;
    }
  if (file->plan->vehicle != NULL && file->plan->customer == NULL && file->customer == NULL)
    {
      /* Whose it will be is not said yet; the price is asked all the same. */
      UnsootCustomerRow nobody = { .kind = (char *) "person", .active = TRUE };
      wish.customer = &nobody;
      file->quote = unsoot_quote_preview (db, &wish, now, &error);
    }
  else
    file->quote = unsoot_quote_preview (db, &wish, now, &error);
  if (file->quote == NULL)
    file->quote_trouble = g_strdup (error->message);
}

/* What is charged: the job's own lines once it is quoted. */
static gboolean
load_lines (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  if (file->job == NULL)
    return TRUE;
  file->lines = unsoot_job_lines_standing (db, file->job->id, TRUE, error);
  file->bill = file->lines != NULL ? unsoot_job_bill (db, file->job->id, TRUE, error) : NULL;
  return file->bill != NULL;
}

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

static void
load_times (UnsootDb *db, UnsootBookingFile *file, gint64 now)
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
  file->time = unsoot_free_time_at (db, &ask, starts_at, now, file->why, &error);
  if (file->time == NULL)
    file->days_trouble = g_strdup (error->message);
}

UnsootBookingFile *
unsoot_booking_file_load (UnsootDb *db, const UnsootBookingPlan *plan, gint64 now, GError **error)
{
  g_autoptr (UnsootBookingFile) file = g_new0 (UnsootBookingFile, 1);

  file->plan = unsoot_booking_plan_copy (plan);
  if (!load_choices (db, file, error) || !load_job (db, file, error)
      || !load_whom (db, file, error))
    return NULL;
  choose_vehicle (file);
  if (!choose_service (db, file, error) || !load_lines (db, file, error))
    return NULL;
  load_quote (db, file, now);
  load_times (db, file, now);
  return g_steal_pointer (&file);
}
