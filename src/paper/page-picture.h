/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "page-kit.h"

G_BEGIN_DECLS

/* A picture ready for the page: read and written anew, because the PDF library trusts
 * whatever it is given. */
typedef struct
{
  GBytes *jpeg;
  guint width, height;
} UnsootPicture;

/* Reads a picture of any usual format and writes it as JPEG, at most 1200 pixels a side.
 * FALSE where it can't be read. */
gboolean unsoot_picture_read (UnsootPicture *picture, GBytes *data);
void unsoot_picture_clear (UnsootPicture *picture);

/* Draws a picture as large as it fits into a field of @width × @height, at its top left;
 * one that can't be read is said in a frame in its place, and remarked. @what names it. */
void unsoot_page_picture (UnsootPageKit *kit, GBytes *data, const char *what, double x, double y,
                          double width, double height);

G_END_DECLS
