/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField machine_columns[] = {
  UNSOOT_COLUMN (UnsootMachineRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootMachineRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootMachineRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMachineRow, serial, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMachineRow, hoses_due_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootMachineRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootMachineRow, unsoot_machine_row, "machines", N_ ("machine"), FALSE,
                      machine_columns)

static const UnsootField tank_columns[] = {
  UNSOOT_COLUMN (UnsootTankRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankRow, machine_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankRow, side, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTankRow, capacity_ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankRow, low_ml, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootTankRow, unsoot_tank_row, "tanks", N_ ("tank"), FALSE, tank_columns)

static const UnsootField tank_event_columns[] = {
  UNSOOT_COLUMN (UnsootTankEventRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, tank_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, contents, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, fluid_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, label, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootTankEventRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, reverses_id, INT64, REF),
  UNSOOT_COLUMN (UnsootTankEventRow, reason, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootTankEventRow, unsoot_tank_event_row, "tank_events", N_ ("tank event"),
                      TRUE, tank_event_columns)

static const UnsootField gauge_check_columns[] = {
  UNSOOT_COLUMN (UnsootGaugeCheckRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, machine_id, INT64, REF),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, gauge, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, reads_pa, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, reference_pa, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, passed, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, next_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootGaugeCheckRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootGaugeCheckRow, unsoot_gauge_check_row, "gauge_checks",
                      N_ ("gauge check"), TRUE, gauge_check_columns)
