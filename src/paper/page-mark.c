/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-mark.h"

#include "page-draw.h"

#define DROP                                                                                       \
  "M 50 4 C 60 28 83 46 83 66 C 83 84 68 96 50 96 C 32 96 17 84 17 66 C 17 46 40 28 50 4 Z"

static const char *const waves[] = {
  "M 6 24 C 20 6 34 6 50 24 C 66 42 80 42 94 24",
  "M 6 52 C 20 34 34 34 50 52 C 66 70 80 70 94 52",
  "M 6 80 C 20 62 34 62 50 80 C 66 98 80 98 94 80",
};

const UnsootTone *
unsoot_page_side_tone (UnsootSide side)
{
  switch (side)
    {
    case UNSOOT_SIDE_FUEL:
      return &unsoot_tone_fuel;
    case UNSOOT_SIDE_INTAKE:
      return &unsoot_tone_intake;
    case UNSOOT_SIDE_NONE:
      break;
    }
  return &unsoot_tone_ink;
}

void
unsoot_page_side_mark (UnsootPageKit *kit, UnsootSide side, double x, double y, double square)
{
  if (side == UNSOOT_SIDE_FUEL)
    unsoot_page_figure (kit, DROP, x, y, square, &unsoot_tone_fuel);
  else if (side == UNSOOT_SIDE_INTAKE)
    for (gsize i = 0; i < G_N_ELEMENTS (waves); i++)
      unsoot_page_outline (kit, waves[i], x, y, square, 11, &unsoot_tone_intake);
}

void
unsoot_page_side_band (UnsootPageKit *kit, UnsootSide side, double x, double y, double width,
                       double height)
{
  const UnsootTone *tone = unsoot_page_side_tone (side);

  if (side == UNSOOT_SIDE_INTAKE)
    {
      unsoot_page_hatch (kit, x, y, width, height, 4.6, 1.3, tone);
      unsoot_page_box (kit, x, y, width, height, 0, NULL, tone, 0.6);
    }
  else
    unsoot_page_box (kit, x, y, width, height, 0, tone, NULL, 0);
}

void
unsoot_page_warning_mark (UnsootPageKit *kit, double x, double y, double square,
                          const UnsootTone *tone)
{
  unsoot_page_outline (kit, "M 50 14 L 92 88 L 8 88 Z", x, y, square, 12, tone);
  unsoot_page_outline (kit, "M 50 42 L 50 62", x, y, square, 11, tone);
  unsoot_page_outline (kit, "M 50 76 L 50 76.5", x, y, square, 11, tone);
}
