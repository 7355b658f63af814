/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customers.h"

#include <glib/gi18n-lib.h>

#include "contact.h"
#include "deed.h"
#include "indexing.h"

UnsootCustomerRow *
unsoot_customer_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_customer_row_type, id, error);
}

GPtrArray *
unsoot_customer_phones (UnsootDb *db, gint64 customer_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_phone_row_type, error, "WHERE customer_id = $1 ORDER BY id",
                           unsoot_int (customer_id));
}

GPtrArray *
unsoot_customer_addresses (UnsootDb *db, gint64 customer_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_address_row_type, error,
                           "WHERE customer_id = $1 ORDER BY id", unsoot_int (customer_id));
}

static gboolean
check_customer (const UnsootCustomerRow *customer, GError **error)
{
  if (unsoot_deed_blank (customer->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The customer needs a name: it stands on the bill."));
  if (customer->tax_exempt && unsoot_deed_blank (customer->tax_exempt_reason))
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("%s is not taxed, but no reason is given. The reason is printed on the invoice."),
        customer->name);
  if (customer->terms_days < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("%s can't have less than no days to pay."), customer->name);
  return customer->email == NULL || unsoot_email_check (customer->email, error);
}

static gboolean
check_phones (GPtrArray *phones, GError **error)
{
  for (guint i = 0; phones != NULL && i < phones->len; i++)
    if (!unsoot_phone_check (((UnsootPhoneRow *) phones->pdata[i])->number, error))
      return FALSE;
  return TRUE;
}

static gboolean
keep_reach (UnsootDb *db, const UnsootActing *who, gint64 customer_id, GPtrArray *phones,
            GPtrArray *addresses, GError **error)
{
  g_autoptr (GPtrArray) old_phones = unsoot_customer_phones (db, customer_id, error);
  g_autoptr (GPtrArray) old_addresses = unsoot_customer_addresses (db, customer_id, error);

  return old_phones != NULL && old_addresses != NULL
         && unsoot_deed_keep_all (db, &unsoot_phone_row_type, old_phones, phones,
                                  G_STRUCT_OFFSET (UnsootPhoneRow, customer_id), customer_id, who,
                                  error)
         && unsoot_deed_keep_all (db, &unsoot_address_row_type, old_addresses, addresses,
                                  G_STRUCT_OFFSET (UnsootAddressRow, customer_id), customer_id, who,
                                  error);
}

/* A customer's vehicles, jobs and invoices show the name too. */
static gboolean
index_customer (UnsootDb *db, gint64 id, gboolean renamed, GError **error)
{
  return unsoot_index_customer (db, id, error)
         && (!renamed || unsoot_index_customer_whole (db, id, error));
}

static gboolean
is_renamed (UnsootDb *db, const UnsootCustomerRow *customer, gboolean *renamed, GError **error)
{
  *renamed = FALSE;
  if (customer->id == 0)
    return TRUE;
  g_autoptr (UnsootCustomerRow) before = unsoot_customer_load (db, customer->id, error);
  if (before == NULL)
    return FALSE;
  *renamed = g_strcmp0 (before->name, customer->name) != 0;
  return TRUE;
}

gboolean
unsoot_customer_save (UnsootDb *db, const UnsootActing *who, UnsootCustomerRow *customer,
                      GPtrArray *phones, GPtrArray *addresses, GError **error)
{
  UnsootRecordHead before = { customer->id, customer->version };
  gboolean renamed;

  if (!check_customer (customer, error) || !check_phones (phones, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_CUSTOMER, error);
  if (deed == NULL)
    return FALSE;
  gboolean done = is_renamed (db, customer, &renamed, error)
                  && unsoot_deed_keep (db, &unsoot_customer_row_type, customer, who, error)
                  && keep_reach (db, who, customer->id, phones, addresses, error)
                  && index_customer (db, customer->id, renamed, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  customer->id = before.id;
  customer->version = before.version;
  return FALSE;
}

static void
add_line (GString *text, const char *line)
{
  if (!unsoot_deed_blank (line))
    g_string_append_printf (text, "%s%s", text->len > 0 ? "\n" : "", line);
}

char *
unsoot_customer_bill_to (UnsootDb *db, const UnsootCustomerRow *customer, GError **error)
{
  g_autoptr (GPtrArray) addresses = unsoot_customer_addresses (db, customer->id, error);
  if (addresses == NULL)
    return NULL;

  GString *text = g_string_new (NULL);
  add_line (text, customer->name);
  add_line (text, customer->contact);
  if (addresses->len > 0)
    {
      const UnsootAddressRow *address = addresses->pdata[0];
      g_autoptr (GString) place = g_string_new (address->town);
      if (!unsoot_deed_blank (address->region))
        g_string_append_printf (place, "%s%s", place->len > 0 ? ", " : "", address->region);
      if (!unsoot_deed_blank (address->postcode))
        g_string_append_printf (place, "%s%s", place->len > 0 ? " " : "", address->postcode);
      add_line (text, address->street);
      add_line (text, place->str);
    }
  return g_string_free (text, FALSE);
}
