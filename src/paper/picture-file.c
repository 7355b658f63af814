/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-file.h"

#include <gdk-pixbuf/gdk-pixbuf.h>
#include <string.h>

#define MOST_PIXELS 1200
#define QUALITY "85"

/* Asked before any pixel is made: a huge picture costs no memory. */
static void
size_prepared_cb (GdkPixbufLoader *loader, int width, int height, gpointer data)
{
  const int longest = MAX (width, height);

  if (longest > MOST_PIXELS)
    gdk_pixbuf_loader_set_size (loader, MAX (1, (int) ((gint64) width * MOST_PIXELS / longest)),
                                MAX (1, (int) ((gint64) height * MOST_PIXELS / longest)));
}

/* Readers show what there is of a file that breaks off; its closing mark tells. JPEG: ISO/IEC
 * 10918-1, EOI; PNG: ISO/IEC 15948, IEND with its check sum. */
static gboolean
is_whole (GBytes *bytes)
{
  static const guint8 png_end[] = { 'I', 'E', 'N', 'D', 0xAE, 0x42, 0x60, 0x82 };
  gsize size;
  const guint8 *data = g_bytes_get_data (bytes, &size);

  if (size > 4 && data[0] == 0xFF && data[1] == 0xD8)
    return data[size - 2] == 0xFF && data[size - 1] == 0xD9;
  if (size > sizeof png_end && data[0] == 0x89 && data[1] == 'P')
    return memcmp (data + size - sizeof png_end, png_end, sizeof png_end) == 0;
  return size > 0;
}

static GdkPixbuf *
read_pixels (GBytes *data)
{
  g_autoptr (GdkPixbufLoader) loader = gdk_pixbuf_loader_new ();
  gboolean whole;

  g_signal_connect (loader, "size-prepared", G_CALLBACK (size_prepared_cb), NULL);
  whole = gdk_pixbuf_loader_write_bytes (loader, data, NULL);
  whole = gdk_pixbuf_loader_close (loader, NULL) && whole;
  if (!whole || gdk_pixbuf_loader_get_pixbuf (loader) == NULL)
    return NULL;
  return gdk_pixbuf_apply_embedded_orientation (gdk_pixbuf_loader_get_pixbuf (loader));
}

gboolean
unsoot_picture_read (UnsootPicture *picture, GBytes *data)
{
  g_autoptr (GdkPixbuf) pixels = data != NULL && is_whole (data) ? read_pixels (data) : NULL;
  char *buffer = NULL;
  gsize size = 0;

  if (pixels == NULL
      || !gdk_pixbuf_save_to_buffer (pixels, &buffer, &size, "jpeg", NULL, "quality", QUALITY,
                                     NULL))
    return FALSE;
  picture->jpeg = g_bytes_new_take (buffer, size);
  picture->width = (guint) gdk_pixbuf_get_width (pixels);
  picture->height = (guint) gdk_pixbuf_get_height (pixels);
  return TRUE;
}

void
unsoot_picture_clear (UnsootPicture *picture)
{
  g_clear_pointer (&picture->jpeg, g_bytes_unref);
}
