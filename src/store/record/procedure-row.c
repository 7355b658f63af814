/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedure-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField procedure_columns[] = {
  UNSOOT_COLUMN (UnsootProcedureRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, family_id, INT64, REF),
  UNSOOT_COLUMN (UnsootProcedureRow, sides, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, title, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, number, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, state, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, made_at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootProcedureRow, made_by, INT64, REF),
  UNSOOT_COLUMN (UnsootProcedureRow, stop_reason, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootProcedureRow, unsoot_procedure_row, "procedures", N_ ("procedure"),
                      FALSE, procedure_columns)

static const UnsootField phase_columns[] = {
  UNSOOT_COLUMN (UnsootPhaseRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhaseRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhaseRow, procedure_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPhaseRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhaseRow, title, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPhaseRow, cautions, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootPhaseRow, unsoot_phase_row, "procedure_phases", N_ ("phase"), FALSE,
                      phase_columns)

static const UnsootField step_columns[] = {
  UNSOOT_COLUMN (UnsootStepRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, procedure_id, INT64, REF),
  UNSOOT_COLUMN (UnsootStepRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, phase, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, act, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, subject, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, place, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, side, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, fluid, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, value, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, unit, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, share, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, minutes, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, low_level, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, until_clear, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, new_gasket, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, closes, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, wording, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStepRow, why, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootStepRow, unsoot_step_row, "procedure_steps", N_ ("step"), FALSE,
                      step_columns)
