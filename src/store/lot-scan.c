/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lot-scan.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "lots.h"

UnsootLotRow *
unsoot_lot_scan (UnsootDb *db, const char *code, const char *side, const char *today,
                 GError **error)
{
  g_autofree char *plain = g_strstrip (g_strdup (code));
  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootLotRow) lot = unsoot_rows_maybe (
      db, &unsoot_lot_row_type, &failed,
      "WHERE code = $1 ORDER BY CASE WHEN fluid_id IN (SELECT id FROM fluids WHERE side = $2)"
      " THEN 0 ELSE 1 END, id DESC LIMIT 1",
      unsoot_text (plain), unsoot_text (side));

  if (failed != NULL)
    g_propagate_error (error, g_steal_pointer (&failed));
  else if (lot == NULL)
    unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND,
                      _ ("No lot is called “%s”. Look at the container's label again."), plain);
  else if (unsoot_lot_check (db, lot->id, side, today, error))
    return g_steal_pointer (&lot);
  return NULL;
}
