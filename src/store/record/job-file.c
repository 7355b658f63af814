/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-file.h"

void
unsoot_job_adapter_free (UnsootJobAdapter *adapter)
{
  if (adapter == NULL)
    return;
  unsoot_adapter_item_row_free (adapter->item);
  unsoot_adapter_type_row_free (adapter->type);
  g_free (adapter);
}

void
unsoot_invoice_file_free (UnsootInvoiceFile *file)
{
  if (file == NULL)
    return;
  unsoot_invoice_row_free (file->invoice);
  g_clear_pointer (&file->lines, g_ptr_array_unref);
  g_clear_pointer (&file->taxes, g_ptr_array_unref);
  g_clear_pointer (&file->payments, g_ptr_array_unref);
  g_free (file);
}

#define ROWS_OF(type) g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_##type##_free)

UnsootJobFile *
unsoot_job_file_new (void)
{
  UnsootJobFile *file = g_new0 (UnsootJobFile, 1);

  file->phones = ROWS_OF (phone_row);
  file->addresses = ROWS_OF (address_row);
  file->meters = ROWS_OF (meter_reading_row);
  file->kit = ROWS_OF (kit_item_row);
  file->lines = ROWS_OF (job_line_row);
  file->status = ROWS_OF (job_status_row);
  file->estimates = ROWS_OF (estimate_row);
  file->authorisations = ROWS_OF (authorisation_row);
  file->adapters = ROWS_OF (job_adapter);
  file->phases = ROWS_OF (phase_row);
  file->steps = ROWS_OF (step_row);
  file->run_events = ROWS_OF (run_event_row);
  file->stock_moves = ROWS_OF (stock_move_row);
  file->readings = ROWS_OF (reading_row);
  file->photos = ROWS_OF (photo_row);
  file->invoices = ROWS_OF (invoice_file);
  file->tax_rules = ROWS_OF (tax_rule_row);
  return file;
}

void
unsoot_job_file_free (UnsootJobFile *file)
{
  if (file == NULL)
    return;
  GPtrArray **arrays[] = {
    &file->phones,      &file->addresses,      &file->meters,     &file->kit,      &file->lines,
    &file->status,      &file->estimates,      &file->adapters,   &file->phases,   &file->steps,
    &file->readings,    &file->photos,         &file->run_events, &file->invoices, &file->tax_rules,
    &file->stock_moves, &file->authorisations,
  };
  for (gsize i = 0; i < G_N_ELEMENTS (arrays); i++)
    g_clear_pointer (arrays[i], g_ptr_array_unref);

  unsoot_shop_row_free (file->shop);
  unsoot_job_row_free (file->job);
  unsoot_customer_row_free (file->customer);
  unsoot_vehicle_row_free (file->vehicle);
  unsoot_family_row_free (file->family);
  unsoot_service_row_free (file->service);
  unsoot_booking_row_free (file->booking);
  unsoot_bay_row_free (file->bay);
  unsoot_machine_row_free (file->machine);
  unsoot_staff_row_free (file->technician);
  unsoot_procedure_row_free (file->procedure);
  unsoot_run_row_free (file->run);
  unsoot_fluid_row_free (file->fuel_fluid);
  unsoot_fluid_row_free (file->intake_fluid);
  unsoot_lot_row_free (file->fuel_lot);
  unsoot_lot_row_free (file->intake_lot);
  g_free (file);
}
