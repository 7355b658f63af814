/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The words of the notation that reader and printer share. */
#define UNSOOT_WORD_AT "at"
#define UNSOOT_WORD_WITH "with"
#define UNSOOT_WORD_SHARE "share"
#define UNSOOT_WORD_MINUTES "minutes"
#define UNSOOT_WORD_MINIMUM "minimum"
#define UNSOOT_WORD_LOW_LEVEL "low-level"
#define UNSOOT_WORD_UNTIL_CLEAR "until-clear"
#define UNSOOT_WORD_NEW_GASKET "new-gasket"
#define UNSOOT_WORD_CLOSES "closes"

/* Whether TEXT may stand as a name without quotes. */
gboolean unsoot_word_is_bare (const char *text);

/* Pa in one UNIT, exactly as typed ("psi", "bar", "kPa", "Pa"); NAN: no unit. */
double unsoot_pressure_factor (const char *unit);
