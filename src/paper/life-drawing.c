/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "life-drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "civil-words.h"
#include "drawing-scale.h"
#include "student.h"

#define LEFT 76.0
#define RIGHT 14.0
#define TOP 20.0
#define BOTTOM 46.0 /* the sides' marks, and the months under them */
#define MARK 4.0
#define SPOT 9.0

enum
{
  BAND_POINTS = 33,
  FEWEST_FOR_LINE = 3,
  LINES_MOST = 5,
  DAYS_AROUND = 30
};

/* What is needed again and again while it is drawn. */
typedef struct
{
  UnsootDrawing *drawing;
  const UnsootLife *life;
  UnsootScale along; /* days */
  UnsootScale up;    /* in the unit that is shown */
  UnsootTrend line;
  gboolean has_line;
  int first_due, last_due; /* 0: no window */
} Plot;

static double
shown (const UnsootLife *life, gint64 value)
{
  return unsoot_unit_from_si (life->unit, (double) value);
}

static char *
meter_words (double value, gconstpointer data)
{
  const UnsootLife *life = data;

  return unsoot_unit_format (unsoot_unit_to_si (life->unit, value), life->unit, 0);
}

/* The line through what is shown, so that it and the scale have one unit. */
static void
fit_line (Plot *plot)
{
  const UnsootMeter *meter = &plot->life->meter;
  g_autofree UnsootPoint *points = g_new (UnsootPoint, meter->n_points);

  for (gsize i = 0; i < meter->n_points; i++)
    points[i] = (UnsootPoint){ meter->points[i].day, shown (plot->life, meter->points[i].value) };
  plot->has_line = meter->n_points >= FEWEST_FOR_LINE
                   && unsoot_fit_line (points, meter->n_points, &plot->line);
}

static void
stretch (UnsootScale *scale, double value)
{
  scale->low = MIN (scale->low, value);
  scale->high = MAX (scale->high, value);
}

static void
find_days (Plot *plot)
{
  const UnsootLife *life = plot->life;

  plot->along.low = plot->along.high = life->today;
  for (gsize i = 0; i < life->meter.n_points; i++)
    stretch (&plot->along, life->meter.points[i].day);
  for (guint i = 0; i < life->services->len; i++)
    stretch (&plot->along, g_array_index (life->services, UnsootLifeService, i).day);
  stretch (&plot->along, MAX (plot->last_due, MAX (plot->first_due, life->due)));
  plot->along.low -= DAYS_AROUND;
  plot->along.high += DAYS_AROUND;
}

static double
half_band (const Plot *plot, double day)
{
  return unsoot_student_quantile ((1 + UNSOOT_LIFE_SHARE) / 2, (int) plot->line.n - 2)
         * unsoot_fit_scatter (&plot->line, day);
}

static void
find_heights (Plot *plot)
{
  const UnsootLife *life = plot->life;
  double low = INFINITY, high = -INFINITY;

  for (gsize i = 0; i < life->meter.n_points; i++)
    {
      low = MIN (low, shown (life, life->meter.points[i].value));
      high = MAX (high, shown (life, life->meter.points[i].value));
    }
  if (life->target > 0)
    high = MAX (high, shown (life, life->target));
  if (plot->has_line)
    high = MAX (high, unsoot_fit_at (&plot->line, plot->along.high));
  plot->up = isfinite (low)
                 ? unsoot_scale_round (low, high, LINES_MOST, plot->up.start, plot->up.end)
                 : (UnsootScale){ 0, 1, plot->up.start, plot->up.end };
}

static double
x_of (const Plot *plot, double day)
{
  return unsoot_scale_at (&plot->along, day);
}

/* The days between which the next is due, over the whole height. */
static void
draw_due (const Plot *plot)
{
  const double first = x_of (plot, plot->first_due > 0 ? plot->first_due : plot->life->due);
  const double last = x_of (plot, plot->last_due > 0 ? plot->last_due : plot->along.high);
  const double top = plot->up.end, height = plot->up.start - plot->up.end;
  const double middle = x_of (plot, plot->life->due);
  g_autofree char *day = NULL;

  if (plot->life->due == 0)
    return;
  day = unsoot_day_words (plot->life->due);
  if (plot->first_due > 0)
    unsoot_drawing_box (plot->drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_WARNING, 0.13, first, top,
                        MAX (last - first, 2), height);
  unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_DASHES, UNSOOT_INK_WARNING, 1.5, middle, top,
                       middle, plot->up.start);
  unsoot_drawing_text (plot->drawing, UNSOOT_INK_WARNING, middle > plot->drawing->width / 2 ? 1 : 0,
                       middle, top - 10, _ ("next due"));
  unsoot_drawing_spot (plot->drawing, MIN (first, middle) - SPOT, top,
                       MAX (last - first, 0) + 2 * SPOT, height,
                       g_strdup_printf (_ ("Next due about %s"), day));
}

