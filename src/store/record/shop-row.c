/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField shop_columns[] = {
  UNSOOT_COLUMN (UnsootShopRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, street, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, town, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, region, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, postcode, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, phone, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, email, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, tax_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, currency, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, paper, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, timezone, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, estimate_over_percent, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, estimate_over_minor, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootShopRow, estimate_valid_days, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, next_due_months, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, next_due_metres, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, next_due_seconds, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, payment_note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootShopRow, soot_note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootShopRow, unsoot_shop_row, "shop", N_ ("shop"), FALSE, shop_columns)

static const UnsootField open_hours_columns[] = {
  UNSOOT_COLUMN (UnsootOpenHoursRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootOpenHoursRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootOpenHoursRow, weekday, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootOpenHoursRow, opens_minute, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootOpenHoursRow, closes_minute, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootOpenHoursRow, unsoot_open_hours_row, "open_hours", N_ ("opening hours"),
                      FALSE, open_hours_columns)

static const UnsootField holiday_columns[] = {
  UNSOOT_COLUMN (UnsootHolidayRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootHolidayRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootHolidayRow, day, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootHolidayRow, name, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootHolidayRow, unsoot_holiday_row, "holidays", N_ ("holiday"), FALSE,
                      holiday_columns)

static const UnsootField supplier_columns[] = {
  UNSOOT_COLUMN (UnsootSupplierRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, phone, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, email, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, lead_days, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootSupplierRow, lead_days_spread, REAL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootSupplierRow, unsoot_supplier_row, "suppliers", N_ ("supplier"), FALSE,
                      supplier_columns)
