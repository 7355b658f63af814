/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The two sides of an engine that are cleaned. Each has its own fluid and its own tank. */
typedef enum
{
  UNSOOT_SIDE_NONE,
  UNSOOT_SIDE_FUEL,
  UNSOOT_SIDE_INTAKE,
} UnsootSide;

#define UNSOOT_SIDES 3 /* array length where a side is the index; [NONE] stays unused */

/* "none", "fuel", "intake": for storage and for a procedure's text. */
const char *unsoot_side_to_slug (UnsootSide side);

/* FALSE, and *SIDE untouched, where SLUG is NULL or no side. */
gboolean unsoot_side_from_slug (const char *slug, UnsootSide *side);

/* "Fuel side", "Intake side", or an empty string: for people. */
const char *unsoot_side_label (UnsootSide side);
