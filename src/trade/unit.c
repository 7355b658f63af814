/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "unit.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "fold.h"
#include "slug.h"

static const UnsootSlug quantities[] = {
  { UNSOOT_QUANTITY_PRESSURE, "pressure", N_ ("a pressure") },
  { UNSOOT_QUANTITY_VOLUME, "volume", N_ ("a volume") },
  { UNSOOT_QUANTITY_DISTANCE, "distance", N_ ("a distance") },
  { UNSOOT_QUANTITY_TIME, "time", N_ ("a time") },
  { UNSOOT_QUANTITY_TEMPERATURE, "temperature", N_ ("a temperature") },
  { UNSOOT_QUANTITY_MASS_FLOW, "mass-flow", N_ ("a mass flow") },
  { UNSOOT_QUANTITY_VOLUME_FLOW, "volume-flow", N_ ("a volume flow") },
  { UNSOOT_QUANTITY_PERCENT, "percent", N_ ("a percentage") },
  { UNSOOT_QUANTITY_SPEED, "speed", N_ ("an engine speed") },
  { UNSOOT_QUANTITY_ABSORPTION, "absorption", N_ ("an absorption coefficient") },
  { UNSOOT_QUANTITY_MASS, "mass", N_ ("a mass") },
  { 0, NULL, NULL },
};

/* kept = (value − zero) × factor */
typedef struct
{
  const char *slug;
  const char *symbol;
  const char *names; /* folded, no spaces, | on both sides of each */
  UnsootQuantity quantity;
  int decimals;
  double factor;
  double zero;
} Unit;

#define LITRE 1e-3
#define US_GALLON 3.785411784e-3
#define POUND 0.45359237

