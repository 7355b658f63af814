/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-scale.h"

#include <math.h>

#include "civil-words.h"
#include "civil.h"

#define LABEL_GAP 8.0
#define LABEL_BELOW 12.0
#define LABEL_ROOM 64.0 /* a day's name and some air */
#define LABEL_HALF 27.0 /* half a day's name */

double
unsoot_scale_at (const UnsootScale *scale, double value)
{
  const double share = (value - scale->low) / (scale->high - scale->low);

  return scale->start + CLAMP (share, 0, 1) * (scale->end - scale->start);
}

double
unsoot_scale_step (double span, int most)
{
  static const double steps[] = { 1, 2, 5 };
  const double least = span / most;
  double decade;

  g_return_val_if_fail (span > 0 && isfinite (span) && most > 0, 1);

  decade = pow (10, floor (log10 (least)));
  for (gsize i = 0; i < G_N_ELEMENTS (steps); i++)
    if (steps[i] * decade >= least * (1 - 1e-9))
      return steps[i] * decade;
  return 10 * decade;
}

UnsootScale
unsoot_scale_round (double low, double high, int most, double start, double end)
{
  double step, span = high - low;

  if (!(span > 0))
    span = fabs (high) > 0 ? fabs (high) : 1;
  step = unsoot_scale_step (span, most);
  low = floor (low / step + 1e-9) * step;
  high = ceil (high / step - 1e-9) * step;
  return (UnsootScale){ low, high > low ? high : low + step, start, end };
}

void
unsoot_scale_draw_lines (UnsootDrawing *drawing, const UnsootScale *up, int most, double left,
                         double right, UnsootScaleWords words, gconstpointer data)
{
  const double step = unsoot_scale_step (up->high - up->low, most);
  const int n = (int) floor ((up->high - up->low) / step + 1e-9);

  for (int i = 0; i <= n; i++)
    {
      const double value = up->low + i * step;
      const double y = unsoot_scale_at (up, value);
      g_autofree char *text = words (value, data);

      unsoot_drawing_line (drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_GRID, 1, left, y, right, y);
      unsoot_drawing_text (drawing, UNSOOT_INK_LABEL, 1, left - LABEL_GAP, y, text);
    }
}

/* Months from one name to the next: the least that leaves each its room. */
static int
months_apart (const UnsootScale *along)
{
  static const int choices[] = { 1, 2, 3, 6, 12, 24, 60, 120 };
  const double month = fabs (along->end - along->start) * 30.4 / (along->high - along->low);

  for (gsize i = 0; i < G_N_ELEMENTS (choices); i++)
    if (choices[i] * month >= LABEL_ROOM)
      return choices[i];
  return choices[G_N_ELEMENTS (choices) - 1];
}

void
unsoot_scale_draw_days (UnsootDrawing *drawing, const UnsootScale *along, double top, double bottom)
{
  const int apart = months_apart (along);
  int year, month, date, day;

  unsoot_day_split ((int) along->low, &year, &month, &date);
  day = unsoot_day (year, (month - 1) / apart * apart % 12 + 1, 1);
  for (; day > 0 && day <= along->high; day = unsoot_day_add_months (day, apart))
    {
      const double x = unsoot_scale_at (along, day);
      g_autofree char *words = NULL;

      if (day < along->low)
        continue;
      words = unsoot_day_month_words (day);
      unsoot_drawing_line (drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_GRID, 1, x, top, x, bottom);
      if (x + LABEL_HALF <= drawing->width)
        unsoot_drawing_text (drawing, UNSOOT_INK_LABEL, 0.5, x, bottom + LABEL_BELOW, words);
    }
}
