/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "change-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField change_columns[] = {
  UNSOOT_COLUMN (UnsootChangeRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootChangeRow, record, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, row_id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, field, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, was, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootChangeRow, now, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootChangeRow, unsoot_change_row, "changes", N_ ("change"), TRUE,
                      change_columns)
