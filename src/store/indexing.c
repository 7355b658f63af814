/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "indexing.h"

#include <glib/gi18n-lib.h>

#include "adapter-row.h"
#include "customers.h"
#include "fluid-row.h"
#include "find.h"
#include "invoice-row.h"
#include "job-row.h"
#include "lot-row.h"
#include "money.h"
#include "rows.h"
#include "shops.h"
#include "vehicles.h"

/* The parts that are there, joined as the second line of a result. */
static char *
joined (const char *const *parts, gsize n)
{
  GString *text = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    if (parts[i] != NULL && *parts[i] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? " · " : "", parts[i]);
  return g_string_free (text, FALSE);
}

/* The codes that are there, NULL-terminated. */
static GPtrArray *
codes_of (const char *const *codes, gsize n)
{
  GPtrArray *there = g_ptr_array_new ();

  for (gsize i = 0; i < n; i++)
    if (codes[i] != NULL && *codes[i] != '\0')
      g_ptr_array_add (there, (gpointer) codes[i]);
  g_ptr_array_add (there, NULL);
  return there;
}

#define JOINED(...)                                                                                \
  joined ((const char *[]){ __VA_ARGS__ },                                                         \
          sizeof ((const char *[]){ __VA_ARGS__ }) / sizeof (char *))
#define CODES(...)                                                                                 \
  codes_of ((const char *[]){ __VA_ARGS__ },                                                       \
            sizeof ((const char *[]){ __VA_ARGS__ }) / sizeof (char *))

static gboolean
put (UnsootDb *db, UnsootFoundKind kind, gint64 id, const char *title, const char *detail,
     const char *words, GPtrArray *codes, GError **error)
{
  return unsoot_find_put (db, kind, id, title, detail, words, (const char *const *) codes->pdata,
                          error);
}

gboolean
unsoot_index_customer (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (db, id, error);
  g_autoptr (GPtrArray) phones = unsoot_customer_phones (db, id, error);
  g_autoptr (GPtrArray) addresses = unsoot_customer_addresses (db, id, error);
  if (customer == NULL || phones == NULL || addresses == NULL)
    return FALSE;

  g_autoptr (GPtrArray) codes = g_ptr_array_new ();
  for (guint i = 0; i < phones->len; i++)
    g_ptr_array_add (codes, ((UnsootPhoneRow *) phones->pdata[i])->number);
  g_ptr_array_add (codes, NULL);
  const UnsootAddressRow *address = addresses->len > 0 ? addresses->pdata[0] : NULL;
  const UnsootPhoneRow *phone = phones->len > 0 ? phones->pdata[0] : NULL;
  g_autofree char *detail = JOINED (customer->contact, address != NULL ? address->town : NULL,
                                    phone != NULL ? phone->number : NULL);
  return put (db, UNSOOT_FOUND_CUSTOMER, id, customer->name, detail, customer->email, codes, error);
}

gboolean
unsoot_index_vehicle (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, id, error);
  g_autoptr (UnsootCustomerRow) customer
      = vehicle != NULL ? unsoot_customer_load (db, vehicle->customer_id, error) : NULL;
  if (customer == NULL)
    return FALSE;

  g_autofree char *title = unsoot_vehicle_title (vehicle);
  g_autofree char *detail = JOINED (customer->name, vehicle->vin);
  g_autoptr (GPtrArray) codes
      = CODES (vehicle->vin, vehicle->plate, vehicle->unit_number, vehicle->engine_serial);
  return put (db, UNSOOT_FOUND_VEHICLE, id, title, detail, NULL, codes, error);
}

/* "Brindle T4 5.1 · unit 12" and whose it is, for a job's papers. */
static gboolean
names_of_job (UnsootDb *db, const UnsootJobRow *job, char **vehicle_title, char **customer_name,
              GError **error)
{
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (db, job->vehicle_id, error);
  g_autoptr (UnsootCustomerRow) customer = unsoot_customer_load (db, job->customer_id, error);
  if (vehicle == NULL || customer == NULL)
    return FALSE;

  *vehicle_title = unsoot_vehicle_title (vehicle);
  *customer_name = g_strdup (customer->name);
  return TRUE;
}

gboolean
unsoot_index_job (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_rows_get (db, &unsoot_job_row_type, id, error);
  g_autofree char *vehicle = NULL;
  g_autofree char *customer = NULL;
  if (job == NULL || !names_of_job (db, job, &vehicle, &customer, error))
    return FALSE;

  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, job->number);
  g_autofree char *title = g_strdup_printf (_ ("Job %s"), number);
  g_autofree char *detail = JOINED (vehicle, customer);
  g_autoptr (GPtrArray) codes = CODES (number, job->po_number);
  return put (db, UNSOOT_FOUND_JOB, id, title, detail, NULL, codes, error);
}

