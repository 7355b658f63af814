/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "staff-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField staff_columns[] = {
  UNSOOT_COLUMN (UnsootStaffRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, initials, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, role, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, pin_hash, TEXT, SECRET),
  UNSOOT_COLUMN (UnsootStaffRow, phone, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStaffRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootStaffRow, unsoot_staff_row, "staff", N_ ("member of staff"), FALSE,
                      staff_columns)
