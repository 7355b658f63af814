/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * unsoot_clock_parse:
 * @text: a time of the day, "7:30" or "07:30"; "24:00" is its end
 * @minute: (out): from midnight
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID, naming @text.
 */
gboolean unsoot_clock_parse (const char *text, int *minute, GError **error);

/* "07:30". Free it. */
char *unsoot_clock_text (int minute);
