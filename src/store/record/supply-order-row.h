/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Fluids ordered, one kind a row. */
typedef struct
{
  gint64 id;
  gint64 number;      /* what the supplier is told, from 1 */
  gint64 supplier_id; /* of suppliers */
  gint64 fluid_id;    /* of fluids */
  gint64 pack_ml;
  gint64 packs;
  gint64 pack_cost_minor; /* each, as agreed; NULL: not agreed */
  char *expected_on;      /* ISO date, as told when it was ordered */
  char *note;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
} UnsootSupplyOrderRow;
UNSOOT_DECLARE_RECORD (UnsootSupplyOrderRow, unsoot_supply_order_row)

/* What became of an order. */
typedef struct
{
  gint64 id;
  gint64 order_id;   /* of supply_orders */
  char *kind;        /* received, expected, cancelled or reopened */
  gint64 move_id;    /* of stock_moves: the delivery */
  char *expected_on; /* ISO date: the new day */
  char *reason;
  gint64 at;          /* Unix seconds */
  gint64 staff_id;    /* of staff */
  gint64 reverses_id; /* the cancelling that this one takes back */
} UnsootSupplyOrderEventRow;
UNSOOT_DECLARE_RECORD (UnsootSupplyOrderEventRow, unsoot_supply_order_event_row)

G_END_DECLS
