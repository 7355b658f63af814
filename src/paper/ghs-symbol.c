/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ghs-symbol.h"

#include "page-draw.h"

static const UnsootTone frame_red = { 0.80f, 0.0f, 0.05f };
static const UnsootTone black = { 0.0f, 0.0f, 0.0f };

/* Strokes of a symbol, in the order drawn: an area, or a line where weight is not 0. */
typedef struct
{
  const char *path;
  double weight;
  gboolean white;
} Stroke;

#define FLAME                                                                                      \
  "M 53 17 C 55 27 69 36 69 52 C 69 64 61 72 50 72 C 39 72 31 64 31 53 C 31 45 35 40 37 32 "       \
  "C 41 36 43 40 43 45 C 49 37 51 27 53 17 Z"
#define FLAME_HEART                                                                                \
  "M 51 44 C 53 52 60 55 60 62 C 60 67 55 70.5 50 70.5 C 45 70.5 41 67 41 62 C 41 56 48 53 51 44 Z"

static const Stroke flame[] = {
  { FLAME, 0, FALSE },
  { FLAME_HEART, 0, TRUE },
  { "M 34 75.5 L 66 75.5 L 66 79.5 L 34 79.5 Z", 0, FALSE },
  { NULL },
};

static const Stroke oxidiser[] = {
  { "M 52 15 C 53 22 64 28 64 40 C 64 49 58 55 50 55 C 42 55 36 49 36 41 C 36 35 39 31 40 26 "
    "C 43 29 45 32 45 35 C 49 30 51 22 52 15 Z",
    0, FALSE },
  { "M 51 36 C 52 42 57 44 57 48 C 57 52 54 54 50 54 C 46 54 43 51 43 48 C 43 44 49 42 51 36 Z", 0,
    TRUE },
  { "M 39 66 C 39 59.9 43.9 55 50 55 C 56.1 55 61 59.9 61 66 C 61 72.1 56.1 77 50 77 "
    "C 43.9 77 39 72.1 39 66 Z",
    6, FALSE },
  { "M 33 81 L 67 81", 4, FALSE },
  { NULL },
};

static const Stroke cylinder[] = {
  { "M 28 63 L 59 45", 17, FALSE },
  { "M 63 43 L 71 38.5", 8, FALSE },
  { "M 68.5 34.5 L 73 42.5", 4, FALSE },
  { "M 29 59 L 55 44", 2, TRUE },
  { NULL },
};

static const Stroke corrosion[] = {
  /* two tubes pouring, what drips from them, a bar and a hand eaten away */
  { "M 24 38 L 43 30", 8, FALSE },
  { "M 26 37.2 L 41 31", 3.5, TRUE },
  { "M 76 38 L 57 30", 8, FALSE },
  { "M 74 37.2 L 59 31", 3.5, TRUE },
  { "M 44.5 35 L 44.5 40", 2.6, FALSE },
  { "M 41 44 L 41 50", 2.6, FALSE },
  { "M 44.5 46 L 44.5 52", 2.6, FALSE },
  { "M 55.5 35 L 55.5 40", 2.6, FALSE },
  { "M 59 44 L 59 50", 2.6, FALSE },
  { "M 55.5 46 L 55.5 50", 2.6, FALSE },
  { "M 22 57 L 37 57 C 38 61 41 60 42 63 C 44 62 45 58 47 57 L 49 57 L 49 66 L 31 66 Z", 0, FALSE },
  { "M 52 60 L 55 57 C 57 60 59 55 61 57 C 63 59 64 57 66 57 L 77 55 L 79 57 L 70 64 L 62 68 "
    "L 52 68 Z",
    0, FALSE },
  { "M 33 72 L 67 72", 3, FALSE },
  { NULL },
};

static const Stroke skull[] = {
  { "M 33 62 L 67 78 M 67 62 L 33 78", 6, FALSE },
  { "M 50 19 C 63 19 70 27 70 38 C 70 45 66 48 63 51 L 62 59 L 38 59 L 37 51 C 34 48 30 45 30 38 "
    "C 30 27 37 19 50 19 Z",
    0, FALSE },
  { "M 37 40 C 37 37 39 35 42 35 C 45 35 46.5 37 46.5 40 C 46.5 43 45 45 42 45 C 39 45 37 43 37 40 "
    "Z M 53.5 40 C 53.5 37 55 35 58 35 C 61 35 63 37 63 40 C 63 43 61 45 58 45 C 55 45 53.5 43 "
    "53.5 40 Z M 50 45 L 53 51 L 47 51 Z",
    0, TRUE },
  { "M 44 55 L 44 60 M 50 55 L 50 60 M 56 55 L 56 60", 1.6, TRUE },
  { NULL },
};

