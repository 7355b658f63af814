/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootQuantity:
 *
 * What is measured. Each is kept in one unit, called its SI unit here: Pa, m³, m,
 * s, °C, kg/s, m³/s, %, 1/min, 1/m, kg. Celsius is SI's own derived unit; percent and
 * revolutions a minute are kept as instruments and formulas have them.
 */
typedef enum
{
  UNSOOT_QUANTITY_PRESSURE,
  UNSOOT_QUANTITY_VOLUME,
  UNSOOT_QUANTITY_DISTANCE,
  UNSOOT_QUANTITY_TIME,
  UNSOOT_QUANTITY_TEMPERATURE,
  UNSOOT_QUANTITY_MASS_FLOW,
  UNSOOT_QUANTITY_VOLUME_FLOW,
  UNSOOT_QUANTITY_PERCENT,
  UNSOOT_QUANTITY_SPEED,      /* of an engine */
  UNSOOT_QUANTITY_ABSORPTION, /* of light by smoke: k */
  UNSOOT_QUANTITY_MASS,
} UnsootQuantity;

/* The first unit of each quantity is the one it is kept in. */
typedef enum
{
  UNSOOT_UNIT_NONE,
  UNSOOT_UNIT_PA,
  UNSOOT_UNIT_KPA,
  UNSOOT_UNIT_MPA,
  UNSOOT_UNIT_MBAR,
  UNSOOT_UNIT_BAR,
  UNSOOT_UNIT_PSI,
  UNSOOT_UNIT_INHG,
  UNSOOT_UNIT_INH2O,
  UNSOOT_UNIT_M3,
  UNSOOT_UNIT_L,
  UNSOOT_UNIT_ML,
  UNSOOT_UNIT_GAL,
  UNSOOT_UNIT_QT,
  UNSOOT_UNIT_FL_OZ,
  UNSOOT_UNIT_M,
  UNSOOT_UNIT_KM,
  UNSOOT_UNIT_MI,
  UNSOOT_UNIT_S,
  UNSOOT_UNIT_MIN,
  UNSOOT_UNIT_H,
  UNSOOT_UNIT_CELSIUS,
  UNSOOT_UNIT_FAHRENHEIT,
  UNSOOT_UNIT_KELVIN,
  UNSOOT_UNIT_KG_S,
  UNSOOT_UNIT_G_S,
  UNSOOT_UNIT_KG_H,
  UNSOOT_UNIT_LB_MIN,
  UNSOOT_UNIT_M3_S,
  UNSOOT_UNIT_L_H,
  UNSOOT_UNIT_GAL_H,
  UNSOOT_UNIT_CFM,
  UNSOOT_UNIT_PERCENT,
  UNSOOT_UNIT_RPM,
  UNSOOT_UNIT_PER_M,
  UNSOOT_UNIT_KG,
  UNSOOT_UNIT_G,
  UNSOOT_UNIT_LB,
} UnsootUnit;

#define UNSOOT_N_UNITS (UNSOOT_UNIT_LB + 1)

const char *unsoot_quantity_slug (UnsootQuantity quantity);
/* "a pressure", "a volume": as it stands in a sentence. */
const char *unsoot_quantity_words (UnsootQuantity quantity);

/* "psi", "inh2o", "c": as stored. NULL for none. */
const char *unsoot_unit_slug (UnsootUnit unit);
gboolean unsoot_unit_find (const char *slug, UnsootUnit *unit);

/* "psi", "inH₂O", "°C": as shown; empty for none. */
const char *unsoot_unit_symbol (UnsootUnit unit);

/* What @unit measures; not to be asked of none. */
UnsootQuantity unsoot_unit_quantity (UnsootUnit unit);

/* Decimals that @unit is usually shown with. */
int unsoot_unit_decimals (UnsootUnit unit);

/* A value into the unit its quantity is kept in, and back. Factors: NIST SP 811, appendix B. */
double unsoot_unit_to_si (UnsootUnit unit, double value);
double unsoot_unit_from_si (UnsootUnit unit, double si);

/**
 * unsoot_unit_from_words:
 * @text: a symbol or name as people type it: "PSI", "quarts", "in Hg", "° C"
 *
 * The unit meant, whatever it measures, or %UNSOOT_UNIT_NONE.
 */
UnsootUnit unsoot_unit_from_words (const char *text);

/* "8.0 psi": fixed decimals, a point, never "-0.0". Free it. */
char *unsoot_unit_format (double si, UnsootUnit unit, int decimals);
