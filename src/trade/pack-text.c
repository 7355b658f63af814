/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pack-text.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "trade-error.h"

#define MOST_PACKS 10000
#define MOST_ML G_GINT64_CONSTANT (1000000000)

/* Where the sign of multiplication begins, and where it ends. No unit has one of these. */
static const char *
find_times (const char *text, const char **after)
{
  static const char *const signs[] = { "×", "x", "X", "*" };

  for (gsize i = 0; i < G_N_ELEMENTS (signs); i++)
    {
      const char *at = strstr (text, signs[i]);
      if (at != NULL)
        {
          *after = at + strlen (signs[i]);
          return at;
        }
    }
  return NULL;
}

static gboolean
parse_count (const char *text, const char *end, gint64 *count, GError **error)
{
  g_autofree char *left = g_strndup (text, (gsize) (end - text));
  double value;

  if (!unsoot_number_parse (g_strstrip (left), &value, error))
    return FALSE;
  if (value < 1 || value > MOST_PACKS || value != floor (value))
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                   /* Translators: what was typed, as in “2.5 x 5 L” */
                   _ ("“%s” does not begin with a whole number of packs"), text);
      return FALSE;
    }
  *count = (gint64) value;
  return TRUE;
}

gboolean
unsoot_pack_text_parse (const char *text, UnsootUnit assumed, UnsootPackText *pack, GError **error)
{
  UnsootPackText read = { .count = 1 };
  UnsootTyped typed;
  const char *size = text;
  const char *times = find_times (text, &size);

  if (times != NULL && !parse_count (text, times, &read.count, error))
    return FALSE;
  if (!unsoot_volume_parse (size, assumed, &typed, &read.each_ml, error))
    return FALSE;
  if (read.each_ml > MOST_ML / read.count)
    {
      g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
                   _ ("“%s” is more than any shop holds; look at the number again"), text);
      return FALSE;
    }
  read.ml = read.count * read.each_ml;
  *pack = read;
  return TRUE;
}
