/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "call-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField call_columns[] = {
  UNSOOT_COLUMN (UnsootCallRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, about, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, record, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, customer_id, INT64, REF),
  UNSOOT_COLUMN (UnsootCallRow, spoke_with, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, said, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, again_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootCallRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootCallRow, reverses_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootCallRow, unsoot_call_row, "calls", N_ ("call"), TRUE, call_columns)
