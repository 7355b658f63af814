/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField vehicle_columns[] = {
  UNSOOT_COLUMN (UnsootVehicleRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootVehicleRow, family_id, INT64, REF),
  UNSOOT_COLUMN (UnsootVehicleRow, vin, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, plate, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, plate_region, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, unit_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, year, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootVehicleRow, make, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, model, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, engine, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, engine_serial, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, gvwr_lb, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootVehicleRow, has_egr, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, has_dpf, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, emission_altered, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, emission_note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootVehicleRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootVehicleRow, unsoot_vehicle_row, "vehicles", N_ ("vehicle"), FALSE,
                      vehicle_columns)

static const UnsootField meter_reading_columns[] = {
  UNSOOT_COLUMN (UnsootMeterReadingRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, vehicle_id, INT64, REF),
  UNSOOT_COLUMN (UnsootMeterReadingRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootMeterReadingRow, taken_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, typed, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, unit, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMeterReadingRow, metres, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootMeterReadingRow, seconds, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootMeterReadingRow, new_meter, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootMeterReadingRow, unsoot_meter_reading_row, "meter_readings",
                      N_ ("meter reading"), FALSE, meter_reading_columns)
