/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* What must be known to begin a book. */
typedef struct
{
  const char *name;
  const char *town;     /* NULL: not said */
  const char *currency; /* ISO 4217 */
  const char *paper;    /* letter or a4 */
  const char *owner;
  const char *pin;
} UnsootNewShop;

/**
 * unsoot_new_shop_make:
 * @db: a book without a shop
 * @now: Unix seconds
 *
 * Adds the shop, its owner with a PIN, a first bay, weekday hours from 8 to 17 and the trade's
 * usual doses, all of it the owner's to change. One deed.
 *
 * Errors: INVALID for a name that is missing, a currency that there isn't, a PIN that is too
 * short; CONSTRAINT where there is a shop.
 */
gboolean unsoot_new_shop_make (UnsootDb *db, const UnsootNewShop *wish, gint64 now, GError **error);

/* "MQ" for "Mara Quillen": first letters, at most three; the caller frees it. */
char *unsoot_new_shop_initials (const char *name);

G_END_DECLS
