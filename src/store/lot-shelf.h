/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lots.h"
#include "stock.h"

G_BEGIN_DECLS

/* One fluid's lots, as rows and as the trade reckons with them; the two go side by side. */
typedef struct
{
  GPtrArray *stocks; /* UnsootLotStock */
  GArray *lots;      /* UnsootStockLot, borrowing from the stocks */
} UnsootLotShelf;

void unsoot_lot_shelf_free (UnsootLotShelf *shelf);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootLotShelf, unsoot_lot_shelf_free)

/* First to expire first, empty lots last. */
UnsootLotShelf *unsoot_lot_shelf_load (UnsootDb *db, gint64 fluid_id, const char *today,
                                       GError **error);

G_END_DECLS
