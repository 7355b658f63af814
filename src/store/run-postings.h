/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* The fluid of a run in the book: what its events poured is taken out of the lots, what they
 * did to the tanks becomes tank events. Everything since the run was last posted; in the
 * caller's deed. @fuel_lot, @intake_lot: (inout): the last lot poured, if any. */
gboolean unsoot_run_post_fluids (UnsootDb *db, const UnsootActing *who, const UnsootRunRow *row,
                                 gint64 *fuel_lot, gint64 *intake_lot, GError **error);

/* mL of a lot that can still come out of it: on hand by the book, less what runs have poured and
 * not yet posted. */
gboolean unsoot_run_lot_left (UnsootDb *db, gint64 lot_id, gint64 *ml, GError **error);

G_END_DECLS
