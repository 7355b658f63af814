/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * unsoot_label_day_parse:
 * @text: "2026-03-31", or a month as labels have it: "2026-03", "03/2026", "3/26"
 * @day: (out): as civil.h counts
 *
 * A last day as it stands on a label. A month alone means its last day: common practice,
 * no source. Errors: UNSOOT_TRADE_ERROR_INVALID or RANGE, naming @text.
 */
gboolean unsoot_label_day_parse (const char *text, int *day, GError **error);
