/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField fluid_columns[] = {
  UNSOOT_COLUMN (UnsootFluidRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, code, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, name, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, side, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, supplier_id, INT64, REF),
  UNSOOT_COLUMN (UnsootFluidRow, price_minor, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, service_level, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, opened_days, INT64, OPTIONAL),
  UNSOOT_COLUMN (UnsootFluidRow, flash_point_c, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, boiling_point_c, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, density_kg_m3, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, signal_word, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, pictograms, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, h_statements, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, p_statements, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, un_number, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, sds_on, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootFluidRow, active, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootFluidRow, unsoot_fluid_row, "fluids", N_ ("fluid"), FALSE,
                      fluid_columns)

static const UnsootField pack_columns[] = {
  UNSOOT_COLUMN (UnsootPackRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPackRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPackRow, fluid_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPackRow, ml, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPackRow, cost_minor, INT64, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootPackRow, unsoot_pack_row, "fluid_packs", N_ ("pack"), FALSE,
                      pack_columns)
