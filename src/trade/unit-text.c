/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "unit-text.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "trade-error.h"

/* More digits than this a double doesn't hold. */
#define MAX_DIGITS 15
/* Far beyond a tank farm; anything more is a slip of the keyboard. */
#define MAX_VOLUME_M3 1e4
#define ABSOLUTE_ZERO_C (-273.15)

static gboolean
is_vulgar_fraction (gunichar c)
{
  return (c >= 0x00BC && c <= 0x00BE) || (c >= 0x2150 && c <= 0x215E);
}

/* Plain ASCII signs, one space for any run of spaces, a space before ½ so that 1½ isn't 11/2. */
static char *
plain (const char *text)
{
  GString *out = g_string_new (NULL);

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);

      if (is_vulgar_fraction (c))
        {
          char utf8[8] = { 0 };
          g_autofree char *apart = NULL;

          g_unichar_to_utf8 (c, utf8);
          apart = g_utf8_normalize (utf8, -1, G_NORMALIZE_ALL);
          g_string_append_printf (out, " %s", apart);
        }
      else if (c == 0x2212)
        g_string_append_c (out, '-');
      else
        g_string_append_unichar (out, g_unichar_isspace (c) ? ' ' : c);
    }
  g_string_replace (out, "\u2044", "/", 0);
  while (g_string_replace (out, "  ", " ", 0) > 0)
    continue;
  return g_strstrip (g_string_free (out, FALSE));
}

static gsize
digits_at (const char *p)
{
  return strspn (p, "0123456789");
}

/* Groups of three after @separator, as in 1 200 or 1,200,000; their length, or 0. */
static gsize
groups_at (const char *p, char separator)
{
  gsize length = 0;

  while (p[length] == separator && digits_at (p + length + 1) == 3)
    length += 4;
  return length;
}

/* Where a number stands in @text: whole part, what parts its groups, and its decimals. */
typedef struct
{
  gsize whole;
  char grouping;
  gsize groups;
  gsize decimals; /* with the separator */
  gboolean ambiguous;
} Shape;

static gboolean
is_separator (char c)
{
  return c == '.' || c == ',';
}

static Shape
shape_of (const char *p)
{
  Shape shape = { .whole = digits_at (p) };
  const char *rest = p + shape.whole;

  if (shape.whole >= 1 && shape.whole <= 3 && (is_separator (*rest) || *rest == ' '))
    {
      shape.grouping = *rest;
      shape.groups = groups_at (rest, *rest);
    }
  /* One point or comma with three digits after it: a thousand or a decimal? */
  if (shape.groups == 4 && is_separator (shape.grouping) && !is_separator (rest[4]))
    {
      shape.ambiguous = *p != '0';
      shape.groups = 0;
    }
  rest += shape.groups;
  if (is_separator (*rest) && (shape.groups == 0 || *rest != shape.grouping))
    shape.decimals = 1 + digits_at (rest + 1);
  return shape;
}

/* Reads one decimal number at @p; returns its length, 0 where there is none. */
static gsize
read_decimal (const char *p, double *value, gboolean *ambiguous)
{
  Shape shape = shape_of (p);
  gsize length = shape.whole + shape.groups + shape.decimals;
  g_autoptr (GString) number = g_string_new (NULL);
  gsize n_digits = 0;

  for (gsize i = 0; i < length; i++)
    if (g_ascii_isdigit (p[i]))
      {
        g_string_append_c (number, p[i]);
        n_digits++;
      }
    else if (i >= shape.whole + shape.groups)
      g_string_append_c (number, '.');
  if (n_digits == 0 || n_digits > MAX_DIGITS)
    return 0;
  *ambiguous = shape.ambiguous;
  *value = g_ascii_strtod (number->str, NULL);
  return length;
}

/* Reads 1/2 at @p; returns its length, 0 where there is none. */
static gsize
read_fraction (const char *p, double *value)
{
  gsize above = digits_at (p);
  gsize below = p[above] == '/' ? digits_at (p + above + 1) : 0;

  if (above == 0 || above > MAX_DIGITS || below == 0 || below > MAX_DIGITS)
    return 0;
  *value = g_ascii_strtod (p, NULL) / g_ascii_strtod (p + above + 1, NULL);
  return isfinite (*value) ? above + 1 + below : 0;
}

