/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "code128.h"
#include "page-block.h"
#include "page-draw.h"

/* 0.33 mm: wide enough for a simple hand scanner and an office printer. Common practice,
 * no source. */
#define MODULE (0.33 * UNSOOT_MM)

double
unsoot_page_barcode_width (const char *text)
{
  g_autoptr (GByteArray) symbols = unsoot_code128_encode (text, UNSOOT_CODE128_AUTO, NULL);

  return symbols != NULL ? (unsoot_code128_modules (symbols) + 2.0 * UNSOOT_CODE128_QUIET) * MODULE
                         : 0;
}

gboolean
unsoot_page_barcode (UnsootPageKit *kit, const char *text, double right, double top, double height,
                     GError **error)
{
  static const UnsootTone black = { 0, 0, 0 };
  g_autoptr (GByteArray) symbols = unsoot_code128_encode (text, UNSOOT_CODE128_AUTO, error);
  g_autoptr (GByteArray) widths = NULL;
  double x, modules;

  if (symbols == NULL)
    return FALSE;
  widths = unsoot_code128_widths (symbols);
  modules = unsoot_code128_modules (symbols);
  x = right - modules * MODULE;
  for (guint i = 0; i < widths->len; i++)
    {
      const double width = widths->data[i] * MODULE;

      if (i % 2 == 0)
        unsoot_page_box (kit, x, top, width, height, 0, &black, NULL, 0);
      x += width;
    }
  return TRUE;
}
