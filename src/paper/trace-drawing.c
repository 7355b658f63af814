/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "trace-drawing.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "dose.h"
#include "drawing-scale.h"
#include "unit.h"

#define LEFT 64.0
#define RIGHT 14.0
#define TITLE 22.0 /* above each of the two panels */
#define BOTTOM 26.0
#define GAP 10.0

enum
{
  LINES_MOST = 4,
  MINUTES_MOST = 8,
  CURVES = 4
};

/* One thing that is followed through a run. */
typedef struct
{
  UnsootInk ink;
  UnsootStrokeKind kind; /* solid for the fuel side, dashes for the intake side */
  double (*value) (const UnsootTracePoint *point); /* in the unit that is shown */
} Curve;

static double
fuel_litres (const UnsootTracePoint *point)
{
  return (double) point->ml[UNSOOT_SIDE_FUEL] / 1000;
}

static double
intake_litres (const UnsootTracePoint *point)
{
  return (double) point->ml[UNSOOT_SIDE_INTAKE] / 1000;
}

static double
supply_psi (const UnsootTracePoint *point)
{
  return unsoot_unit_from_si (UNSOOT_UNIT_PSI, point->pressure_pa);
}

static double
air_psi (const UnsootTracePoint *point)
{
  return unsoot_unit_from_si (UNSOOT_UNIT_PSI, point->air_pa);
}

/* Two for each panel. */
static const Curve curves[CURVES] = {
  { UNSOOT_INK_FUEL, UNSOOT_STROKE_LINE, fuel_litres },
  { UNSOOT_INK_INTAKE, UNSOOT_STROKE_DASHES, intake_litres },
  { UNSOOT_INK_FUEL, UNSOOT_STROKE_LINE, supply_psi },
  { UNSOOT_INK_INTAKE, UNSOOT_STROKE_DASHES, air_psi },
};

typedef struct
{
  UnsootDrawing *drawing;
  const UnsootTraceLine *lines;
  gsize n;
  UnsootScale along; /* minutes */
} Plot;

static const UnsootTracePoint *
point_at (const UnsootTraceLine *line, guint i)
{
  return &g_array_index (line->points, UnsootTracePoint, i);
}

static double
minutes_of (const UnsootTraceLine *line, const UnsootTracePoint *point)
{
  return MAX ((double) (point->at - line->began_at) / 60, 0);
}

static char *
litres_words (double value, gconstpointer data)
{
  return unsoot_dose_volume_words ((gint64) llround (value * 1000));
}

static char *
psi_words (double value, gconstpointer data)
{
  return unsoot_unit_format (unsoot_unit_to_si (UNSOOT_UNIT_PSI, value), UNSOOT_UNIT_PSI, 0);
}

static double
most_minutes (const Plot *plot)
{
  double most = 1;

  for (gsize i = 0; i < plot->n; i++)
    if (plot->lines[i].points->len > 0)
      most = MAX (most, minutes_of (&plot->lines[i],
                                    point_at (&plot->lines[i], plot->lines[i].points->len - 1)));
  return most;
}

static double
most_of (const Plot *plot, const Curve *both)
{
  double most = 0;

  for (gsize i = 0; i < plot->n; i++)
    for (guint j = 0; j < plot->lines[i].points->len; j++)
      for (int k = 0; k < 2; k++)
        most = MAX (most, both[k].value (point_at (&plot->lines[i], j)));
  return most;
}

/* Level until the next event, then straight to it. */
static void
draw_curve (const Plot *plot, const UnsootTraceLine *line, const Curve *curve,
            const UnsootScale *up, gboolean own)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (UnsootPoint));

  for (guint i = 0; i < line->points->len; i++)
    {
      const UnsootTracePoint *point = point_at (line, i);
      const UnsootPoint corner = { unsoot_scale_at (&plot->along, minutes_of (line, point)),
                                   unsoot_scale_at (up, curve->value (point)) };

      if (i > 0)
        {
          const UnsootPoint level
              = { corner.x, g_array_index (corners, UnsootPoint, corners->len - 1).y };
          g_array_append_val (corners, level);
        }
      g_array_append_val (corners, corner);
    }
  unsoot_drawing_add (plot->drawing, own ? curve->kind : UNSOOT_STROKE_LINE,
                      own ? curve->ink : UNSOOT_INK_LABEL, own ? 2 : 0.6,
                      (const UnsootPoint *) (gconstpointer) corners->data, corners->len);
}

