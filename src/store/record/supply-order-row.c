/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply-order-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField order_columns[] = {
  UNSOOT_COLUMN (UnsootSupplyOrderRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, number, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, supplier_id, INT64, REF),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, fluid_id, INT64, REF),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, pack_ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, packs, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, pack_cost_minor, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, expected_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, note, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootSupplyOrderRow, unsoot_supply_order_row, "supply_orders",
                      N_ ("order from a supplier"), TRUE, order_columns)

static const UnsootField event_columns[] = {
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, order_id, INT64, REF),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, move_id, INT64, REF),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, expected_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, reason, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootSupplyOrderEventRow, reverses_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootSupplyOrderEventRow, unsoot_supply_order_event_row,
                      "supply_order_events", N_ ("event of an order"), TRUE, event_columns)