/* NIST SP 811 (2008), appendix B.8: exact but for inHg, inH2O and cfm, which are rounded there. */
static const Unit units[UNSOOT_N_UNITS] = {
  [UNSOOT_UNIT_NONE] = { NULL, "", "|", UNSOOT_QUANTITY_PRESSURE, 0, 1, 0 },
  [UNSOOT_UNIT_PA] = { "pa", "Pa", "|pa|", UNSOOT_QUANTITY_PRESSURE, 0, 1, 0 },
  [UNSOOT_UNIT_KPA] = { "kpa", "kPa", "|kpa|", UNSOOT_QUANTITY_PRESSURE, 1, 1e3, 0 },
  [UNSOOT_UNIT_MPA] = { "mpa", "MPa", "|mpa|", UNSOOT_QUANTITY_PRESSURE, 1, 1e6, 0 },
  [UNSOOT_UNIT_MBAR] = { "mbar", "mbar", "|mbar|hpa|", UNSOOT_QUANTITY_PRESSURE, 0, 1e2, 0 },
  [UNSOOT_UNIT_BAR] = { "bar", "bar", "|bar|", UNSOOT_QUANTITY_PRESSURE, 2, 1e5, 0 },
  [UNSOOT_UNIT_PSI]
  = { "psi", "psi", "|psi|psig|lbf/in2|", UNSOOT_QUANTITY_PRESSURE, 1, 6894.757293168361, 0 },
  [UNSOOT_UNIT_INHG] = { "inhg", "inHg", "|inhg|\"hg|", UNSOOT_QUANTITY_PRESSURE, 2, 3386.389, 0 },
  [UNSOOT_UNIT_INH2O]
  = { "inh2o", "inH₂O", "|inh2o|\"h2o|inwc|\"wc|", UNSOOT_QUANTITY_PRESSURE, 1, 249.0889, 0 },
  [UNSOOT_UNIT_M3] = { "m3", "m³", "|m3|", UNSOOT_QUANTITY_VOLUME, 3, 1, 0 },
  [UNSOOT_UNIT_L]
  = { "l", "L", "|l|liter|liters|litre|litres|", UNSOOT_QUANTITY_VOLUME, 2, LITRE, 0 },
  [UNSOOT_UNIT_ML] = { "ml", "mL", "|ml|cc|cm3|", UNSOOT_QUANTITY_VOLUME, 0, 1e-6, 0 },
  [UNSOOT_UNIT_GAL]
  = { "gal", "gal", "|gal|gals|gallon|gallons|", UNSOOT_QUANTITY_VOLUME, 2, US_GALLON, 0 },
  [UNSOOT_UNIT_QT]
  = { "qt", "qt", "|qt|qts|quart|quarts|", UNSOOT_QUANTITY_VOLUME, 2, US_GALLON / 4, 0 },
  [UNSOOT_UNIT_FL_OZ]
  = { "fl-oz", "fl oz", "|floz|fl-oz|", UNSOOT_QUANTITY_VOLUME, 1, US_GALLON / 128, 0 },
  [UNSOOT_UNIT_M] = { "m", "m", "|m|", UNSOOT_QUANTITY_DISTANCE, 0, 1, 0 },
  [UNSOOT_UNIT_KM] = { "km", "km", "|km|", UNSOOT_QUANTITY_DISTANCE, 0, 1e3, 0 },
  [UNSOOT_UNIT_MI] = { "mi", "mi", "|mi|mile|miles|", UNSOOT_QUANTITY_DISTANCE, 0, 1609.344, 0 },
  [UNSOOT_UNIT_S] = { "s", "s", "|s|sec|second|seconds|", UNSOOT_QUANTITY_TIME, 0, 1, 0 },
  [UNSOOT_UNIT_MIN] = { "min", "min", "|min|mins|minute|minutes|", UNSOOT_QUANTITY_TIME, 0, 60, 0 },
  [UNSOOT_UNIT_H] = { "h", "h", "|h|hr|hrs|hour|hours|", UNSOOT_QUANTITY_TIME, 1, 3600, 0 },
  [UNSOOT_UNIT_CELSIUS] = { "c", "°C", "|c|°c|celsius|", UNSOOT_QUANTITY_TEMPERATURE, 1, 1, 0 },
  [UNSOOT_UNIT_FAHRENHEIT]
  = { "f", "°F", "|f|°f|fahrenheit|", UNSOOT_QUANTITY_TEMPERATURE, 0, 5.0 / 9.0, 32 },
  [UNSOOT_UNIT_KELVIN] = { "k", "K", "|k|kelvin|", UNSOOT_QUANTITY_TEMPERATURE, 1, 1, 273.15 },
  [UNSOOT_UNIT_KG_S] = { "kg-s", "kg/s", "|kg/s|kg-s|", UNSOOT_QUANTITY_MASS_FLOW, 4, 1, 0 },
  [UNSOOT_UNIT_G_S] = { "g-s", "g/s", "|g/s|g-s|", UNSOOT_QUANTITY_MASS_FLOW, 1, 1e-3, 0 },
  [UNSOOT_UNIT_KG_H]
  = { "kg-h", "kg/h", "|kg/h|kg-h|", UNSOOT_QUANTITY_MASS_FLOW, 1, 1.0 / 3600.0, 0 },
  [UNSOOT_UNIT_LB_MIN]
  = { "lb-min", "lb/min", "|lb/min|lb-min|", UNSOOT_QUANTITY_MASS_FLOW, 2, POUND / 60.0, 0 },
  [UNSOOT_UNIT_M3_S] = { "m3-s", "m³/s", "|m3/s|m3-s|", UNSOOT_QUANTITY_VOLUME_FLOW, 4, 1, 0 },
  [UNSOOT_UNIT_L_H]
  = { "l-h", "L/h", "|l/h|l-h|", UNSOOT_QUANTITY_VOLUME_FLOW, 1, LITRE / 3600.0, 0 },
  [UNSOOT_UNIT_GAL_H] = { "gal-h", "gal/h", "|gal/h|gal-h|gph|", UNSOOT_QUANTITY_VOLUME_FLOW, 2,
                          US_GALLON / 3600.0, 0 },
  [UNSOOT_UNIT_CFM]
  = { "cfm", "cfm", "|cfm|ft3/min|", UNSOOT_QUANTITY_VOLUME_FLOW, 1, 4.719474e-4, 0 },
  [UNSOOT_UNIT_PERCENT] = { "percent", "%", "|%|percent|", UNSOOT_QUANTITY_PERCENT, 1, 1, 0 },
  [UNSOOT_UNIT_RPM] = { "rpm", "rpm", "|rpm|1/min|min-1|", UNSOOT_QUANTITY_SPEED, 0, 1, 0 },
  [UNSOOT_UNIT_PER_M] = { "per-m", "m⁻¹", "|1/m|m-1|per-m|", UNSOOT_QUANTITY_ABSORPTION, 2, 1, 0 },
  [UNSOOT_UNIT_KG] = { "kg", "kg", "|kg|", UNSOOT_QUANTITY_MASS, 1, 1, 0 },
  [UNSOOT_UNIT_G] = { "g", "g", "|g|", UNSOOT_QUANTITY_MASS, 0, 1e-3, 0 },
  [UNSOOT_UNIT_LB] = { "lb", "lb", "|lb|lbs|pound|pounds|", UNSOOT_QUANTITY_MASS, 0, POUND, 0 },
};

