/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tank-picture.h"

#include "access.h"
#include "rig.h"
#include "side.h"
#include "stock-chart.h"

enum
{
  WIDTH = 54,
  HEIGHT = 88,
  EDGE = 2,
  ROUND = 10,
  HATCH = 7
};

struct _UnsootTankPicture
{
  GtkWidget parent_instance;

  UnsootStockScale scale; /* only its heights are used */
  gint64 ml;
  gint64 low_ml;
  gboolean fuel;
  gboolean unknown;
};

G_DEFINE_FINAL_TYPE (UnsootTankPicture, unsoot_tank_picture, GTK_TYPE_WIDGET)

static void
unsoot_tank_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                             int *minimum, int *natural, int *minimum_baseline,
                             int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;
}

static void
set_colour (cairo_t *cr, const GdkRGBA *colour, double alpha)
{
  cairo_set_source_rgba (cr, (double) colour->red, (double) colour->green, (double) colour->blue,
                         (double) colour->alpha * alpha);
}

static void
trace_tank (cairo_t *cr)
{
  const double left = EDGE, top = EDGE, right = WIDTH - EDGE, bottom = HEIGHT - EDGE;

  cairo_new_path (cr);
  cairo_arc (cr, right - ROUND, top + ROUND, ROUND, -G_PI_2, 0);
  cairo_arc (cr, right - ROUND, bottom - ROUND, ROUND, 0, G_PI_2);
  cairo_arc (cr, left + ROUND, bottom - ROUND, ROUND, G_PI_2, G_PI);
  cairo_arc (cr, left + ROUND, top + ROUND, ROUND, G_PI, 3 * G_PI_2);
  cairo_close_path (cr);
}

static void
draw_fluid (UnsootTankPicture *self, cairo_t *cr, const GdkRGBA *colour)
{
  const double top = unsoot_stock_y (&self->scale, (double) self->ml);

  cairo_rectangle (cr, 0, top, WIDTH, HEIGHT - top);
  set_colour (cr, colour, self->fuel ? 0.85 : 0.25);
  cairo_fill_preserve (cr);
  cairo_clip (cr);
  if (self->fuel)
    return;
  set_colour (cr, colour, 0.85);
  cairo_set_line_width (cr, 2);
  for (int x = -HEIGHT; x < WIDTH; x += HATCH)
    {
      cairo_move_to (cr, x, HEIGHT);
      cairo_line_to (cr, x + HEIGHT, 0);
    }
  cairo_stroke (cr);
}

static void
draw_question (UnsootTankPicture *self, cairo_t *cr, const GdkRGBA *ink)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), "?");
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  int width, height;

  pango_attr_list_insert (attributes, pango_attr_scale_new (PANGO_SCALE_XX_LARGE));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_get_pixel_size (layout, &width, &height);
  set_colour (cr, ink, 0.8);
  cairo_move_to (cr, (WIDTH - width) / 2.0, (HEIGHT - height) / 2.0);
  pango_cairo_show_layout (cr, layout);
}

static void
unsoot_tank_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootTankPicture *self = UNSOOT_TANK_PICTURE (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, WIDTH, HEIGHT));
  const double low = unsoot_stock_y (&self->scale, (double) self->low_ml);
  const double dashes[] = { 3, 3 };
  GdkRGBA ink, colour;

  gtk_style_context_get_color (style, &ink);
  colour = ink;
  gtk_style_context_lookup_color (style, self->fuel ? "fuel_color" : "intake_color", &colour);
  cairo_save (cr);
  trace_tank (cr);
  cairo_clip (cr);
  draw_fluid (self, cr, &colour);
  cairo_restore (cr);
  if (self->unknown)
    draw_question (self, cr, &ink);
  set_colour (cr, &ink, 0.5);
  cairo_set_line_width (cr, 1);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_move_to (cr, EDGE, low);
  cairo_line_to (cr, WIDTH - EDGE, low);
  cairo_stroke (cr);
  cairo_set_dash (cr, NULL, 0, 0);
  cairo_set_line_width (cr, 2);
  trace_tank (cr);
  cairo_stroke (cr);
  cairo_destroy (cr);
}

static void
unsoot_tank_picture_class_init (UnsootTankPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = unsoot_tank_picture_measure;
  widget_class->snapshot = unsoot_tank_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
unsoot_tank_picture_init (UnsootTankPicture *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_START);
  gtk_widget_set_halign (GTK_WIDGET (self), GTK_ALIGN_START);
}

GtkWidget *
unsoot_tank_picture_new (const UnsootTankState *state)
{
  UnsootTankPicture *self = g_object_new (UNSOOT_TYPE_TANK_PICTURE, NULL);
  UnsootContents contents = UNSOOT_CONTENTS_UNKNOWN;
  UnsootSide side = UNSOOT_SIDE_NONE;
  g_autofree char *name = NULL;

  unsoot_side_from_slug (state->tank->side, &side);
  if (state->last != NULL)
    unsoot_contents_from_slug (state->last->contents, &contents);
  self->fuel = side == UNSOOT_SIDE_FUEL;
  self->unknown = contents == UNSOOT_CONTENTS_UNKNOWN;
  self->ml = state->last != NULL ? state->last->ml : 0;
  self->low_ml = state->tank->low_ml;
  self->scale = (UnsootStockScale){ .top = EDGE,
                                    .height = HEIGHT - 2 * EDGE,
                                    .most_ml = (double) state->tank->capacity_ml };
  name = g_strdup_printf ("%s: %s", unsoot_side_label (side), state->words);
  unsoot_access_name (GTK_WIDGET (self), name);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
