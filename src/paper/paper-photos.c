/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-photos.h"

#include <glib/gi18n-lib.h>

#include "page-block.h"
#include "page-picture.h"
#include "page-text.h"
#include "photo-pair.h"

#define PICTURE_HEIGHT 190.0
#define GAP 12.0

/* As high as the picture comes out at that width, and no higher than a third of a page. */
static double
picture_height (const UnsootPhotoRow *photo, double width)
{
  if (photo == NULL)
    return 0;
  if (photo->width <= 0 || photo->height <= 0)
    return PICTURE_HEIGHT;
  return MIN (PICTURE_HEIGHT, width * (double) photo->height / (double) photo->width);
}

static void
draw_photo (UnsootPageKit *kit, const UnsootPhotoRow *photo, const char *angle, const char *stage,
            double x, double width, double height)
{
  /* Translators: what a picture shows, "before" or "after" */
  g_autofree char *caption = g_strdup_printf (_ ("%s, %s"), angle, stage);
  g_autofree char *clipped = unsoot_page_clip (kit, &unsoot_text_small, caption, width);

  if (photo != NULL)
    unsoot_page_picture (kit, photo->jpeg, caption, x, kit->y, width, height);
  else
    unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, x, kit->y + 9,
                       _ ("No picture was taken."));
  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, x, kit->y + height + 12, clipped);
}

static void
draw_pair (UnsootPageKit *kit, gconstpointer data)
{
  const UnsootPhotoPair *pair = data;
  const double width = (unsoot_page_width (kit) - GAP) / 2.0;
  const double height
      = MAX (picture_height (pair->before, width), picture_height (pair->after, width));

  draw_photo (kit, pair->before, pair->angle, _ ("before"), kit->left, width, height);
  draw_photo (kit, pair->after, pair->angle, _ ("after"), kit->left + width + GAP, width, height);
  kit->y += height + 24;
}

void
unsoot_paper_photos (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autoptr (GArray) pairs = unsoot_photo_pairs (file->photos);

  if (pairs->len == 0)
    return;
  unsoot_page_heading (kit, _ ("Pictures"), PICTURE_HEIGHT + 24);
  for (guint i = 0; i < pairs->len; i++)
    unsoot_page_keep (kit, draw_pair, &g_array_index (pairs, UnsootPhotoPair, i), 0);
}
