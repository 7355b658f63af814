/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-view.h"

#include "access.h"

enum
{
  MIN_WIDTH = 240
};

#define HATCH_GAP 6.0
#define TEXT_SCALE 0.85

struct _UnsootDrawingView
{
  GtkWidget parent_instance;

  /* owned */
  UnsootDrawing *drawing; /* for the size that it has; NULL: none yet */
  gpointer data;

  GDestroyNotify free_data;
  UnsootDrawingMaker make;
  int width;
  int height;
};

G_DEFINE_FINAL_TYPE (UnsootDrawingView, unsoot_drawing_view, GTK_TYPE_WIDGET)

static GdkRGBA
colour_named (UnsootDrawingView *self, const char *name)
{
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (self));
  GdkRGBA colour;

  gtk_style_context_get_color (style, &colour);
  gtk_style_context_lookup_color (style, name, &colour);
  return colour;
}

static GdkRGBA
thinned (GdkRGBA colour, double share)
{
  colour.alpha *= (float) share;
  return colour;
}

static GdkRGBA
colour_of (UnsootDrawingView *self, UnsootInk ink)
{
  switch (ink)
    {
    case UNSOOT_INK_TEXT:
      return colour_named (self, "view_fg_color");
    case UNSOOT_INK_LABEL:
      return thinned (colour_named (self, "view_fg_color"), 0.72);
    case UNSOOT_INK_GRID:
      return thinned (colour_named (self, "view_fg_color"), 0.12);
    case UNSOOT_INK_ACCENT:
      return colour_named (self, "accent_color");
    case UNSOOT_INK_FUEL:
      return colour_named (self, "fuel_color");
    case UNSOOT_INK_INTAKE:
      return colour_named (self, "intake_color");
    case UNSOOT_INK_WARNING:
      return colour_named (self, "error_color");
    }
  g_assert_not_reached ();
}

static void
trace (cairo_t *cr, const UnsootStroke *stroke)
{
  cairo_new_path (cr);
  for (gsize i = 0; i < stroke->n; i++)
    cairo_line_to (cr, stroke->points[i].x, stroke->points[i].y);
}

/* A hair is sharp where it runs through the middle of a pixel. */
static void
paint_line (cairo_t *cr, const UnsootStroke *stroke)
{
  const double dashes[] = { 5, 4 };
  const gboolean straight = stroke->n == 2 && stroke->weight <= 1
                            && (stroke->points[0].x == stroke->points[1].x
                                || stroke->points[0].y == stroke->points[1].y);

  cairo_new_path (cr);
  for (gsize i = 0; i < stroke->n; i++)
    cairo_line_to (cr, straight ? floor (stroke->points[i].x) + 0.5 : stroke->points[i].x,
                   straight ? floor (stroke->points[i].y) + 0.5 : stroke->points[i].y);
  if (stroke->kind == UNSOOT_STROKE_DASHES)
    cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (cr, stroke->weight);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke (cr);
}

static void
paint_hatch (cairo_t *cr, const UnsootStroke *stroke)
{
  double left, top, right, bottom;

  trace (cr, stroke);
  cairo_path_extents (cr, &left, &top, &right, &bottom);
  cairo_clip (cr);
  cairo_set_line_width (cr, stroke->weight);
  for (double start = left - (bottom - top); start < right; start += HATCH_GAP)
    {
      cairo_move_to (cr, start, bottom);
      cairo_line_to (cr, start + bottom - top, top);
    }
  cairo_stroke (cr);
}

static void
paint_text (UnsootDrawingView *self, cairo_t *cr, const UnsootStroke *stroke)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), stroke->text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  int width, height;

  pango_attr_list_insert (attributes, pango_attr_scale_new (TEXT_SCALE * stroke->weight));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_move_to (cr, stroke->points->x - width * stroke->align, stroke->points->y - height / 2.0);
  pango_cairo_show_layout (cr, layout);
}

static void
paint_arrow (cairo_t *cr, const UnsootStroke *stroke)
{
  const double down = stroke->kind == UNSOOT_STROKE_UP ? stroke->weight : -stroke->weight;
  const double half = stroke->weight / 2;

  cairo_new_path (cr);
  cairo_move_to (cr, stroke->points->x, stroke->points->y);
  cairo_line_to (cr, stroke->points->x - half, stroke->points->y + down);
  cairo_line_to (cr, stroke->points->x + half, stroke->points->y + down);
  cairo_close_path (cr);
  cairo_fill (cr);
}

