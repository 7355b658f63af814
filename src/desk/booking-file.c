/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-file.h"

#include "booking-free.h"
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
  JOBS_SHOWN = 3 /* of what was done before */
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
  g_clear_pointer (&file->past, g_ptr_array_unref);
  g_free (file->next_due_on);
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
  g_free (file->overrun);
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

/* What the job comes to may need a new word before it is booked. */
static gboolean
load_authority (UnsootDb *db, UnsootBookingFile *file, gboolean *asks, GError **error)
{
  g_auto (UnsootAuthorityResult) result = { 0 };

  if (!unsoot_job_authorised_minor (db, file->job->id, &file->authorised_minor, error)
      || !unsoot_job_authority (db, file->job->id, file->bill->with_tax, &result, error))
    return FALSE;
  *asks = result.verdict == UNSOOT_AUTHORITY_NONE || result.verdict == UNSOOT_AUTHORITY_ASK;
  if (result.verdict == UNSOOT_AUTHORITY_WITHIN || result.verdict == UNSOOT_AUTHORITY_ASK)
    file->overrun = g_strdup (result.sentence);
  return TRUE;
}

/* What is charged: the job's own lines. */
static gboolean
load_lines (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  file->lines = unsoot_job_lines_standing (db, file->job->id, TRUE, error);
  file->bill = file->lines != NULL ? unsoot_job_bill (db, file->job->id, TRUE, error) : NULL;
  return file->bill != NULL;
}

static gboolean
load_job (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  g_autoptr (GError) failed = NULL;
  gboolean asks = FALSE;

  if (file->plan->job_id == 0)
    return TRUE;
  file->job = unsoot_job_load (db, file->plan->job_id, error);
  if (file->job == NULL || !load_lines (db, file, error)
      || !load_authority (db, file, &asks, error))
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
  file->stage = file->booking != NULL ? UNSOOT_BOOKING_BOOKED
                : asks                ? UNSOOT_BOOKING_QUOTED
                                      : UNSOOT_BOOKING_AUTHORISED;
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

/* What was done on it, and when it is due. */
static gboolean
load_past (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  const UnsootListPage page = { .limit = JOBS_SHOWN + 1, .order = UNSOOT_LIST_DOWN };
  g_autoptr (GPtrArray) jobs = NULL;

  if (file->vehicle == NULL || file->plan->vehicle != NULL)
    return TRUE;
  file->past = unsoot_job_page (db, &page, NULL, 0, file->vehicle->id, error);
  jobs = file->past != NULL ? unsoot_vehicle_jobs (db, file->vehicle->id, error) : NULL;
  if (jobs == NULL)
    return FALSE;
  for (guint i = file->past->len; i-- > 0;)
    if (((const UnsootJobLine *) g_ptr_array_index (file->past, i))->id == file->plan->job_id)
      g_ptr_array_remove_index (file->past, i);
  g_ptr_array_set_size (file->past, (int) MIN (file->past->len, JOBS_SHOWN));
  for (guint i = 0; i < jobs->len && file->next_due_on == NULL; i++)
    file->next_due_on
        = g_strdup (((const UnsootJobRow *) g_ptr_array_index (jobs, i))->next_due_on);
  return TRUE;
}

/* A draft may name lines that were done, or declined once more, since it was kept. */
static gboolean
still_open (UnsootDb *db, UnsootBookingFile *file, GError **error)
{
  GArray *again = file->plan->again;
  g_autoptr (GPtrArray) open = NULL;

  if (again->len == 0)
    return TRUE;
  open = unsoot_vehicle_declined (db, file->plan->vehicle_id, error);
  for (guint i = again->len; open != NULL && i-- > 0;)
    {
      guint k = 0;
      while (k < open->len
             && ((const UnsootJobLineRow *) g_ptr_array_index (open, k))->id
                    != g_array_index (again, gint64, i))
        k++;
      if (k == open->len)
        g_array_remove_index (again, i);
    }
  return open != NULL;
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
load_quote (UnsootDb *db, UnsootBookingFile *file, gint64 wanted_at, gint64 now)
{
  g_autoptr (GError) error = NULL;
  UnsootQuoteWish wish;

  g_clear_pointer (&file->quote, unsoot_quote_free);
  if ((file->vehicle == NULL && file->plan->vehicle == NULL) || file->plan->service_id == 0)
    return;
  unsoot_booking_plan_wish (file->plan, &wish);
  wish.wanted_at = wanted_at;
  if (file->job != NULL)
    {
      wish.job_id = file->job->id;
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

UnsootBookingFile *
unsoot_booking_file_load (UnsootDb *db, const UnsootBookingPlan *plan, gint64 now, GError **error)
{
  g_autoptr (UnsootBookingFile) file = g_new0 (UnsootBookingFile, 1);

  file->plan = unsoot_booking_plan_copy (plan);
  if (!load_choices (db, file, error) || !load_job (db, file, error)
      || !load_whom (db, file, error))
    return NULL;
  choose_vehicle (file);
  if (!choose_service (db, file, error) || !load_past (db, file, error)
      || !still_open (db, file, error))
    return NULL;
  load_quote (db, file, file->plan->starts_at, now);
  unsoot_booking_free_load (db, file, now);
  /* What is in stock and in its bin is said of the time that is offered. */
  if (file->time != NULL && file->time->starts_at != file->plan->starts_at)
    load_quote (db, file, file->time->starts_at, now);
  return g_steal_pointer (&file);
}