gboolean
unsoot_index_estimate (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootEstimateRow) estimate
      = unsoot_rows_get (db, &unsoot_estimate_row_type, id, error);
  g_autoptr (UnsootJobRow) job
      = estimate != NULL ? unsoot_rows_get (db, &unsoot_job_row_type, estimate->job_id, error)
                         : NULL;
  g_autofree char *vehicle = NULL;
  g_autofree char *customer = NULL;
  if (job == NULL || !names_of_job (db, job, &vehicle, &customer, error))
    return FALSE;

  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, estimate->number);
  g_autofree char *title = g_strdup_printf (_ ("Estimate %s"), number);
  g_autofree char *detail = JOINED (vehicle, customer);
  g_autoptr (GPtrArray) codes = CODES (number);
  return put (db, UNSOOT_FOUND_ESTIMATE, id, title, detail, NULL, codes, error);
}

gboolean
unsoot_index_invoice (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootInvoiceRow) invoice = unsoot_rows_get (db, &unsoot_invoice_row_type, id, error);
  g_autoptr (UnsootCustomerRow) customer
      = invoice != NULL ? unsoot_customer_load (db, invoice->customer_id, error) : NULL;
  if (customer == NULL)
    return FALSE;

  gboolean credit = g_strcmp0 (invoice->kind, "credit") == 0;
  g_autofree char *number = g_strdup_printf ("%" G_GINT64_FORMAT, invoice->number);
  g_autofree char *title
      = g_strdup_printf (credit ? _ ("Credit note %s") : _ ("Invoice %s"), number);
  g_autofree char *detail = JOINED (customer->name, invoice->vehicle, invoice->issued_on);
  g_autoptr (GPtrArray) codes = CODES (number, invoice->po_number);
  return put (db, UNSOOT_FOUND_INVOICE, id, title, detail, NULL, codes, error);
}

gboolean
unsoot_index_lot (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_rows_get (db, &unsoot_lot_row_type, id, error);
  g_autoptr (UnsootFluidRow) fluid
      = lot != NULL ? unsoot_rows_get (db, &unsoot_fluid_row_type, lot->fluid_id, error) : NULL;
  if (fluid == NULL)
    return FALSE;

  g_autofree char *title = g_strdup_printf (_ ("Lot %s"), lot->code);
  g_autofree char *until
      = lot->expires_on != NULL ? g_strdup_printf (_ ("until %s"), lot->expires_on) : NULL;
  g_autofree char *detail = JOINED (fluid->name, until);
  g_autoptr (GPtrArray) codes = CODES (lot->code);
  return put (db, UNSOOT_FOUND_LOT, id, title, detail, NULL, codes, error);
}

gboolean
unsoot_index_adapter (UnsootDb *db, gint64 item_id, GError **error)
{
  g_autoptr (UnsootAdapterItemRow) item
      = unsoot_rows_get (db, &unsoot_adapter_item_row_type, item_id, error);
  g_autoptr (UnsootAdapterTypeRow) type
      = item != NULL ? unsoot_rows_get (db, &unsoot_adapter_type_row_type, item->type_id, error)
                     : NULL;
  if (type == NULL)
    return FALSE;

  g_autofree char *title = g_strdup_printf (_ ("Adapter %s"), item->label);
  g_autofree char *bin = item->bin != NULL ? g_strdup_printf (_ ("bin %s"), item->bin) : NULL;
  g_autofree char *detail = JOINED (type->name, bin);
  g_autoptr (GPtrArray) codes = CODES (item->label, type->code);
  return put (db, UNSOOT_FOUND_ADAPTER, item_id, title, detail, NULL, codes, error);
}

gboolean
unsoot_index_fluid (UnsootDb *db, gint64 id, GError **error)
{
  g_autoptr (UnsootFluidRow) fluid = unsoot_rows_get (db, &unsoot_fluid_row_type, id, error);
  if (fluid == NULL)
    return FALSE;

  const char *side = g_strcmp0 (fluid->side, "fuel") == 0 ? _ ("fuel side") : _ ("intake side");
  g_autoptr (GPtrArray) codes = CODES (fluid->code, fluid->un_number);
  return put (db, UNSOOT_FOUND_FLUID, id, fluid->name, side, NULL, codes, error);
}

static gboolean
index_all (UnsootDb *db, const char *sql, gint64 customer_id,
           gboolean (*index) (UnsootDb *, gint64, GError **), GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (db, error, sql, unsoot_int (customer_id));
  g_autoptr (GArray) ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      gint64 id = unsoot_query_get_int (query, 0);
      g_array_append_val (ids, id);
    }
  if (step == UNSOOT_STEP_FAILED)
    return FALSE;
  for (guint i = 0; i < ids->len; i++)
    if (!index (db, g_array_index (ids, gint64, i), error))
      return FALSE;
  return TRUE;
}

gboolean
unsoot_index_customer_whole (UnsootDb *db, gint64 customer_id, GError **error)
{
  return index_all (db, "SELECT id FROM vehicles WHERE customer_id = $1 ORDER BY id", customer_id,
                    unsoot_index_vehicle, error)
         && index_all (db, "SELECT id FROM jobs WHERE customer_id = $1 ORDER BY id", customer_id,
                       unsoot_index_job, error)
         && index_all (db,
                       "SELECT e.id FROM estimates e JOIN jobs j ON j.id = e.job_id"
                       " WHERE j.customer_id = $1 ORDER BY e.id",
                       customer_id, unsoot_index_estimate, error)
         && index_all (db, "SELECT id FROM invoices WHERE customer_id = $1 ORDER BY id",
                       customer_id, unsoot_index_invoice, error);
}