/* Reads 1/2, 1 1/2 or a decimal at @p; returns its length. */
static gsize
read_number (const char *p, double *value, gboolean *ambiguous)
{
  gsize whole = digits_at (p);
  gsize length = read_fraction (p, value);
  double part = 0.0;

  *ambiguous = FALSE;
  if (length > 0)
    return length;
  if (whole > 0 && whole <= MAX_DIGITS && p[whole] == ' ')
    {
      length = read_fraction (p + whole + 1, &part);
      if (length > 0 && part < 1.0)
        {
          *value = g_ascii_strtod (p, NULL) + part;
          return whole + 1 + length;
        }
    }
  return read_decimal (p, value, ambiguous);
}

static gboolean
refuse_number (const char *text, GError **error)
{
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               _ ("“%s” is not a number; type it as in 8, 8.5 or 1/2"), text);
  return FALSE;
}

static gboolean
refuse_ambiguous (const char *number, gsize length, GError **error)
{
  g_autofree char *typed = g_strndup (number, length);
  int whole = (int) length - 4;

  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
               /* Translators: what was typed, then the two ways to type it without doubt */
               _ ("“%s” can be read in two ways; type %.*s%s or %.*s.%s0"), typed, whole, number,
               typed + whole + 1, whole, number, typed + whole + 1);
  return FALSE;
}

/* A second number after the first; 1/m and 1/min are units. */
static gboolean
goes_on_as_number (const char *rest)
{
  if (g_str_has_prefix (rest, "1/") && g_ascii_isalpha (rest[2]))
    return FALSE;
  return g_ascii_isdigit (*rest) || is_separator (*rest)
         || (*rest == '/' && g_ascii_isdigit (rest[1]));
}

/* A sign and a number, and what follows them. */
typedef struct
{
  double value;
  const char *rest;
  const char *doubted; /* the digits that are a thousand or a decimal; NULL: there is no doubt */
  gsize doubted_length;
} Taken;

static gboolean
take_number (const char *text, Taken *taken, GError **error)
{
  gboolean ambiguous = FALSE;
  gboolean negative = *text == '-';
  const char *p = text + strspn (text, "+-");
  gsize length = 0;

  if (p - text <= 1)
    {
      p += *p == ' ' && p > text ? 1 : 0;
      length = read_number (p, &taken->value, &ambiguous);
    }
  taken->rest = p + length + (p[length] == ' ' ? 1 : 0);
  if (length == 0 || goes_on_as_number (taken->rest))
    return refuse_number (text, error);
  taken->doubted = ambiguous ? p : NULL;
  taken->doubted_length = length;
  /* The sum makes a typed "-0" plain zero. */
  taken->value = (negative ? -taken->value : taken->value) + 0.0;
  return TRUE;
}

/* A meter that counts miles, kilometres or hours shows tenths at most: three digits after a comma
 * are a thousand. A point stays in doubt. */
static gboolean
settle_doubt (Taken *taken, gboolean on_meter, GError **error)
{
  if (taken->doubted == NULL)
    return TRUE;
  if (!on_meter || memchr (taken->doubted, ',', taken->doubted_length) == NULL)
    return refuse_ambiguous (taken->doubted, taken->doubted_length, error);
  taken->value = round (taken->value * 1000.0);
  return TRUE;
}

static gboolean
is_on_meter (UnsootUnit unit)
{
  return unit == UNSOOT_UNIT_MI || unit == UNSOOT_UNIT_KM || unit == UNSOOT_UNIT_H;
}

/* @text in plain signs, or NULL with an error where it is damaged. */
static char *
readable (const char *text, GError **error)
{
  if (g_utf8_validate (text, -1, NULL))
    return plain (text);
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                       _ ("The number is damaged text; type it again"));
  return NULL;
}

