/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* Called on the thread that makes the shop, with 0 to 1. */
typedef void (*UnsootDemoProgress) (double share, gpointer data);

/**
 * unsoot_demo_make:
 * @db: a new book, with no shop in it
 * @now: Unix seconds: the moment around which its day is arranged
 * @progress: (nullable)
 *
 * Fills the book with the demo shop: an invented town, always the same for the same @now,
 * with fourteen months behind it and a busy day around it. The town's clock is set so
 * that it is mid-morning there. One deed: whole, or nothing.
 *
 * Errors: CANCELLED through @cancellable (nullable); CONSTRAINT where there is a shop.
 */
gboolean unsoot_demo_make (UnsootDb *db, gint64 now, UnsootDemoProgress progress, gpointer data,
                           GCancellable *cancellable, GError **error);

/* The town's UTC offset in minutes at @now: where it is between ten and eleven in the morning. */
int unsoot_demo_offset (gint64 now);

/* Name and PIN of everyone in the demo shop, for the first page: "Mara Quillen, advisor:
 * 2222", one a line. */
char *unsoot_demo_pins (void);

G_END_DECLS
