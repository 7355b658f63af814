/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "unit.h"

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

/* The unit of pressure that TEXT names; UNSOOT_UNIT_NONE where it names none. */
UnsootUnit unsoot_pressure_unit (const char *text);
