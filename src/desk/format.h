/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* How moments, days and amounts read on the screen. Every returned string is the caller's to
 * free. Times are Unix seconds, days ISO text; a moment of 0 and a day of NULL read as "–". How
 * near and far days are called is the trade's (civil-words.h). */

/* The day as unsoot_day_near_words () says it, with the clock: "today 14:30", "in 3 days 08:00",
 * "14 Nov 2025 08:00". */
char *unsoot_format_moment (gint64 at, gint64 now, GTimeZone *zone);

/* The same for lists, where there is little room: the clock only from yesterday to tomorrow. */
char *unsoot_format_moment_near (gint64 at, gint64 now, GTimeZone *zone);

/* An ISO date likewise, without a clock: "today", "in 9 days", "14 Nov 2025". */
char *unsoot_format_day (const char *day, const char *today);

/* The shortest form, for under a picture: "08:10" on the same day, else "14 Nov", with the year
 * where that is not plain. */
char *unsoot_format_stamp (gint64 at, gint64 now, GTimeZone *zone);

/* In full, for tooltips: "Tuesday 24 November 2026, 14:30". */
char *unsoot_format_exact (gint64 at, GTimeZone *zone);
char *unsoot_format_exact_day (const char *day);

/* "14:30" */
char *unsoot_format_clock (gint64 at, GTimeZone *zone);

/* "today 08:30–10:10": both ends on one day name it once. */
char *unsoot_format_from_to (gint64 from, gint64 to, gint64 now, GTimeZone *zone);

/* Length of time in words: "25 min", "1 h 40 min", "3 days". */
char *unsoot_format_span (gint64 seconds);

/* ISO date of a moment in that zone. */
char *unsoot_format_iso_day (gint64 at, GTimeZone *zone);

/* "1.5 L", with no more digits than it has. */
char *unsoot_format_litres (gint64 ml);

/* Grouped, with at most that many decimals and no trailing zeros. */
char *unsoot_format_number (double value, int decimals);

/* Pango markup: the value, and its unit in a lighter tone. Both are escaped. */
char *unsoot_format_with_unit (const char *value, const char *unit);

/* Pango markup: a title of several parts ("Brindle T4 5.1 · unit 12 · plate 7KD 204") on two lines,
 * the first part, @heavy if wanted, and the others below it in a lighter tone. */
char *unsoot_format_title_markup (const char *title, gboolean heavy);