/* The earlier runs under the run itself. */
static void
draw_panel (const Plot *plot, const Curve *both, const char *title, double top, double bottom,
            UnsootScaleWords words)
{
  const UnsootScale up
      = unsoot_scale_round (0, MAX (most_of (plot, both), 1e-3), LINES_MOST, bottom, top + TITLE);

  unsoot_drawing_text (plot->drawing, UNSOOT_INK_TEXT, 0, 0, top + TITLE / 2 - 3, title);
  unsoot_scale_draw_lines (plot->drawing, &up, LINES_MOST, LEFT, plot->along.end, words, NULL);
  for (gsize i = plot->n; i > 0; i--)
    for (int k = 0; k < 2; k++)
      draw_curve (plot, &plot->lines[i - 1], &both[k], &up, i == 1);
}

static void
draw_minutes (const Plot *plot, double top, double bottom)
{
  const double step = unsoot_scale_step (plot->along.high, MINUTES_MOST);

  for (double minutes = 0; minutes <= plot->along.high + 1e-9; minutes += step)
    {
      const double x = unsoot_scale_at (&plot->along, minutes);
      /* Translators: minutes since a run began */
      g_autofree char *text = g_strdup_printf (_ ("%d min"), (int) minutes);

      unsoot_drawing_line (plot->drawing, UNSOOT_STROKE_LINE, UNSOOT_INK_GRID, 1, x, top, x,
                           bottom);
      unsoot_drawing_text (plot->drawing, UNSOOT_INK_LABEL, minutes > 0 ? 0.5 : 0, x, bottom + 12,
                           text);
    }
}

/* What is known of the run, said where the pointer is over that time. */
static void
add_spots (const Plot *plot)
{
  const UnsootTraceLine *own = &plot->lines[0];

  for (guint i = 0; i < own->points->len; i++)
    {
      const UnsootTracePoint *point = point_at (own, i);
      const UnsootTracePoint *next = i + 1 < own->points->len ? point_at (own, i + 1) : NULL;
      const double from = unsoot_scale_at (&plot->along, minutes_of (own, point));
      const double to
          = next != NULL ? unsoot_scale_at (&plot->along, minutes_of (own, next)) : plot->along.end;
      g_autofree char *fuel = unsoot_dose_volume_words (point->ml[UNSOOT_SIDE_FUEL]);
      g_autofree char *intake = unsoot_dose_volume_words (point->ml[UNSOOT_SIDE_INTAKE]);
      g_autofree char *supply = psi_words (supply_psi (point), NULL);
      g_autofree char *air = psi_words (air_psi (point), NULL);

      if (to - from < 1)
        continue;
      unsoot_drawing_spot (plot->drawing, from, 0, to - from, plot->drawing->height,
                           /* Translators: at a minute: what both tanks hold, and two pressures */
                           g_strdup_printf (_ ("%d min: fuel tank %s, intake tank %s, supply %s, "
                                               "air %s"),
                                            (int) minutes_of (own, point), fuel, intake, supply,
                                            air));
    }
}

UnsootDrawing *
unsoot_trace_drawing_new (const UnsootTraceLine *lines, gsize n, double width, double height)
{
  Plot plot = { unsoot_drawing_new (width, height), lines, n, { 0 } };
  const double bottom = MAX (height - BOTTOM, 2 * (TITLE + 1) + GAP);
  const double middle = (bottom - GAP) / 2;

  if (n == 0)
    return plot.drawing;
  plot.along = (UnsootScale){ 0, most_minutes (&plot), LEFT, MAX (width - RIGHT, LEFT + 1) };
  draw_minutes (&plot, TITLE, bottom);
  draw_panel (&plot, &curves[0], _ ("In the tanks: fuel side solid, intake side dashed"), 0, middle,
              litres_words);
  draw_panel (&plot, &curves[2], _ ("Supply pressure solid, atomiser air dashed"), middle + GAP,
              bottom, psi_words);
  add_spots (&plot);
  return plot.drawing;
}
