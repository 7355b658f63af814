/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lot-row.h"
#include "rows.h"
#include "shop-row.h"
#include "supply-order-row.h"

G_BEGIN_DECLS

/* Orders placed with suppliers. An order is a posting; what became of it is posted beside it, and
 * what of it is still to come is reckoned from the deliveries that named it. */

typedef struct
{
  UnsootSupplyOrderRow *order;
  UnsootSupplierRow *supplier;
  char *fluid;         /* its name */
  char *expected_on;   /* ISO date, as told last; NULL: never */
  gint64 received_ml;  /* deliveries that were taken back don't count */
  gint64 open_ml;      /* still to come; 0 where it is cancelled or all here */
  gint64 cancelled_id; /* the event; 0: it stands */
  char *cancelled;     /* why; NULL: it stands */
} UnsootSupplyOrder;

void unsoot_supply_order_free (UnsootSupplyOrder *order);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootSupplyOrder, unsoot_supply_order_free)

/* Errors: NOT_FOUND. */
UnsootSupplyOrder *unsoot_supply_order_load (UnsootDb *db, gint64 id, GError **error);

/* The order of that number. Errors: NOT_FOUND. */
gboolean unsoot_supply_order_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error);

/* UnsootSupplyOrder of which something is still to come, of every fluid where @fluid_id is 0: by
 * the day expected, those without one last. */
GPtrArray *unsoot_supply_orders_open (UnsootDb *db, gint64 fluid_id, GError **error);

/* UnsootSupplyOrder of a fluid, newest first, @limit of them. */
GPtrArray *unsoot_supply_orders (UnsootDb *db, gint64 fluid_id, guint limit, GError **error);

/* mL that are still to come by @orders. */
gint64 unsoot_supply_orders_ml (const GPtrArray *orders);

/**
 * unsoot_supply_order_place:
 * @order: fluid_id, pack_ml, packs, pack_cost_minor (0: not agreed), expected_on (NULL: by the
 *   supplier's usual days, where they are known), note, supplier_id (0: the fluid's)
 *
 * Posts it; its id, number, at and staff are set.
 *
 * Errors: NOT_ALLOWED; INVALID; CONSTRAINT where nobody is entered who sends the fluid.
 */
gboolean unsoot_supply_order_place (UnsootDb *db, const UnsootActing *who,
                                    UnsootSupplyOrderRow *order, GError **error);

/**
 * unsoot_supply_order_receive:
 * @lot: as for unsoot_stock_deliver (); its fluid is the order's, its cost the agreed one where
 *   none is given
 *
 * A delivery, whole or in part, of what was ordered. Errors: as there; CONSTRAINT where nothing
 * of the order is to come any more.
 */
gboolean unsoot_supply_order_receive (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                                      UnsootLotRow *lot, gint64 ml, GError **error);

/* The supplier names another day. Errors: CONSTRAINT as above; INVALID without a day. */
gboolean unsoot_supply_order_expect (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                                     const char *expected_on, const char *reason, GError **error);

/* What has not come will not come. Errors: CONSTRAINT as above; INVALID without a reason. */
gboolean unsoot_supply_order_cancel (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                                     const char *reason, GError **error);

/* The counter-posting of that. Errors: CONSTRAINT where it is not cancelled. */
gboolean unsoot_supply_order_reopen (UnsootDb *db, const UnsootActing *who, gint64 order_id,
                                     const char *reason, GError **error);

G_END_DECLS
