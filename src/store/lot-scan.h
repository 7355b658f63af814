/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lot-row.h"
#include "rows.h"

G_BEGIN_DECLS

/**
 * unsoot_lot_scan:
 * @code: as scanned or typed; spaces around it don't matter
 * @side: the side whose tank is to be filled
 * @today: ISO date
 *
 * The lot that carries @code; where two makers use the same one, that of @side's fluid.
 *
 * Errors: NOT_FOUND, naming the code; CONSTRAINT as unsoot_lot_check().
 */
UnsootLotRow *unsoot_lot_scan (UnsootDb *db, const char *code, const char *side, const char *today,
                               GError **error);

G_END_DECLS
