/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "page-drawing.h"

#include "page-draw.h"
#include "page-text.h"

#define HATCH_GAP 4.0
#define HATCH_WEIGHT 0.8
#define LINE_SHARE 0.75 /* a pixel's line in points */
#define BASELINE 3.0    /* from the middle of the small type to its foot */

static const UnsootTone *
tone_of (UnsootInk ink)
{
  switch (ink)
    {
    case UNSOOT_INK_TEXT:
      return &unsoot_tone_ink;
    case UNSOOT_INK_LABEL:
      return &unsoot_tone_grey;
    case UNSOOT_INK_GRID:
      return &unsoot_tone_rule;
    case UNSOOT_INK_ACCENT:
      return &unsoot_tone_accent;
    case UNSOOT_INK_FUEL:
      return &unsoot_tone_fuel;
    case UNSOOT_INK_INTAKE:
      return &unsoot_tone_intake;
    case UNSOOT_INK_WARNING:
      return &unsoot_tone_danger;
    }
  g_assert_not_reached ();
}

/* As it looks on white, so that the file needs no transparency. */
static UnsootTone
thinned (const UnsootTone *tone, float share)
{
  return (UnsootTone){ 1 - (1 - tone->red) * share, 1 - (1 - tone->green) * share,
                       1 - (1 - tone->blue) * share };
}

static UnsootPoint *
placed (const UnsootPageKit *kit, const UnsootStroke *stroke)
{
  UnsootPoint *points = g_new (UnsootPoint, stroke->n);

  for (gsize i = 0; i < stroke->n; i++)
    points[i] = (UnsootPoint){ kit->left + stroke->points[i].x, kit->y + stroke->points[i].y };
  return points;
}

static void
paint_text (UnsootPageKit *kit, const UnsootStroke *stroke, const UnsootPoint *at)
{
  const UnsootTextStyle style
      = { unsoot_text_small.size, unsoot_text_small.leading, FALSE, tone_of (stroke->ink) };
  const double width = unsoot_page_text_width (kit, &style, stroke->text);

  unsoot_page_write (kit, &style, UNSOOT_ALIGN_LEFT, at->x - width * stroke->align,
                     at->y + BASELINE, stroke->text);
}

static void
paint_arrow (UnsootPageKit *kit, const UnsootStroke *stroke, const UnsootPoint *tip)
{
  const double down = stroke->kind == UNSOOT_STROKE_UP ? stroke->weight : -stroke->weight;
  const double half = stroke->weight / 2;
  const UnsootPoint corners[]
      = { *tip, { tip->x - half, tip->y + down }, { tip->x + half, tip->y + down } };

  unsoot_page_area (kit, corners, G_N_ELEMENTS (corners), tone_of (stroke->ink));
}

static void
paint_stroke (UnsootPageKit *kit, const UnsootStroke *stroke)
{
  const UnsootTone *tone = tone_of (stroke->ink);
  const UnsootTone thin = thinned (tone, (float) stroke->weight);
  g_autofree UnsootPoint *points = placed (kit, stroke);
  const double r = stroke->weight;

  switch (stroke->kind)
    {
    case UNSOOT_STROKE_LINE:
    case UNSOOT_STROKE_DASHES:
      unsoot_page_path (kit, points, stroke->n, stroke->weight * LINE_SHARE,
                        stroke->kind == UNSOOT_STROKE_DASHES, tone);
      break;
    case UNSOOT_STROKE_AREA:
      unsoot_page_area (kit, points, stroke->n, &thin);
      break;
    case UNSOOT_STROKE_HATCH:
      unsoot_page_hatch_area (kit, points, stroke->n, HATCH_GAP, HATCH_WEIGHT, tone);
      break;
    case UNSOOT_STROKE_TEXT:
      paint_text (kit, stroke, points);
      break;
    case UNSOOT_STROKE_DISC:
      unsoot_page_box (kit, points->x - r, points->y - r, 2 * r, 2 * r, r, tone, NULL, 0);
      break;
    case UNSOOT_STROKE_RING:
      unsoot_page_box (kit, points->x - r, points->y - r, 2 * r, 2 * r, r, &unsoot_tone_white, tone,
                       1);
      break;
    case UNSOOT_STROKE_UP:
    case UNSOOT_STROKE_DOWN:
      paint_arrow (kit, stroke, points);
      break;
    }
}

void
unsoot_page_drawing (UnsootPageKit *kit, const UnsootDrawing *drawing)
{
  unsoot_page_need (kit, drawing->height);
  for (guint i = 0; i < drawing->strokes->len; i++)
    paint_stroke (kit, g_ptr_array_index (drawing->strokes, i));
  kit->y += drawing->height;
}
