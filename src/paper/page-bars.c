/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-bars.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "page-draw.h"
#include "page-text.h"

#define TITLE_SHARE 0.30
#define NAME_WIDTH 42.0
#define FIGURE_WIDTH 78.0
#define BAR 11.0

/* The scale of one pair: from the lowest to the highest that bars or whiskers reach. */
typedef struct
{
  double left, width; /* on the page */
  double low, high;
} Scale;

static Scale
scale_of (const UnsootPageKit *kit, const UnsootBars *bars)
{
  const double start = unsoot_page_width (kit) * TITLE_SHARE + NAME_WIDTH;
  Scale scale = { kit->left + start, unsoot_page_width (kit) - start - FIGURE_WIDTH, 0, 0 };

  scale.low
      = MIN (0, MIN (bars->before - bars->before_tolerance, bars->after - bars->after_tolerance));
  scale.high
      = MAX (0, MAX (bars->before + bars->before_tolerance, bars->after + bars->after_tolerance));
  if (MIN (bars->before, bars->after) >= 0)
    scale.low = 0;
  if (scale.high <= scale.low)
    scale.high = scale.low + 1;
  return scale;
}

static double
place (const Scale *scale, double value)
{
  const double share = (value - scale->low) / (scale->high - scale->low);

  return scale->left + CLAMP (share, 0, 1) * scale->width;
}

static void
draw_whisker (UnsootPageKit *kit, const Scale *scale, double value, double tolerance, double top)
{
  const double from = place (scale, value - tolerance), to = place (scale, value + tolerance);
  const double middle = top + BAR / 2.0;

  if (!(tolerance > 0))
    return;
  unsoot_page_rule (kit, from, to, middle, 2.4, &unsoot_tone_white);
  unsoot_page_rule (kit, from, to, middle, 1.0, &unsoot_tone_ink);
  unsoot_page_line (kit, from, middle - 3, from, middle + 3, 1.0, &unsoot_tone_ink);
  unsoot_page_line (kit, to, middle - 3, to, middle + 3, 1.0, &unsoot_tone_ink);
}

static void
draw_bar (UnsootPageKit *kit, const Scale *scale, double value, double top, gboolean after)
{
  const double zero = place (scale, 0), end = place (scale, value);
  const double x = MIN (zero, end), width = MAX (fabs (end - zero), 0.6);

  if (after)
    unsoot_page_box (kit, x, top, width, BAR, 0, &unsoot_tone_accent, NULL, 0);
  else
    {
      unsoot_page_hatch (kit, x, top, width, BAR, 3.6, 0.6, &unsoot_tone_grey);
      unsoot_page_box (kit, x, top, width, BAR, 0, NULL, &unsoot_tone_grey, 0.7);
    }
}

static void
draw_row (UnsootPageKit *kit, const UnsootBars *bars, const Scale *scale, gboolean after,
          double top)
{
  const double baseline = top + BAR - 2;
  const UnsootTextStyle *figure = after ? &unsoot_text_body_bold : &unsoot_text_body;
  const double value = after ? bars->after : bars->before;
  const double tolerance = after ? bars->after_tolerance : bars->before_tolerance;

  unsoot_page_write (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, scale->left - NAME_WIDTH, baseline,
                     after ? _ ("after") : _ ("before"));
  draw_bar (kit, scale, value, top, after);
  draw_whisker (kit, scale, value, tolerance, top);
  unsoot_page_write_figure (kit, figure, UNSOOT_ALIGN_RIGHT, kit->right, baseline,
                            after ? bars->after_text : bars->before_text, bars->unit);
}

/* Title and note beside the bars; gives their height. */
static double
draw_title (UnsootPageKit *kit, const UnsootBars *bars)
{
  const double width = unsoot_page_width (kit) * TITLE_SHARE - 12;
  const double top = kit->y + BAR - 2 - unsoot_text_baseline (&unsoot_text_body_bold);
  g_autoptr (GPtrArray) title = unsoot_page_wrap (kit, &unsoot_text_body_bold, bars->title, width);
  g_autoptr (GPtrArray) note = unsoot_page_wrap (kit, &unsoot_text_small, bars->note, width);
  double height = unsoot_page_write_lines (kit, &unsoot_text_body_bold, UNSOOT_ALIGN_LEFT,
                                           kit->left, top, title);

  height += unsoot_page_write_lines (kit, &unsoot_text_small, UNSOOT_ALIGN_LEFT, kit->left,
                                     top + height, note);
  return height;
}

double
unsoot_page_bars_height (UnsootPageKit *kit, const UnsootBars *bars)
{
  double height;

  kit->measuring++;
  height = draw_title (kit, bars);
  kit->measuring--;
  return MAX (height, 2 * BAR + 4) + 12;
}

void
unsoot_page_bars (UnsootPageKit *kit, const UnsootBars *bars)
{
  const Scale scale = scale_of (kit, bars);
  const double zero = place (&scale, 0);
  const double height = unsoot_page_bars_height (kit, bars);

  unsoot_page_need (kit, height);
  draw_title (kit, bars);
  draw_row (kit, bars, &scale, FALSE, kit->y);
  draw_row (kit, bars, &scale, TRUE, kit->y + BAR + 4);
  unsoot_page_line (kit, zero, kit->y - 2, zero, kit->y + 2 * BAR + 6, 0.8, &unsoot_tone_ink);
  kit->y += height;
}
