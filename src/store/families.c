/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "families.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "deed.h"
#include "weight-class.h"

UnsootFamilyRow *
unsoot_family_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_family_row_type, id, error);
}

GPtrArray *
unsoot_family_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_family_row_type, error, "ORDER BY name, id");
}

GPtrArray *
unsoot_family_kit (UnsootDb *db, gint64 family_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_kit_item_row_type, error,
                           "WHERE family_id = $1 ORDER BY position, id", unsoot_int (family_id));
}

static gboolean
check_family (const UnsootFamilyRow *family, GError **error)
{
  UnsootSizeClass size;
  gboolean from = !isnan (family->window_min_pa);
  gboolean to = !isnan (family->window_max_pa);

  if (unsoot_deed_blank (family->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The engine family needs a name."));
  if (!unsoot_size_class_find (family->size_class, &size))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("%s needs a size class: small, light or heavy."), family->name);
  if (from != to)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The pressure window of %s needs both its ends, or neither."),
                             family->name);
  if (from && (family->window_min_pa <= 0.0 || family->window_max_pa <= family->window_min_pa))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The pressure window of %s is upside down or begins at nothing."),
                             family->name);
  if (family->fuel_dose_ml < 0 || family->intake_dose_ml < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("A dose can't be below zero."));
  return TRUE;
}

gboolean
unsoot_family_save (UnsootDb *db, const UnsootActing *who, UnsootFamilyRow *family, GPtrArray *kit,
                    GError **error)
{
  UnsootRecordHead before = { family->id, family->version };

  if (!check_family (family, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_FAMILY, error);
  if (deed == NULL)
    return FALSE;
  g_autoptr (GPtrArray) kept = unsoot_family_kit (db, family->id, error);
  gboolean done = kept != NULL && unsoot_deed_keep (db, &unsoot_family_row_type, family, who, error)
                  && unsoot_deed_keep_all (db, &unsoot_kit_item_row_type, kept, kit,
                                           G_STRUCT_OFFSET (UnsootKitItemRow, family_id),
                                           family->id, who, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  family->id = before.id;
  family->version = before.version;
  return FALSE;
}
