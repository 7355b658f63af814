/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField customer_columns[] = {
  UNSOOT_COLUMN (UnsootCustomerRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, contact, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, email, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, tax_exempt, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, tax_exempt_reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, tax_exempt_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, terms_days, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, po_required, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, po_limit_minor, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootCustomerRow, reminders_ok, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCustomerRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootCustomerRow, unsoot_customer_row, "customers", N_ ("customer"), FALSE,
                      customer_columns)

static const UnsootField phone_columns[] = {
  UNSOOT_COLUMN (UnsootPhoneRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhoneRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhoneRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPhoneRow, label, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPhoneRow, number, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootPhoneRow, unsoot_phone_row, "customer_phones", N_ ("phone number"),
                      FALSE, phone_columns)

static const UnsootField address_columns[] = {
  UNSOOT_COLUMN (UnsootAddressRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootAddressRow, label, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, street, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, town, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, region, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootAddressRow, postcode, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootAddressRow, unsoot_address_row, "customer_addresses", N_ ("address"),
                      FALSE, address_columns)