static gboolean
parse_number (const char *text, gboolean on_meter, double *value, GError **error)
{
  g_autofree char *typed = readable (text, error);
  Taken taken = { 0 };

  if (typed == NULL || !take_number (typed, &taken, error))
    return FALSE;
  if (*taken.rest != '\0')
    return refuse_number (typed, error);
  if (!settle_doubt (&taken, on_meter, error))
    return FALSE;
  *value = taken.value;
  return TRUE;
}

gboolean
unsoot_number_parse (const char *text, double *value, GError **error)
{
  return parse_number (text, FALSE, value, error);
}

gboolean
unsoot_meter_parse (const char *text, double *value, GError **error)
{
  return parse_number (text, TRUE, value, error);
}

static char *
symbols_of (UnsootQuantity quantity)
{
  GString *list = g_string_new (NULL);

  for (int u = UNSOOT_UNIT_PA; u < UNSOOT_N_UNITS; u++)
    if (unsoot_unit_quantity ((UnsootUnit) u) == quantity)
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "",
                              unsoot_unit_symbol ((UnsootUnit) u));
  return g_string_free (list, FALSE);
}

static gboolean
take_unit (const char *words, UnsootQuantity quantity, UnsootUnit assumed, UnsootUnit *unit,
           GError **error)
{
  g_autofree char *symbols = NULL;

  *unit = *words == '\0' ? assumed : unsoot_unit_from_words (words);
  if (*unit != UNSOOT_UNIT_NONE && unsoot_unit_quantity (*unit) == quantity)
    return TRUE;
  symbols = symbols_of (quantity);
  if (*words == '\0')
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN,
                 _ ("Say the unit too, one of: %s"), symbols);
  else
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN,
                 /* Translators: a unit as typed, "a pressure", the units it can have */
                 _ ("“%s” does not measure %s; use one of: %s"), words,
                 unsoot_quantity_words (quantity), symbols);
  return FALSE;
}

static gboolean
can_be_negative (UnsootQuantity quantity)
{
  return quantity == UNSOOT_QUANTITY_PRESSURE || quantity == UNSOOT_QUANTITY_TEMPERATURE
         || quantity == UNSOOT_QUANTITY_PERCENT;
}

static gboolean
is_possible (const char *text, UnsootQuantity quantity, double si, GError **error)
{
  if (si < 0.0 && !can_be_negative (quantity))
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                 /* Translators: what was typed, "a volume" */
                 _ ("“%s” is below zero; that can't be %s"), text,
                 unsoot_quantity_words (quantity));
  else if (quantity == UNSOOT_QUANTITY_TEMPERATURE && si < ABSOLUTE_ZERO_C)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                 _ ("“%s” is colder than anything can be"), text);
  else
    return TRUE;
  return FALSE;
}

gboolean
unsoot_typed_parse (const char *text, UnsootQuantity quantity, UnsootUnit assumed,
                    UnsootTyped *typed, GError **error)
{
  g_autofree char *readable_text = readable (text, error);
  UnsootTyped read = { 0 };
  Taken taken = { 0 };

  if (readable_text == NULL || !take_number (readable_text, &taken, error)
      || !take_unit (taken.rest, quantity, assumed, &read.unit, error)
      || !settle_doubt (&taken, is_on_meter (read.unit), error))
    return FALSE;
  read.value = taken.value;
  read.si = unsoot_unit_to_si (read.unit, read.value);
  if (!is_possible (readable_text, quantity, read.si, error))
    return FALSE;
  *typed = read;
  return TRUE;
}

gint64
unsoot_volume_ml (double m3)
{
  return (gint64) llround (m3 * 1e6);
}

gboolean
unsoot_volume_parse (const char *text, UnsootUnit assumed, UnsootTyped *typed, gint64 *ml,
                     GError **error)
{
  UnsootTyped read = { 0 };

  if (!unsoot_typed_parse (text, UNSOOT_QUANTITY_VOLUME, assumed, &read, error))
    return FALSE;
  if (read.si > MAX_VOLUME_M3)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                   _ ("“%s” is more than any shop holds; look at the number again"), text);
      return FALSE;
    }
  *typed = read;
  *ml = unsoot_volume_ml (read.si);
  return TRUE;
}
