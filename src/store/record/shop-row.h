/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* The one shop whose book this is. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name; /* as it stands on paper */
  char *street;
  char *town;
  char *region; /* state or province: limits of estimates follow it */
  char *postcode;
  char *phone;
  char *email;
  char *tax_number;
  char *currency; /* ISO 4217 */
  char *paper;    /* letter or a4 */
  char *timezone; /* IANA name: the clock on paper and planner; NULL: that of this computer */
  double
      estimate_over_percent; /* an overrun beyond this share asks for a new word from the customer; NULL: any overrun asks */
  gint64 estimate_over_minor; /* or beyond this amount; NULL: no such limit */
  gint64 estimate_valid_days;
  gint64 next_due_months;
  gint64 next_due_metres;  /* distance until the next service */
  gint64 next_due_seconds; /* engine hours until the next service, in seconds */
  char *payment_note;      /* how to pay, printed on the invoice */
  char *soot_note;         /* the shop's own line under the report */
} UnsootShopRow;
UNSOOT_DECLARE_RECORD (UnsootShopRow, unsoot_shop_row)

/* When the shop is open. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 weekday;      /* 1 Monday to 7 Sunday */
  gint64 opens_minute; /* minutes from midnight */
  gint64 closes_minute;
} UnsootOpenHoursRow;
UNSOOT_DECLARE_RECORD (UnsootOpenHoursRow, unsoot_open_hours_row)

/* Days on which the shop is shut. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *day; /* ISO date */
  char *name;
} UnsootHolidayRow;
UNSOOT_DECLARE_RECORD (UnsootHolidayRow, unsoot_holiday_row)

/* Who sends fluids. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  char *phone;
  char *email;
  double lead_days;        /* usual days from order to delivery */
  double lead_days_spread; /* standard deviation of the same */
} UnsootSupplierRow;
UNSOOT_DECLARE_RECORD (UnsootSupplierRow, unsoot_supplier_row)

G_END_DECLS
