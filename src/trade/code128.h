/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Bar codes of lots, jobs and adapters: Code 128, ISO/IEC 15417. */

typedef enum
{
  UNSOOT_CODE128_AUTO, /* whichever start needs the fewest symbols */
  UNSOOT_CODE128_A,
  UNSOOT_CODE128_B,
  UNSOOT_CODE128_C,
} UnsootCode128Set;

/* Modules that must stay white on either side of the symbol. */
#define UNSOOT_CODE128_QUIET 10

/**
 * unsoot_code128_encode:
 * @text: ASCII, at least one character
 * @start: the set to start in; AUTO for the shortest symbol
 *
 * Returns: (transfer full): symbol values (guint8) from start to stop, with the
 * check symbol, as few as can be; or NULL and UNSOOT_TRADE_ERROR_INVALID.
 */
GByteArray *unsoot_code128_encode (const char *text, UnsootCode128Set start, GError **error);

/* The widths in modules, bar first, then space and bar by turns, ending in a bar. */
GByteArray *unsoot_code128_widths (const GByteArray *symbols);

/* All widths together, without the quiet zones. */
guint unsoot_code128_modules (const GByteArray *symbols);