static const Stroke exclamation[] = {
  { "M 50 20 C 56 20 58.5 24 58 30 L 54.5 58 L 45.5 58 L 42 30 C 41.5 24 44 20 50 20 Z", 0, FALSE },
  { "M 44 69.5 C 44 66.2 46.7 63.5 50 63.5 C 53.3 63.5 56 66.2 56 69.5 C 56 72.8 53.3 75.5 50 75.5 "
    "C 46.7 75.5 44 72.8 44 69.5 Z",
    0, FALSE },
  { NULL },
};

static const Stroke health[] = {
  { "M 41.5 26 C 41.5 21.3 45.3 17.5 50 17.5 C 54.7 17.5 58.5 21.3 58.5 26 C 58.5 30.7 54.7 36 50 "
    "36 C 45.3 36 41.5 30.7 41.5 26 Z",
    0, FALSE },
  { "M 44 35 L 56 35 C 58 40 71 40 71 50 L 71 68 L 58 82 L 42 82 L 29 68 L 29 50 C 29 40 42 40 44 "
    "35 Z",
    0, FALSE },
  { "M 50 44 L 51.8 54.3 L 60.6 48.7 L 54.7 56.7 L 65 59 L 54.7 61.3 L 60.6 69.3 L 51.8 63.7 L 50 "
    "74 L 48.2 63.7 L 39.4 69.3 L 45.3 61.3 L 35 59 L 45.3 56.7 L 39.4 48.7 L 48.2 54.3 Z",
    0, TRUE },
  { NULL },
};

static const Stroke environment[] = {
  /* a bare tree on the bank, a dead fish in the water */
  { "M 42 65 L 43 30", 5, FALSE },
  { "M 43 48 L 31 36 M 43 42 L 54 31 M 43 34 L 38 24 M 36.5 41.5 L 30 43 M 49 36 L 55 39", 2.6,
    FALSE },
  { "M 20 65 L 52 65 C 47 69 44 71 44 74 L 30 74 Z", 0, FALSE },
  { "M 53 63 C 58 54 70 54 76 60 L 81 54 L 80 66 L 76 63 C 70 69 59 70 53 63 Z", 0, FALSE },
  { "M 59 60 L 61 62 M 61 60 L 59 62", 1.4, TRUE },
  { "M 50 76 C 54 73 57 73 60 76 C 63 78 66 77 68 75", 2.4, FALSE },
  { NULL },
};

static const Stroke bomb[] = {
  /* a ball that bursts, its pieces flying */
  { "M 31 64 C 31 57.4 36.4 52 43 52 C 49.6 52 55 57.4 55 64 C 55 70.6 49.6 76 43 76 "
    "C 36.4 76 31 70.6 31 64 Z",
    0, FALSE },
  { "M 35 61 C 36 58 38 56 41 55", 1.8, TRUE },
  { "M 52 52 L 60 44 M 47 48 L 50 38 M 56 57 L 67 54 M 40 48 L 38 40 M 57 63 L 64 65", 2.4, FALSE },
  { "M 46 29 L 52 24 L 54 31 Z M 64 34 L 71 36 L 66 41 Z M 31 34 L 37 31 L 37 37 Z "
    "M 70 58 L 77 57 L 74 63 Z M 57 27 L 61 24 L 62 29 Z",
    0, FALSE },
  { NULL },
};

static const Stroke *
strokes_of (UnsootPictogram pictogram)
{
  switch (pictogram)
    {
    case UNSOOT_GHS01:
      return bomb;
    case UNSOOT_GHS02:
      return flame;
    case UNSOOT_GHS03:
      return oxidiser;
    case UNSOOT_GHS04:
      return cylinder;
    case UNSOOT_GHS05:
      return corrosion;
    case UNSOOT_GHS06:
      return skull;
    case UNSOOT_GHS07:
      return exclamation;
    case UNSOOT_GHS08:
      return health;
    case UNSOOT_GHS09:
      return environment;
    case UNSOOT_GHS_NONE:
      break;
    }
  return NULL;
}

void
unsoot_page_ghs (UnsootPageKit *kit, UnsootPictogram pictogram, double x, double y, double side)
{
  const Stroke *stroke = strokes_of (pictogram);

  if (stroke == NULL)
    return;
  unsoot_page_figure (kit, "M 50 1 L 99 50 L 50 99 L 1 50 Z", x, y, side, &frame_red);
  unsoot_page_figure (kit, "M 50 8.5 L 91.5 50 L 50 91.5 L 8.5 50 Z", x, y, side,
                      &unsoot_tone_white);
  for (; stroke->path != NULL; stroke++)
    {
      const UnsootTone *tone = stroke->white ? &unsoot_tone_white : &black;

      if (stroke->weight > 0)
        unsoot_page_outline (kit, stroke->path, x, y, side, stroke->weight, tone);
      else
        unsoot_page_figure (kit, stroke->path, x, y, side, tone);
    }
}
