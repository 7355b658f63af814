/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-row.h"
#include "rows.h"

G_BEGIN_DECLS

UnsootFluidRow *unsoot_fluid_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootFluidRow by side and code, those in use first; UnsootPackRow by size. */
GPtrArray *unsoot_fluid_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_fluid_packs (UnsootDb *db, gint64 fluid_id, GError **error);

/* Each adds where the id is 0, else saves. Errors: CONFLICT, NOT_ALLOWED; CONSTRAINT for a
 * code that is taken, or a side changed under a fluid that has lots. */
gboolean unsoot_fluid_save (UnsootDb *db, const UnsootActing *who, UnsootFluidRow *fluid,
                            GError **error);
gboolean unsoot_pack_save (UnsootDb *db, const UnsootActing *who, UnsootPackRow *pack,
                           GError **error);

/* It is no longer bought in that pack. Errors: NOT_ALLOWED, NOT_FOUND. */
gboolean unsoot_pack_drop (UnsootDb *db, const UnsootActing *who, gint64 pack_id, GError **error);

G_END_DECLS
