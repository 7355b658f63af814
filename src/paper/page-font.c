/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-font.h"

#include <glib/gi18n-lib.h>

#include "paper-error.h"

static FcFontSet *
list_faces (gboolean bold)
{
  FcPattern *pattern
      = FcPatternBuild (NULL, FC_FAMILY, FcTypeString, UNSOOT_PAGE_FAMILY, FC_WEIGHT, FcTypeInteger,
                        bold ? FC_WEIGHT_BOLD : FC_WEIGHT_REGULAR, FC_SLANT, FcTypeInteger,
                        FC_SLANT_ROMAN, FC_WIDTH, FcTypeInteger, FC_WIDTH_NORMAL, FC_VARIABLE,
                        FcTypeBool, FcFalse, FC_FONTFORMAT, FcTypeString, "TrueType", NULL);
  FcObjectSet *wanted = FcObjectSetBuild (FC_FILE, FC_CHARSET, NULL);
  FcFontSet *faces = FcFontList (NULL, pattern, wanted);

  FcObjectSetDestroy (wanted);
  FcPatternDestroy (pattern);
  return faces;
}

/* Of several copies the first by path, so that the same paper comes out twice. */
static void
take_first (UnsootPageFont *font, const FcFontSet *faces)
{
  for (int i = 0; faces != NULL && i < faces->nfont; i++)
    {
      FcChar8 *file = NULL;
      FcCharSet *charset = NULL;

      if (FcPatternGetString (faces->fonts[i], FC_FILE, 0, &file) != FcResultMatch
          || FcPatternGetCharSet (faces->fonts[i], FC_CHARSET, 0, &charset) != FcResultMatch
          || (font->file != NULL && g_strcmp0 (font->file, (const char *) file) <= 0))
        continue;
      unsoot_page_font_clear (font);
      font->file = g_strdup ((const char *) file);
      font->charset = FcCharSetCopy (charset);
    }
}

gboolean
unsoot_page_font_find (UnsootPageFont *font, gboolean bold, GError **error)
{
  FcFontSet *faces = list_faces (bold);

  take_first (font, faces);
  if (faces != NULL)
    FcFontSetDestroy (faces);
  if (font->file != NULL && g_file_test (font->file, G_FILE_TEST_IS_REGULAR))
    return TRUE;
  g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_FONT,
               /* Translators: font family, its weight */
               _ ("Papers need the font %s %s, which is not on this computer; install the package "
                  "fonts-noto-core."),
               UNSOOT_PAGE_FAMILY, bold ? "Bold" : "Regular");
  return FALSE;
}

void
unsoot_page_font_clear (UnsootPageFont *font)
{
  g_clear_pointer (&font->file, g_free);
  g_clear_pointer (&font->charset, FcCharSetDestroy);
}

static gboolean
script_is_plain (gunichar character)
{
  const GUnicodeScript script = g_unichar_get_script (character);

  return script == G_UNICODE_SCRIPT_LATIN || script == G_UNICODE_SCRIPT_GREEK
         || script == G_UNICODE_SCRIPT_CYRILLIC || script == G_UNICODE_SCRIPT_COMMON;
}

gboolean
unsoot_page_font_has (const UnsootPageFont *font, gunichar character)
{
  return character >= ' ' && character <= 0xFFFF && script_is_plain (character)
         && FcCharSetHasChar (font->charset, character);
}