static void
paint_circle (UnsootDrawingView *self, cairo_t *cr, const UnsootStroke *stroke)
{
  const GdkRGBA ground = colour_named (self, "view_bg_color");
  const GdkRGBA colour = colour_of (self, stroke->ink);

  cairo_new_path (cr);
  cairo_arc (cr, stroke->points->x, stroke->points->y, stroke->weight, 0, 2 * G_PI);
  if (stroke->kind == UNSOOT_STROKE_DISC)
    {
      cairo_fill (cr);
      return;
    }
  gdk_cairo_set_source_rgba (cr, &ground);
  cairo_fill_preserve (cr);
  gdk_cairo_set_source_rgba (cr, &colour);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
}

static void
paint_stroke (UnsootDrawingView *self, cairo_t *cr, const UnsootStroke *stroke)
{
  GdkRGBA colour = colour_of (self, stroke->ink);

  if (stroke->kind == UNSOOT_STROKE_AREA)
    colour = thinned (colour, stroke->weight);
  cairo_save (cr);
  gdk_cairo_set_source_rgba (cr, &colour);
  switch (stroke->kind)
    {
    case UNSOOT_STROKE_LINE:
    case UNSOOT_STROKE_DASHES:
      paint_line (cr, stroke);
      break;
    case UNSOOT_STROKE_AREA:
      trace (cr, stroke);
      cairo_fill (cr);
      break;
    case UNSOOT_STROKE_HATCH:
      paint_hatch (cr, stroke);
      break;
    case UNSOOT_STROKE_TEXT:
      paint_text (self, cr, stroke);
      break;
    case UNSOOT_STROKE_DISC:
    case UNSOOT_STROKE_RING:
      paint_circle (self, cr, stroke);
      break;
    case UNSOOT_STROKE_UP:
    case UNSOOT_STROKE_DOWN:
      paint_arrow (cr, stroke);
      break;
    }
  cairo_restore (cr);
}

static void
draw_again (UnsootDrawingView *self, int width, int height)
{
  g_autofree char *words = NULL;

  g_clear_pointer (&self->drawing, unsoot_drawing_free);
  self->drawing = self->make (self->data, width, height);
  words = unsoot_drawing_words (self->drawing);
  unsoot_access_describe (GTK_WIDGET (self), words);
}

static void
unsoot_drawing_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  UnsootDrawingView *self = UNSOOT_DRAWING_VIEW (widget);

  if (self->drawing == NULL || self->drawing->width != width || self->drawing->height != height)
    draw_again (self, width, height);
}

static void
unsoot_drawing_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                             int *minimum, int *natural, int *minimum_baseline,
                             int *natural_baseline)
{
  UnsootDrawingView *self = UNSOOT_DRAWING_VIEW (widget);

  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : self->height;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;
}

static void
unsoot_drawing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootDrawingView *self = UNSOOT_DRAWING_VIEW (widget);
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                                                     (float) gtk_widget_get_height (widget));
  cairo_t *cr;

  if (self->drawing == NULL)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  for (guint i = 0; i < self->drawing->strokes->len; i++)
    paint_stroke (self, cr, g_ptr_array_index (self->drawing->strokes, i));
  cairo_destroy (cr);
}

static gboolean
query_tooltip_cb (GtkWidget *widget, int x, int y, gboolean keyboard, GtkTooltip *tooltip)
{
  UnsootDrawingView *self = UNSOOT_DRAWING_VIEW (widget);
  const UnsootSpot *spot
      = self->drawing != NULL && !keyboard ? unsoot_drawing_spot_at (self->drawing, x, y) : NULL;

  if (spot == NULL)
    return FALSE;
  gtk_tooltip_set_text (tooltip, spot->words);
  return TRUE;
}

static void
unsoot_drawing_view_finalize (GObject *object)
{
  UnsootDrawingView *self = UNSOOT_DRAWING_VIEW (object);

  g_clear_pointer (&self->drawing, unsoot_drawing_free);
  if (self->free_data != NULL)
    self->free_data (self->data);
  G_OBJECT_CLASS (unsoot_drawing_view_parent_class)->finalize (object);
}

static void
unsoot_drawing_view_class_init (UnsootDrawingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = unsoot_drawing_view_finalize;
  widget_class->size_allocate = unsoot_drawing_view_size_allocate;
  widget_class->measure = unsoot_drawing_view_measure;
  widget_class->snapshot = unsoot_drawing_view_snapshot;
  widget_class->query_tooltip = query_tooltip_cb;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
unsoot_drawing_view_init (UnsootDrawingView *self)
{
  gtk_widget_set_has_tooltip (GTK_WIDGET (self), TRUE);
}

GtkWidget *
unsoot_drawing_view_new (const char *name, int width, int height, UnsootDrawingMaker make,
                         gpointer data, GDestroyNotify free_data)
{
  UnsootDrawingView *self = g_object_new (UNSOOT_TYPE_DRAWING_VIEW, NULL);

  self->width = width;
  self->height = height;
  self->make = make;
  self->data = data;
  self->free_data = free_data;
  unsoot_access_name (GTK_WIDGET (self), name);
  return GTK_WIDGET (self);
}
