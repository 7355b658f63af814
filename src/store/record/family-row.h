/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Engine families: what the procedures and doses hang on. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  char *make;
  char *engine;
  char *size_class; /* small, light or heavy */
  gint64 displacement_ml;
  gboolean lift_pump;
  gboolean lift_pump_bypass; /* the maker allows the bypass hose; else the pump is unplugged */
  double window_min_pa;      /* inlet pressure while running; NULL: none entered, can't be run */
  double window_max_pa;
  gint64 fuel_dose_ml; /* the family's own dose; NULL: by size class */
  gint64 intake_dose_ml;
  gboolean has_egr;
  gboolean has_egr_cooler;
  gboolean has_heater;       /* intake heater */
  gboolean has_regeneration; /* particle filter that regenerates */
  gboolean has_road;         /* a generator or loader has none: run under load */
  char *low_points;          /* names, one a line: where liquid can stand */
  char *note;
} UnsootFamilyRow;
UNSOOT_DECLARE_RECORD (UnsootFamilyRow, unsoot_family_row)

/* Gaskets, O-rings and filters that a family needs. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 family_id; /* of families */
  gint64 position;
  char *kind; /* gasket, o-ring or filter */
  char *name;
  gint64 quantity;
  gint64 price_minor; /* each */
} UnsootKitItemRow;
UNSOOT_DECLARE_RECORD (UnsootKitItemRow, unsoot_kit_item_row)

G_END_DECLS
