/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "shop-row.h"

G_BEGIN_DECLS

/* Days and moments as they are typed at a command and told in its answer. A moment without a
 * zone is by the shop's clock. Errors: UNSOOT_TRADE_ERROR_INVALID, naming what was typed. */

/* Unix seconds, or a moment with its zone ("2025-11-24T16:00:00Z"): what needs no shop. */
gboolean unsoot_when_absolute (const char *text, gint64 *at, GError **error);

/* "2025-11-24 10:30", "today 10:30", "tomorrow 8:00", "10:30" (today), or as above. */
gboolean unsoot_when_moment (const UnsootShopRow *shop, gint64 now, const char *text, gint64 *at,
                             GError **error);

/* An ISO date of "2025-11-24", "today", "tomorrow", "yesterday"; NULL on error. Free it. */
char *unsoot_when_date (const UnsootShopRow *shop, gint64 now, const char *text, GError **error);

/* "24 Nov 2025 14:30" and "2025-11-24T14:30:00-06:00". Free them; NULL for 0. */
char *unsoot_when_words (const UnsootShopRow *shop, gint64 at);
char *unsoot_when_iso (const UnsootShopRow *shop, gint64 at);

/* "24 Nov 2025" of an ISO date; what is no date is given back as it stands. Free it. */
char *unsoot_when_day_words (const char *iso);

G_END_DECLS
