/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "unit-text.h"

/* A volume as it stands on a delivery note: so many of a size. */
typedef struct
{
  gint64 count; /* 1 where a plain volume was typed */
  gint64 each_ml;
  gint64 ml; /* all together */
} UnsootPackText;

/**
 * unsoot_pack_text_parse:
 * @text: "5 L", "1 qt", "2 x 5 L", "3×1 gal"
 * @assumed: the unit where none is typed
 *
 * Each pack is rounded to whole mL, then multiplied.
 * Errors: those of unsoot_volume_parse (); INVALID for a count that is no whole number;
 * RANGE for more than a shop holds. Each names @text.
 */
gboolean unsoot_pack_text_parse (const char *text, UnsootUnit assumed, UnsootPackText *pack,
                                 GError **error);
