/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <fontconfig/fontconfig.h>
#include <glib.h>

/* The typeface of every paper: Noto Sans, whose figures all have one width. */
#define UNSOOT_PAGE_FAMILY "Noto Sans"

/* A font's file and the characters it has. */
typedef struct
{
  char *file;
  FcCharSet *charset;
} UnsootPageFont;

/* Finds the regular or bold face. Error: UNSOOT_PAPER_ERROR_FONT, naming the package. */
gboolean unsoot_page_font_find (UnsootPageFont *font, gboolean bold, GError **error);
void unsoot_page_font_clear (UnsootPageFont *font);

/* Whether @character comes out right: in the font, and of a script that needs no
 * shaping, which the PDF library does not do. */
gboolean unsoot_page_font_has (const UnsootPageFont *font, gunichar character);
