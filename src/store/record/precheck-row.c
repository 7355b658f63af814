/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "precheck-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField precheck_columns[] = {
  UNSOOT_COLUMN (UnsootPrecheckRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPrecheckRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, answer, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, overridden, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPrecheckRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootPrecheckRow, unsoot_precheck_row, "prechecks", N_ ("check"), TRUE,
                      precheck_columns)
