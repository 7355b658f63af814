/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lot-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField lot_columns[] = {
  UNSOOT_COLUMN (UnsootLotRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootLotRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootLotRow, fluid_id, INT64, REF),
  UNSOOT_COLUMN (UnsootLotRow, code, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLotRow, expires_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLotRow, received_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootLotRow, cost_minor_per_litre, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootLotRow, stop_reason, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootLotRow, unsoot_lot_row, "lots", N_ ("lot"), FALSE, lot_columns)

static const UnsootField container_columns[] = {
  UNSOOT_COLUMN (UnsootContainerRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootContainerRow, label, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, size_ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, opened_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, use_by, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootContainerRow, empty, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootContainerRow, unsoot_container_row, "containers", N_ ("container"),
                      FALSE, container_columns)

static const UnsootField stock_move_columns[] = {
  UNSOOT_COLUMN (UnsootStockMoveRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStockMoveRow, lot_id, INT64, REF),
  UNSOOT_COLUMN (UnsootStockMoveRow, container_id, INT64, REF),
  UNSOOT_COLUMN (UnsootStockMoveRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootStockMoveRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStockMoveRow, ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStockMoveRow, reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootStockMoveRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootStockMoveRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootStockMoveRow, reverses_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootStockMoveRow, unsoot_stock_move_row, "stock_moves", N_ ("stock move"),
                      TRUE, stock_move_columns)
