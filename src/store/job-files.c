/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-files.h"

#include "bookings.h"
#include "customers.h"
#include "deed.h"
#include "families.h"
#include "fluids.h"
#include "invoices.h"
#include "job-readings.h"
#include "jobs.h"
#include "lots.h"
#include "machines.h"
#include "meters.h"
#include "photos.h"
#include "procedures.h"
#include "runs.h"
#include "services.h"
#include "shops.h"
#include "staff.h"
#include "vehicles.h"

/* Puts what was read in the place of the file's empty array. */
static gboolean
take (GPtrArray **place, GPtrArray *rows)
{
  if (rows == NULL)
    return FALSE;
  g_ptr_array_unref (*place);
  *place = rows;
  return TRUE;
}

#define OF_JOB(type, order)                                                                        \
  unsoot_rows_list (db, &unsoot_##type##_type, error, "WHERE job_id = $1 ORDER BY " order,         \
                    unsoot_int (file->job->id))

static gboolean
load_people (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  gint64 customer = file->job->customer_id;
  gint64 vehicle = file->job->vehicle_id;

  return (file->shop = unsoot_shop_load (db, error)) != NULL
         && (file->customer = unsoot_customer_load (db, customer, error)) != NULL
         && take (&file->phones, unsoot_customer_phones (db, customer, error))
         && take (&file->addresses, unsoot_customer_addresses (db, customer, error))
         && (file->vehicle = unsoot_vehicle_load (db, vehicle, error)) != NULL
         && take (&file->meters, unsoot_vehicle_meters (db, vehicle, error))
         && (file->service = unsoot_service_load (db, file->job->service_id, error)) != NULL
         && take (&file->tax_rules, unsoot_tax_rule_list (db, error));
}

static gboolean
load_postings (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  return take (&file->lines, OF_JOB (job_line_row, "position, id"))
         && take (&file->status, OF_JOB (job_status_row, "id"))
         && take (&file->estimates, OF_JOB (estimate_row, "number"))
         && take (&file->authorisations, OF_JOB (authorisation_row, "id"))
         && take (&file->stock_moves, OF_JOB (stock_move_row, "id"))
         && take (&file->readings, unsoot_job_readings (db, file->job->id, error))
         && take (&file->photos, unsoot_job_photos (db, file->job->id, error))
         && take (&file->invoices, unsoot_job_invoices (db, file->job->id, error));
}

/* @id of 0 is none: nothing is read, and that is no failure. */
static gboolean
load_maybe (UnsootDb *db, const UnsootRecordType *type, gint64 id, gpointer place, GError **error)
{
  gpointer *row = place;

  if (id == 0)
    return TRUE;
  *row = unsoot_rows_get (db, type, id, error);
  return *row != NULL;
}

static gboolean
add_adapter (UnsootDb *db, UnsootJobFile *file, gint64 item_id, GError **error)
{
  UnsootJobAdapter *adapter = g_new0 (UnsootJobAdapter, 1);

  g_ptr_array_add (file->adapters, adapter);
  return load_maybe (db, &unsoot_adapter_item_row_type, item_id, &adapter->item, error)
         && load_maybe (db, &unsoot_adapter_type_row_type, adapter->item->type_id, &adapter->type,
                        error);
}

static gboolean
load_adapters (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  g_autoptr (GPtrArray) rows
      = unsoot_rows_list (db, &unsoot_booking_adapter_row_type, error,
                          "WHERE booking_id = $1 ORDER BY id", unsoot_int (file->booking->id));

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    if (!add_adapter (db, file, ((UnsootBookingAdapterRow *) rows->pdata[i])->item_id, error))
      return FALSE;
  return rows != NULL;
}

static gboolean
load_booking (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  g_autoptr (GError) failed = NULL;

  file->booking = unsoot_job_booking (db, file->job->id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (file->booking == NULL)
    return TRUE;
  return load_maybe (db, &unsoot_bay_row_type, file->booking->bay_id, &file->bay, error)
         && load_maybe (db, &unsoot_machine_row_type, file->booking->machine_id, &file->machine,
                        error)
         && load_maybe (db, &unsoot_staff_row_type, file->booking->technician_id, &file->technician,
                        error)
         && load_adapters (db, file, error);
}

static gboolean
load_run (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  g_autoptr (GError) failed = NULL;

  file->run = unsoot_job_run_of (db, file->job->id, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (file->run == NULL)
    return TRUE;
  /* What was done counts more than what was booked. */
  if (file->machine == NULL || file->machine->id != file->run->machine_id)
    {
      g_clear_pointer (&file->machine, unsoot_machine_row_free);
      if (!load_maybe (db, &unsoot_machine_row_type, file->run->machine_id, &file->machine, error))
        return FALSE;
    }
  return take (&file->run_events, unsoot_job_run_events (db, file->run->id, error))
         && load_maybe (db, &unsoot_lot_row_type, file->run->fuel_lot_id, &file->fuel_lot, error)
         && load_maybe (db, &unsoot_lot_row_type, file->run->intake_lot_id, &file->intake_lot,
                        error);
}

/* The version it was run by, else the one in use. */
static gboolean
load_procedure (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (!load_maybe (db, &unsoot_family_row_type, file->job->family_id, &file->family, error)
      || !load_maybe (db, &unsoot_procedure_row_type, file->job->procedure_id, &file->procedure,
                      error))
    return FALSE;
  if (file->family == NULL)
    return TRUE;
  if (file->procedure == NULL)
    file->procedure = unsoot_procedure_in_use (db, file->family->id, file->service->sides, &failed);
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  return take (&file->kit, unsoot_family_kit (db, file->family->id, error))
         && (file->procedure == NULL
             || (take (&file->phases, unsoot_procedure_phases (db, file->procedure->id, error))
                 && take (&file->steps, unsoot_procedure_steps (db, file->procedure->id, error))));
}

/* The fluid of the lot used, else the one the job's line means. */
static gboolean
load_fluid (UnsootDb *db, UnsootJobFile *file, const char *side, const UnsootLotRow *lot,
            UnsootFluidRow **fluid, GError **error)
{
  if (lot != NULL)
    return load_maybe (db, &unsoot_fluid_row_type, lot->fluid_id, fluid, error);
  for (guint i = 0; i < file->lines->len && *fluid == NULL; i++)
    {
      const UnsootJobLineRow *line = file->lines->pdata[i];
      if (!load_maybe (db, &unsoot_fluid_row_type, line->fluid_id, fluid, error))
        return FALSE;
      if (*fluid != NULL && g_strcmp0 ((*fluid)->side, side) != 0)
        g_clear_pointer (fluid, unsoot_fluid_row_free);
    }
  return TRUE;
}

static gboolean
load_all (UnsootDb *db, UnsootJobFile *file, GError **error)
{
  return load_people (db, file, error) && load_postings (db, file, error)
         && load_booking (db, file, error) && load_run (db, file, error)
         && load_procedure (db, file, error)
         && load_fluid (db, file, "fuel", file->fuel_lot, &file->fuel_fluid, error)
         && load_fluid (db, file, "intake", file->intake_lot, &file->intake_fluid, error);
}

UnsootJobFile *
unsoot_job_file_load (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobFile) file = unsoot_job_file_new ();

  file->job = unsoot_job_load (db, job_id, error);
  if (file->job == NULL || !load_all (db, file, error))
    return NULL;
  file->utc_offset_minutes
      = unsoot_shop_utc_offset (file->shop, g_get_real_time () / G_USEC_PER_SEC);
  return g_steal_pointer (&file);
}
