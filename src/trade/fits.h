/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* One row of what an adapter type fits. NULL and 0 match everything. */
typedef struct
{
  gint64 type_id;
  gint64 family_id;
  const char *make;
  const char *model;
  const char *engine;
  int year_from;
  int year_to;
} UnsootFitRow;

/* The vehicle asked about. NULL and 0 are not known. */
typedef struct
{
  gint64 family_id;
  const char *family_name; /* for the reason only */
  const char *make;
  const char *model;
  const char *engine;
  int year;
} UnsootFitVehicle;

/**
 * UnsootFit:
 * @type_id: the adapter type
 * @row: index of the row that says so, the most specific one of the type
 * @specificity: higher is narrower
 * @certain: nothing that the row asks for is unknown about the vehicle
 * @reason: "Brindle T4, 2011 to 2016", with what is not known where that matters
 */
typedef struct
{
  gint64 type_id;
  gsize row;
  guint specificity;
  gboolean certain;
  char *reason;
} UnsootFit;

/**
 * unsoot_fits:
 *
 * Which adapter types fit @vehicle: each type once, certain ones first, then
 * the most specific, then in the order of @rows. Words are compared without
 * regard to case, accents, spaces and dashes.
 *
 * Returns: (transfer full) (element-type UnsootFit): may be empty
 */
GPtrArray *unsoot_fits (const UnsootFitRow *rows, gsize n_rows, const UnsootFitVehicle *vehicle);
