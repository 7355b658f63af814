/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField run_columns[] = {
  UNSOOT_COLUMN (UnsootRunRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, procedure_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, machine_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, technician_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, began_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, ended_at, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootRunRow, outcome, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, signature, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, tag, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, fuel_lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, intake_lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunRow, start_tanks, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunRow, basis, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootRunRow, unsoot_run_row, "runs", N_ ("run"), FALSE, run_columns)

static const UnsootField run_event_columns[] = {
  UNSOOT_COLUMN (UnsootRunEventRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, run_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunEventRow, seq, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, done_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, step, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, happening, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, value, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootRunEventRow, fluid, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, text, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootRunEventRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootRunEventRow, unsoot_run_event_row, "run_events", N_ ("run event"), TRUE,
                      run_event_columns)
