/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* What can be found from the one box. The order is that of the groups shown;
 * the numbers are stored. */
typedef enum
{
  UNSOOT_FOUND_CUSTOMER = 1,
  UNSOOT_FOUND_VEHICLE = 2,
  UNSOOT_FOUND_JOB = 3,
  UNSOOT_FOUND_ESTIMATE = 4,
  UNSOOT_FOUND_INVOICE = 5,
  UNSOOT_FOUND_LOT = 6,
  UNSOOT_FOUND_ADAPTER = 7,
  UNSOOT_FOUND_FLUID = 8,
} UnsootFoundKind;
#define UNSOOT_FOUND_KINDS 8

/* How well it fits what was typed; smaller is better. */
typedef enum
{
  UNSOOT_FOUND_WHOLE,  /* every typed word is a whole word or code of it */
  UNSOOT_FOUND_START,  /* every typed word begins a word or code of it */
  UNSOOT_FOUND_INSIDE, /* what was typed stands somewhere inside a code of it */
} UnsootFoundFit;

typedef struct
{
  UnsootFoundKind kind;
  gint64 row; /* id in the kind's table */
  char *title;
  char *detail;
  UnsootFoundFit fit;
} UnsootFound;

void unsoot_found_free (UnsootFound *found);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFound, unsoot_found_free)

/**
 * unsoot_find_put:
 * @title: first line of the result, searched too
 * @detail: (nullable): second line, searched too
 * @words: (nullable): what else a person would type to find it
 * @codes: (nullable) (array zero-terminated): plates, VINs, phones, numbers: found whatever
 *   spaces and dashes are typed, and from three characters on also inside
 *
 * Makes the row findable, or renews what is known of it. Part of the caller's deed.
 * Errors: INVALID for text that is not UTF-8 or @row outside 1 … 2^40.
 */
gboolean unsoot_find_put (UnsootDb *db, UnsootFoundKind kind, gint64 row, const char *title,
                          const char *detail, const char *words, const char *const *codes,
                          GError **error);

/* The row can't be found any more; nothing happens if it could not before. */
gboolean unsoot_find_remove (UnsootDb *db, UnsootFoundKind kind, gint64 row, GError **error);

/**
 * unsoot_find:
 * @typed: as typed, in any case, with or without accents, spaces and dashes
 * @limit: the most results of a kind
 *
 * Results grouped by kind, in each group the best fit first, then the newest. The group
 * with a whole fit comes before those without. An empty @typed finds nothing.
 *
 * Returns: an array of UnsootFound that owns them.
 */
GPtrArray *unsoot_find (UnsootDb *db, const char *typed, guint limit, GError **error);

G_END_DECLS
