/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "family-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField family_columns[] = {
  UNSOOT_COLUMN (UnsootFamilyRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, make, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, engine, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, size_class, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, displacement_ml, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootFamilyRow, lift_pump, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, lift_pump_bypass, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, window_min_pa, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, window_max_pa, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, fuel_dose_ml, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootFamilyRow, intake_dose_ml, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootFamilyRow, has_egr, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, has_egr_cooler, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, has_heater, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, has_regeneration, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, has_road, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, low_points, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFamilyRow, note, TEXT, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootFamilyRow, unsoot_family_row, "families", N_ ("engine family"), FALSE,
                      family_columns)

static const UnsootField kit_item_columns[] = {
  UNSOOT_COLUMN (UnsootKitItemRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, family_id, INT64, REF),
  UNSOOT_COLUMN (UnsootKitItemRow, position, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, quantity, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootKitItemRow, price_minor, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootKitItemRow, unsoot_kit_item_row, "family_kit", N_ ("kit item"), FALSE,
                      kit_item_columns)
