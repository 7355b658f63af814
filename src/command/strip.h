/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "days.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* The strip of the day in letters: a line for each bay, a column for each quarter of an hour,
 * each block filled as far as its steps are done. Free it. */
char *unsoot_strip_draw (const UnsootShopRow *shop, const UnsootDay *day);

/* "08:30" by the shop's clock. Free it. */
char *unsoot_strip_clock (const UnsootShopRow *shop, gint64 at);

/* The bay's name, NULL for a block without one. */
const char *unsoot_strip_bay_name (const UnsootDay *day, gint64 bay_id);

G_END_DECLS
