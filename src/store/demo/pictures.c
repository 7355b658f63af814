/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pictures.h"

#include <math.h>

/* A look into an intake port, drawn by arithmetic: a metal bore with a valve stem, and a
 * crust of soot that grows inwards from the wall. */

#define WIDTH 640
#define HEIGHT 480

/* Noise of the crust: a few waves around the bore and along it, the same for both pictures
 * of a pair, so that they show the same port. */
static double
crust_noise (double angle, double radius, guint port)
{
  return 0.5 * sin (angle * 5 + port) + 0.3 * sin (angle * 11 + radius * 7 + 2.0 * port)
         + 0.2 * sin (angle * 23 - radius * 17) + 0.15 * sin (angle * 41 + radius * 31 + port);
}

typedef struct
{
  double red;
  double green;
  double blue;
} Tone;

static Tone
mix (Tone a, Tone b, double share)
{
  share = CLAMP (share, 0.0, 1.0);
  return (Tone){ a.red + (b.red - a.red) * share, a.green + (b.green - a.green) * share,
                 a.blue + (b.blue - a.blue) * share };
}

static Tone
tone_at (double x, double y, double soot, guint port)
{
  static const Tone metal = { 178, 182, 186 }, dark = { 22, 22, 24 }, crust = { 34, 30, 28 };
  double radius = hypot (x, y * 1.06), angle = atan2 (y, x);
  double light = 0.72 + 0.28 * sin (angle - 0.9);
  double wall = 0.96 + 0.012 * sin (angle * 3 + port);
  double grain = 0.03 * sin (x * 310 + sin (y * 190) * 3) + 0.02 * sin (y * 420 + port);

  if (radius > wall)
    return mix (mix (metal, dark, 0.25), dark, 0.35 + 0.4 * (radius - wall) - grain);
  Tone bore = mix (dark, metal, (0.18 + 0.82 * pow (radius / wall, 2.2)) * light + grain);
  double depth = soot * (0.42 + 0.16 * crust_noise (angle, radius, port));
  double cover = (radius - (wall - depth)) / 0.05;
  Tone sooty
      = mix (crust, dark, 0.5 - 0.5 * light * (0.7 + 0.3 * crust_noise (angle * 3, radius, port)));
  Tone seen = mix (bore, sooty, cover * (soot > 0.0 ? 1.0 : 0.0));
  /* What is left everywhere is a brown film. */
  seen = mix (seen, (Tone){ 74, 58, 44 }, 0.25 * soot + 0.06);
  if (fabs (x - 0.12 * y - 0.05) < 0.085 && y < 0.35)
    seen = mix (mix (metal, dark, 0.3 + 3.5 * fabs (x - 0.12 * y - 0.05)), crust, soot * 0.85);
  return seen;
}

GBytes *
unsoot_demo_picture (double soot, guint port, int *width, int *height, GError **error)
{
  g_autoptr (GdkPixbuf) pixbuf = gdk_pixbuf_new (GDK_COLORSPACE_RGB, FALSE, 8, WIDTH, HEIGHT);
  guchar *pixels = gdk_pixbuf_get_pixels (pixbuf);
  int stride = gdk_pixbuf_get_rowstride (pixbuf);
  char *jpeg = NULL;
  gsize length = 0;

  for (int row = 0; row < HEIGHT; row++)
    for (int column = 0; column < WIDTH; column++)
      {
        Tone tone = tone_at ((column - WIDTH / 2) / 215.0, (row - HEIGHT / 2) / 215.0, soot, port);
        guchar *pixel = pixels + (gsize) row * (gsize) stride + (gsize) column * 3;

        pixel[0] = (guchar) CLAMP (tone.red, 0, 255);
        pixel[1] = (guchar) CLAMP (tone.green, 0, 255);
        pixel[2] = (guchar) CLAMP (tone.blue, 0, 255);
      }
  if (!gdk_pixbuf_save_to_buffer (pixbuf, &jpeg, &length, "jpeg", error, "quality", "82", NULL))
    return NULL;
  *width = WIDTH;
  *height = HEIGHT;
  return g_bytes_new_take (jpeg, length);
}
