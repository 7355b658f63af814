/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Where work is done. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  gint64 position;
  gboolean active;
} UnsootBayRow;
UNSOOT_DECLARE_RECORD (UnsootBayRow, unsoot_bay_row)

/* One bay, machine and technician for one time. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 job_id;        /* of jobs */
  gint64 bay_id;        /* of bays */
  gint64 machine_id;    /* of machines */
  gint64 technician_id; /* of staff */
  gint64 starts_at;     /* Unix seconds */
  gint64 ends_at;       /* Unix seconds */
  char *state;          /* planned, kept or dropped */
} UnsootBookingRow;
UNSOOT_DECLARE_RECORD (UnsootBookingRow, unsoot_booking_row)

/* The adapters a booking holds. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 booking_id; /* of bookings */
  gint64 item_id;    /* of adapter items */
} UnsootBookingAdapterRow;
UNSOOT_DECLARE_RECORD (UnsootBookingAdapterRow, unsoot_booking_adapter_row)

G_END_DECLS
