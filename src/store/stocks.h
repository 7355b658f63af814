/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lot-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* Where one fluid stands. */
typedef struct
{
  gint64 fluid_id;
  char *code;
  char *name;
  char *side;
  gint64 on_hand_ml;
  gint64 unusable_ml; /* of it expired or stopped */
  gint64 promised_ml; /* to jobs booked or in the shop, not yet taken */
  gint64 free_ml;     /* usable less promised; below zero is short */
  gint64 on_order_ml; /* ordered from suppliers, not here yet */
  double daily_ml;    /* used a day over the last 12 weeks */
  double days_left;   /* NAN where none is used */
  char *next_expiry;  /* ISO date of the first usable lot to expire; NULL: none does */
} UnsootFluidStock;

void unsoot_fluid_stock_free (UnsootFluidStock *stock);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFluidStock, unsoot_fluid_stock_free)

/* Where a fluid stands at @now; the list has every fluid in use, by side and code. */
UnsootFluidStock *unsoot_fluid_stock (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error);
GPtrArray *unsoot_fluid_stock_list (UnsootDb *db, gint64 now, GError **error);

/**
 * unsoot_stock_deliver:
 * @lot: fluid_id, code, expires_on, received_on (NULL: the shop's today),
 *   cost_minor_per_litre; a further delivery of a known lot adds to it
 * @ml: what came in
 *
 * Adds the lot and the move in one deed; @lot gets its id.
 */
gboolean unsoot_stock_deliver (UnsootDb *db, const UnsootActing *who, UnsootLotRow *lot, gint64 ml,
                               GError **error);

/**
 * unsoot_stock_post:
 * @move: lot_id, kind, ml and, but for a delivery or use, a reason; id, at and staff are set
 *
 * Errors: CONSTRAINT for more than the lot has left; INVALID for a wrong sign or no reason.
 */
gboolean unsoot_stock_post (UnsootDb *db, const UnsootActing *who, UnsootStockMoveRow *move,
                            GError **error);

/* The counter-posting of a move that was wrong. Errors: CONSTRAINT where it has one already. */
gboolean unsoot_stock_reverse (UnsootDb *db, const UnsootActing *who, gint64 move_id,
                               const char *reason, GError **error);

/* Counted: @ml stands in the lot. What a run under way has poured of it is not there any more and
 * posted only at the run's end, so the difference is taken to what the lot has left; none is
 * posted where there is none. */
gboolean unsoot_stock_count (UnsootDb *db, const UnsootActing *who, gint64 lot_id, gint64 ml,
                             const char *reason, GError **error);

/* UnsootStockMoveRow of a lot, oldest first. */
GPtrArray *unsoot_stock_moves (UnsootDb *db, gint64 lot_id, GError **error);

/* mL that a lot holds by its moves; of these, unsoot_run_lot_left () are still in it. */
gboolean unsoot_lot_on_hand (UnsootDb *db, gint64 lot_id, gint64 *ml, GError **error);

G_END_DECLS
