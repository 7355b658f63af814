/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "family-row.h"
#include "rows.h"

G_BEGIN_DECLS

UnsootFamilyRow *unsoot_family_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootFamilyRow by name; UnsootKitItemRow by position. */
GPtrArray *unsoot_family_list (UnsootDb *db, GError **error);
GPtrArray *unsoot_family_kit (UnsootDb *db, gint64 family_id, GError **error);

/**
 * unsoot_family_save:
 * @family: added where its id is 0
 * @kit: (nullable): UnsootKitItemRow, all there are from now on; %NULL leaves them
 *
 * Errors: CONFLICT, NOT_ALLOWED; INVALID for a pressure window that is upside down.
 */
gboolean unsoot_family_save (UnsootDb *db, const UnsootActing *who, UnsootFamilyRow *family,
                             GPtrArray *kit, GError **error);

G_END_DECLS
