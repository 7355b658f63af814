/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "step.h"
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

/* Reads "0.5" whole, without a sign; FALSE for anything else. */
gboolean unsoot_word_number (const char *text, double *number);

/* TEXT itself, cut to what is between the blanks around it; one that a backslash
 * keeps is text. */
char *unsoot_word_strip (char *text);

/* TEXT without its backslashes; NULL where nothing is written. */
char *unsoot_word_unescape (const char *text);
char unsoot_word_unescaped (char c);

/* Sets ERROR to "Line LINE: …"; returns FALSE. */
gboolean unsoot_word_fail (GError **error, int line, const char *format, ...) G_GNUC_PRINTF (3, 4);

/* One step line, the LINEth of its text. NULL sets ERROR. */
UnsootStep *unsoot_step_parse_at (const char *text, int line, GError **error);
