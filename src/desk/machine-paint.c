/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-paint.h"

void
unsoot_machine_inks_find (GtkWidget *widget, UnsootMachineInks *inks)
{
  GtkStyleContext *style = gtk_widget_get_style_context (widget);

  gtk_style_context_get_color (style, &inks->plain);
  inks->faint = inks->plain;
  inks->side[UNSOOT_SIDE_FUEL] = inks->side[UNSOOT_SIDE_INTAKE] = inks->plain;
  inks->faint.alpha *= 0.32f;
  gtk_style_context_lookup_color (style, "bay_fuel_color", &inks->side[UNSOOT_SIDE_FUEL]);
  gtk_style_context_lookup_color (style, "bay_intake_color", &inks->side[UNSOOT_SIDE_INTAKE]);
}

static void
trace (cairo_t *cr, const graphene_point_t *points)
{
  cairo_move_to (cr, (double) points[0].x, (double) points[0].y);
  for (int i = 1; i < UNSOOT_HOSE_POINTS; i++)
    cairo_line_to (cr, (double) points[i].x, (double) points[i].y);
}

/* What one look at the machine is drawn with. */
typedef struct
{
  cairo_t *cr;
  const UnsootMachinePlan *plan;
  const UnsootMachineState *state;
  const UnsootMachineInks *inks;
  int offset;
} Painting;

/* A hose that is not joined is a faint dotted line; a joined one is drawn, and what flows in it
 * is a dash that moves. */
static void
draw_hose (const Painting *painting, UnsootMachineHose hose, const GdkRGBA *ink)
{
  static const double dots[] = { 1, 6 };
  static const double dashes[] = { 10, 8 };
  cairo_t *cr = painting->cr;
  const graphene_point_t *points = painting->plan->hose[hose];

  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  gdk_cairo_set_source_rgba (cr, painting->state->joined[hose] ? ink : &painting->inks->faint);
  cairo_set_dash (cr, dots, painting->state->joined[hose] ? 0 : 2, 0);
  cairo_set_line_width (cr, painting->state->flows[hose] ? 2 : 3);
  trace (cr, points);
  cairo_stroke (cr);
  if (!painting->state->flows[hose])
    return;
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_width (cr, 8);
  cairo_set_dash (cr, dashes, 2, -painting->offset);
  trace (cr, points);
  cairo_stroke (cr);
}

static void
hatch (cairo_t *cr, const graphene_rect_t *area, const GdkRGBA *ink)
{
  const double x = (double) area->origin.x, y = (double) area->origin.y;
  const double width = (double) area->size.width, height = (double) area->size.height;

  cairo_save (cr);
  cairo_rectangle (cr, x, y, width, height);
  cairo_clip (cr);
  gdk_cairo_set_source_rgba (cr, ink);
  cairo_set_line_width (cr, 2.5);
  cairo_set_dash (cr, NULL, 0, 0);
  for (double at = -height; at < width; at += 7)
    {
      cairo_move_to (cr, x + at, y + height);
      cairo_line_to (cr, x + at + height, y);
    }
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* Solid for the fuel side, hatched for the intake side; pale, so that the words stay clear. */
static void
draw_tank (const Painting *painting, UnsootMachinePart part, UnsootSide side)
{
  const graphene_rect_t *tank = &painting->plan->part[part];
  cairo_t *cr = painting->cr;
  GdkRGBA pale = painting->inks->side[side];
  graphene_rect_t level;

  unsoot_machine_level (tank, &painting->state->tank[side], &level);
  pale.alpha = side == UNSOOT_SIDE_FUEL ? 0.24f : 0.20f;
  if (side == UNSOOT_SIDE_INTAKE)
    hatch (cr, &level, &pale);
  else
    {
      gdk_cairo_set_source_rgba (cr, &pale);
      cairo_rectangle (cr, (double) level.origin.x, (double) level.origin.y,
                       (double) level.size.width, (double) level.size.height);
      cairo_fill (cr);
    }
  gdk_cairo_set_source_rgba (cr, &painting->inks->side[side]);
  cairo_set_dash (cr, NULL, 0, 0);
  if (level.size.height > 0)
    {
      cairo_rectangle (cr, (double) level.origin.x, (double) level.origin.y,
                       (double) level.size.width, 2);
      cairo_fill (cr);
    }
  cairo_set_line_width (cr, 2);
  cairo_rectangle (cr, (double) tank->origin.x, (double) tank->origin.y, (double) tank->size.width,
                   (double) tank->size.height);
  cairo_stroke (cr);
}

void
unsoot_machine_paint (cairo_t *cr, const UnsootMachinePlan *plan, const UnsootMachineState *state,
                      const UnsootMachineInks *inks, int offset)
{
  const Painting painting = { cr, plan, state, inks, offset };

  draw_hose (&painting, UNSOOT_HOSE_SUPPLY, &inks->side[UNSOOT_SIDE_FUEL]);
  draw_hose (&painting, UNSOOT_HOSE_RETURN, &inks->side[UNSOOT_SIDE_FUEL]);
  draw_hose (&painting, UNSOOT_HOSE_MIST, &inks->side[UNSOOT_SIDE_INTAKE]);
  draw_hose (&painting, UNSOOT_HOSE_AIR, &inks->plain);
  draw_tank (&painting, UNSOOT_PART_FUEL_TANK, UNSOOT_SIDE_FUEL);
  draw_tank (&painting, UNSOOT_PART_INTAKE_TANK, UNSOOT_SIDE_INTAKE);
}
