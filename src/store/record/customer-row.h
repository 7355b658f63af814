/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Who pays. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *kind; /* person, business or fleet */
  char *name;
  char *contact; /* whom to ask for */
  char *email;
  gboolean tax_exempt;
  char *tax_exempt_reason;
  char *tax_exempt_number;
  gint64 terms_days;     /* days to pay; 0 is at once */
  gboolean po_required;  /* work needs a purchase-order number */
  gint64 po_limit_minor; /* the most one order covers; NULL: no limit */
  gboolean reminders_ok; /* consented to reminders */
  char *note;
  gboolean active;
} UnsootCustomerRow;
UNSOOT_DECLARE_RECORD (UnsootCustomerRow, unsoot_customer_row)

/* How a customer is reached. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 customer_id; /* of customers */
  char *label;
  char *number; /* as typed */
} UnsootPhoneRow;
UNSOOT_DECLARE_RECORD (UnsootPhoneRow, unsoot_phone_row)

/* Where a customer gets letters, and the yards where units stand. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 customer_id; /* of customers */
  char *label;        /* billing, or a yard's name */
  char *street;
  char *town;
  char *region;
  char *postcode;
} UnsootAddressRow;
UNSOOT_DECLARE_RECORD (UnsootAddressRow, unsoot_address_row)

G_END_DECLS
