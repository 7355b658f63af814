/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A picture ready for the page and the book: read and written anew, because the PDF library trusts
 * whatever it is given. */
typedef struct
{
  GBytes *jpeg;
  guint width, height;
} UnsootPicture;

/* Reads a picture of any usual format and writes it as JPEG, at most 1200 pixels a side and
 * turned as the camera was held (EXIF orientation); nothing else of the file is kept.
 * FALSE where it can't be read. */
gboolean unsoot_picture_read (UnsootPicture *picture, GBytes *data);
void unsoot_picture_clear (UnsootPicture *picture);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootPicture, unsoot_picture_clear)

G_END_DECLS
