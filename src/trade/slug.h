/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * UnsootSlug:
 * @value: the enum's value
 * @slug: how it is stored and typed in commands: lower case, never translated
 * @words: how a person reads it, marked with N_ ()
 *
 * One row of an enum's table. A table is a constant array closed by a row
 * whose slug is %NULL.
 */
typedef struct
{
  int value;
  const char *slug;
  const char *words;
} UnsootSlug;

/* The slug of @value, or NULL when the table has no such value. */
const char *unsoot_slug_of (const UnsootSlug *table, int value);

/* The translated words for @value, or NULL when the table has no such value. */
const char *unsoot_slug_words (const UnsootSlug *table, int value);

/* Whether @slug is in the table, exactly as stored; sets @value if so. */
gboolean unsoot_slug_find (const UnsootSlug *table, const char *slug, int *value);

/**
 * unsoot_slug_parse:
 * @table: the enum's table
 * @what: what it names, translated, with its article: "a role"
 * @text: what was typed; case and surrounding spaces don't matter
 * @value: (out): the value found
 *
 * Errors: UNSOOT_TRADE_ERROR_UNKNOWN, naming @text and the slugs there are.
 */
gboolean unsoot_slug_parse (const UnsootSlug *table, const char *what, const char *text, int *value,
                            GError **error);
