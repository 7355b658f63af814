/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField bay_columns[] = {
  UNSOOT_COLUMN (UnsootBayRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBayRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBayRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootBayRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBayRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootBayRow, unsoot_bay_row, "bays", N_ ("bay"), FALSE, bay_columns)

static const UnsootField booking_columns[] = {
  UNSOOT_COLUMN (UnsootBookingRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootBookingRow, bay_id, INT64, REF),
  UNSOOT_COLUMN (UnsootBookingRow, machine_id, INT64, REF),
  UNSOOT_COLUMN (UnsootBookingRow, technician_id, INT64, REF),
  UNSOOT_COLUMN (UnsootBookingRow, starts_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingRow, ends_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingRow, state, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootBookingRow, unsoot_booking_row, "bookings", N_ ("booking"), FALSE,
                      booking_columns)

static const UnsootField booking_adapter_columns[] = {
  UNSOOT_COLUMN (UnsootBookingAdapterRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingAdapterRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootBookingAdapterRow, booking_id, INT64, REF),
  UNSOOT_COLUMN (UnsootBookingAdapterRow, item_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootBookingAdapterRow, unsoot_booking_adapter_row, "booking_adapters",
                      N_ ("booked adapter"), FALSE, booking_adapter_columns)
