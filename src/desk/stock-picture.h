/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-supply.h"
#include "session.h"

G_BEGIN_DECLS

/* A fluid's stock as a picture: what there was as steps, what is expected ahead with its band,
 * the reorder point as a line, deliveries and bookings as ticks. */
#define UNSOOT_TYPE_STOCK_PICTURE (unsoot_stock_picture_get_type ())
G_DECLARE_FINAL_TYPE (UnsootStockPicture, unsoot_stock_picture, UNSOOT, STOCK_PICTURE, GtkWidget)

#define UNSOOT_STOCK_DAYS_BACK 90
#define UNSOOT_STOCK_DAYS_AHEAD 60

/* @moves: UnsootMoveLine of those days, oldest first; @before_ml: what there was before them. */
void unsoot_stock_picture_show (UnsootStockPicture *self, const UnsootFluidSupply *supply,
                                GPtrArray *moves, gint64 before_ml, UnsootSession *session);

G_END_DECLS
