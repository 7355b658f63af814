/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "civil.h"

/* Further away than this a day is written out. */
#define UNSOOT_NEAR_DAYS 30

/* "24 Nov 2025" and "24 Nov": exact, for print and for what is far away. Free them. */
char *unsoot_day_words (int day);
char *unsoot_day_short_words (int day);

/* "Nov 2025": its month. Free it. */
char *unsoot_day_month_words (int day);

/* "Monday" for 1 to "Sunday" for 7. */
const char *unsoot_weekday_words (int weekday);

/* "today", "yesterday", "tomorrow", "in 9 days", "9 days ago", "24 Nov 2025". Free it. */
char *unsoot_day_near_words (int day, int today);

/* "today 14:30", "yesterday 09:05", "in 9 days", "24 Nov 2025". Free it. */
char *unsoot_moment_near_words (const UnsootLocal *moment, const UnsootLocal *now);

/* "24 Nov 2025 14:30". Free it. */
char *unsoot_moment_words (const UnsootLocal *moment);
