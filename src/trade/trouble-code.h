/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* A code such as P0104 and its closing zero. */
#define UNSOOT_TROUBLE_CODE_SIZE 6

/**
 * unsoot_trouble_code_is_valid:
 *
 * Whether @code has the form of SAE J2012: P, C, B or U, a digit 0 to 3, three
 * hexadecimal digits, all in capitals.
 */
gboolean unsoot_trouble_code_is_valid (const char *code);

/**
 * unsoot_trouble_codes_parse:
 * @text: as typed, with commas, semicolons, spaces or line ends between
 *
 * Returns: (transfer full): the codes in capitals, each once, in the order typed;
 *   empty for empty text. Free with g_strfreev ().
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID, naming the wrong one and what is wrong in it.
 */
char **unsoot_trouble_codes_parse (const char *text, GError **error);

/* Writes the code that two bytes stand for; FALSE for 00 00, which is padding. */
gboolean unsoot_trouble_code_decode (guint8 first, guint8 second,
                                     char code[UNSOOT_TROUBLE_CODE_SIZE]);
