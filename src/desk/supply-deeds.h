/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-supply.h"
#include "session.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* What is done with orders from suppliers. */

/* Asks for an order of the fluid; @suppliers: UnsootSupplierRow. What is suggested stands there,
 * else its first pack. */
void unsoot_supply_place_open (GtkWidget *over, UnsootSession *session,
                               const UnsootFluidSupply *supply, const GPtrArray *suppliers);

/* A delivery of the fluid, of one of its open orders; @order_id chosen at first, 0: the one that
 * is expected first. */
void unsoot_supply_receive_open (GtkWidget *over, UnsootSession *session,
                                 const UnsootFluidSupply *supply, gint64 order_id);

void unsoot_supply_expect_open (GtkWidget *over, UnsootSession *session,
                                const UnsootSupplyOrder *order);
void unsoot_supply_cancel_open (GtkWidget *over, UnsootSession *session,
                                const UnsootSupplyOrder *order);

/* "Order 3: 2 × 5 L from Alder Supply"; to free. */
char *unsoot_supply_order_words (const UnsootSupplyOrder *order);

/* "2 × 5 L"; to free. */
char *unsoot_supply_packs_words (gint64 packs, gint64 pack_ml);

G_END_DECLS
