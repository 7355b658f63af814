/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-picture.h"

#include <glib/gi18n-lib.h>

#include "page-draw.h"
#include "page-text.h"
#include "picture-file.h"

static void
draw_missing (UnsootPageKit *kit, const char *what, double x, double y, double width, double height)
{
  /* Translators: which picture: "EGR valve, before" */
  g_autofree char *sentence
      = g_strdup_printf (_ ("The picture “%s” is damaged and can't be shown."), what);
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, &unsoot_text_small, sentence, width - 18);

  unsoot_page_box (kit, x, y, width, height, 3, &unsoot_tone_tint, &unsoot_tone_rule, 0.6);
  unsoot_page_write_lines (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, x + 9, y + 9, lines);
  if (unsoot_page_draws (kit))
    unsoot_page_remark (kit, g_steal_pointer (&sentence));
}

static void
draw_picture (UnsootPageKit *kit, const UnsootPicture *picture, double x, double y, double width,
              double height)
{
  const double scale = MIN (width / picture->width, height / picture->height);
  gsize size;
  const guint8 *data = g_bytes_get_data (picture->jpeg, &size);
  HPDF_Image image;

  if (!unsoot_page_draws (kit))
    return;
  image = HPDF_LoadJpegImageFromMem (kit->doc, data, (HPDF_UINT) size);
  if (image != NULL)
    HPDF_Page_DrawImage (
        kit->page, image, (HPDF_REAL) x, (HPDF_REAL) (kit->height - y - picture->height * scale),
        (HPDF_REAL) (picture->width * scale), (HPDF_REAL) (picture->height * scale));
}

void
unsoot_page_picture (UnsootPageKit *kit, GBytes *data, const char *what, double x, double y,
                     double width, double height)
{
  UnsootPicture picture = { NULL };

  if (!unsoot_page_draws (kit))
    return;
  if (unsoot_picture_read (&picture, data))
    draw_picture (kit, &picture, x, y, width, height);
  else
    draw_missing (kit, what, x, y, width, height);
  unsoot_picture_clear (&picture);
}
