/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "unit.h"

/* A value as a person typed it, and what is reckoned with. */
typedef struct
{
  double value;    /* in @unit, as typed */
  UnsootUnit unit; /* as typed, or assumed */
  double si;       /* in the unit that its quantity is kept in */
} UnsootTyped;

/**
 * unsoot_number_parse:
 * @text: "8", "8.5", "8,5", "1 200", "1,200.5", "1/2", "1 1/2", "¾"
 *
 * A decimal comma and a decimal point are both read; what could be either a
 * thousand or a decimal ("1,200") is refused with both ways to type it.
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID, naming @text.
 */
gboolean unsoot_number_parse (const char *text, double *value, GError **error);

/* As unsoot_number_parse () for what a meter of miles, kilometres or hours shows: it counts in
 * tenths at most, so "84,210" is a thousand. "84.210" is still refused. */
gboolean unsoot_meter_parse (const char *text, double *value, GError **error);

/**
 * unsoot_typed_parse:
 * @text: a number with or without its unit: "8 psi", "40", "1/2 gal"
 * @quantity: what is expected
 * @assumed: the unit where none is typed, or %UNSOOT_UNIT_NONE to ask for one
 *
 * In mi, km and h it is read as unsoot_meter_parse () does.
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID (number), UNKNOWN (unit), RANGE (a negative
 * volume, less than absolute zero), each naming @text.
 */
gboolean unsoot_typed_parse (const char *text, UnsootQuantity quantity, UnsootUnit assumed,
                             UnsootTyped *typed, GError **error);

/* As unsoot_typed_parse () for a volume, rounded here and nowhere else to whole mL. */
gboolean unsoot_volume_parse (const char *text, UnsootUnit assumed, UnsootTyped *typed, gint64 *ml,
                              GError **error);

/* m³ to mL, half away from zero. */
gint64 unsoot_volume_ml (double m3);
