/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "prefs-edit.h"
#include "shop-row.h"

/* The limits that the shop has settled: how far an estimate carries, and when a vehicle is due
 * again. Both change the shop's own row. */
extern const UnsootPrefsEdit unsoot_prefs_estimates;
extern const UnsootPrefsEdit unsoot_prefs_next;

/* "beyond 10 % or $100.00 over they ask again; hold 30 days"; to free. */
char *unsoot_prefs_estimates_words (const UnsootShopRow *shop, UnsootSession *session);

/* "after 12 months, 30,000 mi or 500 engine hours"; to free. */
char *unsoot_prefs_next_words (const UnsootShopRow *shop);
