/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "slug.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

static const UnsootSlug *
row_of (const UnsootSlug *table, int value)
{
  for (const UnsootSlug *row = table; row->slug != NULL; row++)
    if (row->value == value)
      return row;
  return NULL;
}

const char *
unsoot_slug_of (const UnsootSlug *table, int value)
{
  const UnsootSlug *row = row_of (table, value);

  return row != NULL ? row->slug : NULL;
}

const char *
unsoot_slug_words (const UnsootSlug *table, int value)
{
  const UnsootSlug *row = row_of (table, value);

  return row != NULL ? _ (row->words) : NULL;
}

gboolean
unsoot_slug_find (const UnsootSlug *table, const char *slug, int *value)
{
  for (const UnsootSlug *row = table; row->slug != NULL; row++)
    if (g_strcmp0 (row->slug, slug) == 0)
      {
        *value = row->value;
        return TRUE;
      }
  return FALSE;
}

static char *
all_slugs (const UnsootSlug *table)
{
  GString *list = g_string_new (NULL);

  for (const UnsootSlug *row = table; row->slug != NULL; row++)
    g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", row->slug);
  return g_string_free (list, FALSE);
}

gboolean
unsoot_slug_parse (const UnsootSlug *table, const char *what, const char *text, int *value,
                   GError **error)
{
  g_autofree char *shown = g_utf8_make_valid (text != NULL ? text : "", -1);
  g_autofree char *typed = g_strstrip (g_strdup (shown));

  for (const UnsootSlug *row = table; row->slug != NULL; row++)
    if (g_ascii_strcasecmp (row->slug, typed) == 0)
      {
        *value = row->value;
        return TRUE;
      }
  g_autofree char *known = all_slugs (table);
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_UNKNOWN,
               /* Translators: what was typed, what was expected ("a role"), the possible words */
               _ ("“%s” is not %s; it can be one of: %s"), shown, what, known);
  return FALSE;
}