static void
draw_band (const Plot *plot)
{
  const double from = plot->along.low + DAYS_AROUND, to = plot->along.high;
  UnsootPoint band[2 * BAND_POINTS], middle[BAND_POINTS];

  if (!plot->has_line)
    return;
  for (int i = 0; i < BAND_POINTS; i++)
    {
      const double day = from + (to - from) * i / (BAND_POINTS - 1);
      const double at = unsoot_fit_at (&plot->line, day), half = half_band (plot, day);

      band[i] = (UnsootPoint){ x_of (plot, day), unsoot_scale_at (&plot->up, at + half) };
      band[2 * BAND_POINTS - 1 - i]
          = (UnsootPoint){ x_of (plot, day), unsoot_scale_at (&plot->up, at - half) };
      middle[i] = (UnsootPoint){ x_of (plot, day), unsoot_scale_at (&plot->up, at) };
    }
  unsoot_drawing_add (plot->drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_ACCENT, 0.12, band,
                      G_N_ELEMENTS (band));
  unsoot_drawing_add (plot->drawing, UNSOOT_STROKE_DASHES, UNSOOT_INK_ACCENT, 1.5, middle,
                      G_N_ELEMENTS (middle));
}

static void
draw_readings (const Plot *plot)
{
  const UnsootLife *life = plot->life;

  for (gsize i = 0; i < life->meter.n_points; i++)
    {
      const UnsootMeterPoint *point = &life->meter.points[i];
      const double x = x_of (plot, point->day);
      const double y = unsoot_scale_at (&plot->up, shown (life, point->value));
      g_autofree char *day = unsoot_day_words (point->day);
      g_autofree char *words = meter_words (shown (life, point->value), life);

      unsoot_drawing_mark (plot->drawing, UNSOOT_STROKE_DISC, UNSOOT_INK_ACCENT, 3, x, y);
      /* Translators: a day, and the odometer or hours on it */
      unsoot_drawing_spot (plot->drawing, x - SPOT, y - SPOT, 2 * SPOT, 2 * SPOT,
                           g_strdup_printf (_ ("%s: %s"), day, words));
    }
}

static const char *
sides_words (const UnsootLifeService *service)
{
  if (service->fuel && service->intake)
    return _ ("both sides");
  if (service->fuel)
    return _ ("fuel side");
  return service->intake ? _ ("intake side") : _ ("no side");
}

/* Solid for the fuel side, hatched for the intake, above each other: shape as well as colour. */
static void
draw_services (const Plot *plot)
{
  const double floor_y = plot->up.start;

  for (guint i = 0; i < plot->life->services->len; i++)
    {
      const UnsootLifeService *service
          = &g_array_index (plot->life->services, UnsootLifeService, i);
      const double x = x_of (plot, service->day);
      g_autofree char *day = unsoot_day_words (service->day);

      unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_LABEL, 1, x, plot->up.end,
                           x, floor_y);
      if (service->fuel)
        unsoot_drawing_box (plot->drawing, UNSOOT_STROKE_AREA, UNSOOT_INK_FUEL, 1, x - MARK,
                            floor_y + 4, 2 * MARK, 2 * MARK);
      if (service->intake)
        {
          unsoot_drawing_box (plot->drawing, UNSOOT_STROKE_HATCH, UNSOOT_INK_INTAKE, 2, x - MARK,
                              floor_y + 14, 2 * MARK, 2 * MARK);
          unsoot_drawing_box (plot->drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_INTAKE, 1, x - MARK,
                              floor_y + 14, 2 * MARK, 2 * MARK);
        }
      /* Translators: a day, a job's number, and which sides were cleaned */
      unsoot_drawing_spot (
          plot->drawing, x - SPOT, floor_y, 2 * SPOT, 26,
          g_strdup_printf (_ ("%s: job %d, %s"), day, service->job_number, sides_words (service)));
    }
}

static void
draw_today (const Plot *plot)
{
  const double x = x_of (plot, plot->life->today);

  unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_TEXT, 1, x, plot->up.end - 4,
                       x, plot->up.start);
  if (plot->life->due == 0 || fabs (x_of (plot, plot->life->due) - x) > 60)
    unsoot_drawing_text (plot->drawing, UNSOOT_INK_TEXT, 0.5, x, plot->up.end - 10, _ ("today"));
}

UnsootDrawing *
unsoot_life_drawing_new (const UnsootLife *life, double width, double height)
{
  Plot plot = { .drawing = unsoot_drawing_new (width, height), .life = life };

  plot.along.start = LEFT;
  plot.along.end = MAX (width - RIGHT, LEFT + 1);
  plot.up.start = MAX (height - BOTTOM, TOP + 1);
  plot.up.end = TOP;
  if (life->target > 0)
    unsoot_due_window (&life->meter, life->target, life->today, UNSOOT_LIFE_SHARE, &plot.first_due,
                       &plot.last_due);
  fit_line (&plot);
  find_days (&plot);
  find_heights (&plot);
  unsoot_scale_draw_lines (plot.drawing, &plot.up, LINES_MOST, LEFT, plot.along.end, meter_words,
                           life);
  unsoot_scale_draw_days (plot.drawing, &plot.along, TOP, plot.up.start + 18);
  draw_due (&plot);
  draw_band (&plot);
  draw_services (&plot);
  draw_readings (&plot);
  draw_today (&plot);
  return plot.drawing;
}
