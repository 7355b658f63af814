/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* UnsootMeterReadingRow, oldest first. */
GPtrArray *unsoot_vehicle_meters (UnsootDb *db, gint64 vehicle_id, GError **error);

/**
 * unsoot_vehicle_meter_add:
 * @vehicle_id, @job_id: the job may be 0
 * @kind: odometer or hours
 * @typed, @unit: as read: mi, km or h
 * @taken_on: ISO date, %NULL is the shop's today
 * @new_meter: the first reading of a new meter, which goes on from the last of the old one
 *
 * Errors: INVALID for a reading that is lower than the last of the same meter (a new meter
 * must be said), a unit that is not of that kind, or a date before the last reading's.
 *
 * Returns: the new reading's id, 0 on error.
 */
gint64 unsoot_vehicle_meter_add (UnsootDb *db, const UnsootActing *who, gint64 vehicle_id,
                                 gint64 job_id, const char *kind, double typed, const char *unit,
                                 const char *taken_on, gboolean new_meter, GError **error);

G_END_DECLS
