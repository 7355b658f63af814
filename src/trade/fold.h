/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/**
 * unsoot_fold:
 * @text: UTF-8 as a person typed it
 *
 * The form in which text is searched: case folded, compatibility forms
 * resolved (NFKD), marks and unseen characters dropped, letters that Unicode
 * does not take apart written out (ł l, ø o, đ d, ð d, ı i, æ ae, œ oe, þ th,
 * ß ss), runs of spaces made one. Folding twice changes nothing.
 *
 * Errors: UNSOOT_TRADE_ERROR_INVALID where @text is not UTF-8, with the byte.
 */
char *unsoot_fold (const char *text, GError **error);

/* Folded and reduced to letters and digits: plates, VINs, phones, lots. Errors as above. */
char *unsoot_fold_compact (const char *text, GError **error);
