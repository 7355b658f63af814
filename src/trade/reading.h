/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"
#include "unit.h"

/* What is measured before and after, and what a difference means. Values are in
 * the unit that their quantity is kept in. */
typedef enum
{
  UNSOOT_READING_OPACITY, /* of the smoke, over the standard path */
  UNSOOT_READING_AIR_IDLE,
  UNSOOT_READING_AIR_2000,
  UNSOOT_READING_MANIFOLD,
  UNSOOT_READING_BOOST,
  UNSOOT_READING_EGR_COMMANDED,
  UNSOOT_READING_EGR_ACTUAL,
  UNSOOT_READING_EGR_ERROR,
  UNSOOT_READING_EGR_COOLER,
  UNSOOT_READING_DPF,
  UNSOOT_READING_RAIL,
  UNSOOT_READING_RAIL_DUTY,
  UNSOOT_READING_IDLE_SCATTER,
  UNSOOT_READING_BALANCE,
  UNSOOT_READING_RETURN_FLOW,
  UNSOOT_READING_CRANK,
  UNSOOT_READING_OIL,
  UNSOOT_READING_FUEL_USE,
} UnsootReadingKind;

#define UNSOOT_READING_KINDS (UNSOOT_READING_FUEL_USE + 1)

/* "opacity", "air-idle" … with their names. */
extern const UnsootSlug unsoot_reading_kinds[];

typedef enum
{
  UNSOOT_BETTER_NONE, /* a difference says nothing by itself */
  UNSOOT_BETTER_HIGHER,
  UNSOOT_BETTER_LOWER,
  UNSOOT_BETTER_NEARER_ZERO,
} UnsootBetter;

/* What a reading depends on. */
typedef enum
{
  UNSOOT_DEPENDS_RPM = 1 << 0,
  UNSOOT_DEPENDS_LOAD = 1 << 1,
  UNSOOT_DEPENDS_COOLANT = 1 << 2,
  UNSOOT_DEPENDS_EGR = 1 << 3,
  UNSOOT_DEPENDS_REGENERATION = 1 << 4,
  UNSOOT_DEPENDS_BAROMETER = 1 << 5,
  UNSOOT_DEPENDS_AMBIENT = 1 << 6,
} UnsootDepends;

/**
 * UnsootReadingFacts:
 * @shown: the unit people read it in
 * @tolerance: of a usual instrument, as kept; from memory, a shop's own instrument wins
 * @relative: the same as a share of the value; the larger of both counts
 * @needs: UnsootDepends that must be known and alike on both sides
 * @heeds: UnsootDepends that must be alike where both are known
 * @limits: what the reading can't show; a sentence, translated
 */
typedef struct
{
  UnsootUnit shown;
  UnsootBetter better;
  double tolerance;
  double relative;
  guint needs;
  guint heeds;
  const char *limits;
} UnsootReadingFacts;

UnsootReadingFacts unsoot_reading_facts (UnsootReadingKind kind);

/* What is kept (Pa, kg/s …) for a kind's shown unit. */
UnsootQuantity unsoot_reading_quantity (UnsootReadingKind kind);

/* "38 %", "14.5 psi": in the unit shown. Free with g_free. */
char *unsoot_reading_format (UnsootReadingKind kind, double value);
