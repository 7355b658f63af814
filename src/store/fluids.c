/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluids.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "indexing.h"

UnsootFluidRow *
unsoot_fluid_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_fluid_row_type, id, error);
}

GPtrArray *
unsoot_fluid_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_fluid_row_type, error,
                           "ORDER BY active DESC, side, code, id");
}

GPtrArray *
unsoot_fluid_packs (UnsootDb *db, gint64 fluid_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_pack_row_type, error, "WHERE fluid_id = $1 ORDER BY ml, id",
                           unsoot_int (fluid_id));
}

/* Rule 1: what was poured as one side's fluid never becomes the other's. */
static gboolean
check_side_stays (UnsootDb *db, const UnsootFluidRow *fluid, GError **error)
{
  gint64 others = 0;

  if (!unsoot_db_int (db, &others, error,
                      "SELECT count (*) FROM fluids f WHERE f.id = $1 AND f.side <> $2"
                      " AND EXISTS (SELECT 1 FROM lots l WHERE l.fluid_id = f.id)",
                      unsoot_int (fluid->id), unsoot_text (fluid->side)))
    return FALSE;
  if (others > 0)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        _ ("%s has lots, so it stays on its side. Add another fluid for the other side."),
        fluid->name);
  return TRUE;
}

static gboolean
check_fluid (UnsootDb *db, const UnsootFluidRow *fluid, GError **error)
{
  if (unsoot_deed_blank (fluid->name) || unsoot_deed_blank (fluid->code))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A fluid needs a name and a short code."));
  if (fluid->price_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("%s has a price below zero."),
                             fluid->name);
  if (!(fluid->service_level > 0.0 && fluid->service_level < 1.0))
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("%s needs a share of weeks without running out, above 0 and below 100 %%."),
        fluid->name);
  return fluid->id == 0 || check_side_stays (db, fluid, error);
}

gboolean
unsoot_fluid_save (UnsootDb *db, const UnsootActing *who, UnsootFluidRow *fluid, GError **error)
{
  return check_fluid (db, fluid, error)
         && unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_FLUID, &unsoot_fluid_row_type, fluid,
                              unsoot_index_fluid, error);
}

gboolean
unsoot_pack_save (UnsootDb *db, const UnsootActing *who, UnsootPackRow *pack, GError **error)
{
  if (pack->ml <= 0 || pack->cost_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A pack needs a volume above zero and a cost."));
  return unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_FLUID, &unsoot_pack_row_type, pack, NULL,
                           error);
}

gboolean
unsoot_pack_drop (UnsootDb *db, const UnsootActing *who, gint64 pack_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_FLUID, error);
  g_autoptr (UnsootPackRow) pack
      = deed != NULL ? unsoot_rows_get (db, &unsoot_pack_row_type, pack_id, error) : NULL;

  if (pack == NULL)
    return FALSE;
  return unsoot_deed_end (&deed, unsoot_rows_delete (db, &unsoot_pack_row_type, pack, who, error),
                          error);
}