const char *
unsoot_quantity_slug (UnsootQuantity quantity)
{
  return unsoot_slug_of (quantities, (int) quantity);
}

const char *
unsoot_quantity_words (UnsootQuantity quantity)
{
  return unsoot_slug_words (quantities, (int) quantity);
}

const char *
unsoot_unit_slug (UnsootUnit unit)
{
  return units[unit].slug;
}

gboolean
unsoot_unit_find (const char *slug, UnsootUnit *unit)
{
  for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
    if (g_strcmp0 (units[u].slug, slug) == 0)
      {
        *unit = (UnsootUnit) u;
        return TRUE;
      }
  return FALSE;
}

const char *
unsoot_unit_symbol (UnsootUnit unit)
{
  return units[unit].symbol;
}

UnsootQuantity
unsoot_unit_quantity (UnsootUnit unit)
{
  return units[unit].quantity;
}

int
unsoot_unit_decimals (UnsootUnit unit)
{
  return units[unit].decimals;
}

double
unsoot_unit_to_si (UnsootUnit unit, double value)
{
  return (value - units[unit].zero) * units[unit].factor;
}

double
unsoot_unit_from_si (UnsootUnit unit, double si)
{
  return si / units[unit].factor + units[unit].zero;
}

/* Folded, spaces and points dropped, typographic signs made plain, | on both sides. */
static char *
lookup_form (const char *text)
{
  g_autofree char *folded = unsoot_fold (text, NULL);
  GString *form = g_string_new ("|");

  for (const char *p = folded; p != NULL && *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (c == 0x2212) /* minus sign, of m⁻¹ */
        g_string_append_c (form, '-');
      else if (c == 0x2044) /* fraction slash */
        g_string_append_c (form, '/');
      else if (c == 0x201D || c == 0x2033) /* inch marks */
        g_string_append_c (form, '"');
      else if (c != ' ' && c != '.')
        g_string_append_unichar (form, c);
    }
  g_string_append_c (form, '|');
  return g_string_free (form, FALSE);
}

UnsootUnit
unsoot_unit_from_words (const char *text)
{
  g_autofree char *form = lookup_form (text);

  if (strlen (form) > 2 && strchr (form + 1, '|') == form + strlen (form) - 1)
    for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
      if (strstr (units[u].names, form) != NULL)
        return (UnsootUnit) u;
  return UNSOOT_UNIT_NONE;
}

char *
unsoot_unit_format (double si, UnsootUnit unit, int decimals)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE * 10];
  char format[16];
  double value = unsoot_unit_from_si (unit, si);

  /* What rounds to nothing is shown without a sign. */
  if (fabs (value) * pow (10, decimals) < 0.5)
    value = 0.0;
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (number, sizeof number, format, value);
  return *units[unit].symbol == '\0' ? g_strdup (number)
                                     : g_strdup_printf ("%s %s", number, units[unit].symbol);
}
