/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-file.h"

#include "calls.h"

void
unsoot_customer_file_free (UnsootCustomerFile *file)
{
  g_clear_pointer (&file->customer, unsoot_customer_row_free);
  g_clear_pointer (&file->phones, g_ptr_array_unref);
  g_clear_pointer (&file->addresses, g_ptr_array_unref);
  g_clear_pointer (&file->vehicles, g_ptr_array_unref);
  g_clear_pointer (&file->jobs, g_ptr_array_unref);
  g_clear_pointer (&file->invoices, g_ptr_array_unref);
  g_clear_pointer (&file->calls, g_ptr_array_unref);
  g_free (file);
}

UnsootCustomerFile *
unsoot_customer_file_load (UnsootDb *db, gint64 id, const char *today, GError **error)
{
  g_autoptr (UnsootCustomerFile) file = g_new0 (UnsootCustomerFile, 1);
  const UnsootListPage up = { .limit = UNSOOT_CUSTOMER_FILE_LIMIT, .order = UNSOOT_LIST_UP };
  const UnsootListPage down = { .limit = UNSOOT_CUSTOMER_FILE_LIMIT, .order = UNSOOT_LIST_DOWN };

  if ((file->customer = unsoot_customer_load (db, id, error)) == NULL
      || (file->phones = unsoot_customer_phones (db, id, error)) == NULL
      || (file->addresses = unsoot_customer_addresses (db, id, error)) == NULL
      || (file->vehicles = unsoot_vehicle_page (db, &up, id, error)) == NULL
      || (file->jobs = unsoot_job_page (db, &down, NULL, id, 0, error)) == NULL
      || (file->invoices = unsoot_invoice_page (db, &up, UNSOOT_INVOICES_OPEN, NULL, id, error))
             == NULL
      || (file->calls = unsoot_calls_of_customer (db, id, UNSOOT_CUSTOMER_FILE_LIMIT, error))
             == NULL
      || !unsoot_customer_owes (db, id, today, &file->owes, error))
    return NULL;
  return g_steal_pointer (&file);
}
