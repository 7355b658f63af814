/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "stock-picture.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "civil-words.h"
#include "civil.h"
#include "fluid-moves.h"
#include "fluid-needs.h"
#include "format.h"
#include "side.h"
#include "stock-chart.h"

enum
{
  HEIGHT = 230,
  MIN_WIDTH = 360,
  NATURAL_WIDTH = 900,
  LEFT = 54,
  TOP = 22,
  RIGHT = 18,
  BOTTOM = 44, /* the ticks, and the days under them */
  TICKS = 16,
  DAY_SECONDS = 86400
};

/* Nine of ten times the stock stays within the band: the normal deviate of 0.95. */
#define BAND_Z 1.6448536269514722

struct _UnsootStockPicture
{
  GtkWidget parent_instance;

  /* owned */
  GArray *steps;    /* UnsootStockStep */
  GArray *bookings; /* UnsootStockStep */
  GArray *arrivals; /* UnsootStockStep: what is on order */
  GTimeZone *zone;

  UnsootOutlookDay ahead[UNSOOT_STOCK_DAYS_AHEAD + 1];
  UnsootStockScale scale;
  gint64 before_ml;
  gint64 now;
  double point; /* NAN: none */
};

G_DEFINE_FINAL_TYPE (UnsootStockPicture, unsoot_stock_picture, GTK_TYPE_WIDGET)

static void
unsoot_stock_picture_finalize (GObject *object)
{
  UnsootStockPicture *self = UNSOOT_STOCK_PICTURE (object);

  g_clear_pointer (&self->steps, g_array_unref);
  g_clear_pointer (&self->bookings, g_array_unref);
  g_clear_pointer (&self->arrivals, g_array_unref);
  g_clear_pointer (&self->zone, g_time_zone_unref);
  G_OBJECT_CLASS (unsoot_stock_picture_parent_class)->finalize (object);
}

static void
unsoot_stock_picture_measure (GtkWidget *widget, GtkOrientation orientation, int for_size,
                              int *minimum, int *natural, int *minimum_baseline,
                              int *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? MIN_WIDTH : HEIGHT;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? NATURAL_WIDTH : HEIGHT;
}

static void
set_colour (cairo_t *cr, const GdkRGBA *colour, double alpha)
{
  cairo_set_source_rgba (cr, (double) colour->red, (double) colour->green, (double) colour->blue,
                         (double) colour->alpha * alpha);
}

static void
colour_named (UnsootStockPicture *self, const char *name, GdkRGBA *colour)
{
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (self));

  gtk_style_context_get_color (style, colour);
  gtk_style_context_lookup_color (style, name, colour);
}

/* @align: 0 begins at @x, 1 ends there. */
static void
draw_text (UnsootStockPicture *self, cairo_t *cr, const char *text, double x, double y,
           double align)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  int width, height;

  pango_attr_list_insert (attributes, pango_attr_scale_new (0.85));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_get_pixel_size (layout, &width, &height);
  cairo_move_to (cr, x - width * align, y - height / 2.0);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_line (cairo_t *cr, double x1, double y1, double x2, double y2)
{
  cairo_move_to (cr, x1, y1);
  cairo_line_to (cr, x2, y2);
  cairo_stroke (cr);
}

static void
draw_grid (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *ink)
{
  const UnsootStockScale *scale = &self->scale;
  const double grid = unsoot_stock_grid (scale->most_ml);

  cairo_set_line_width (cr, 1);
  for (double ml = 0; ml <= scale->most_ml + 0.5; ml += grid)
    {
      g_autofree char *text = unsoot_format_litres ((gint64) ml);
      const double y = floor (unsoot_stock_y (scale, ml)) + 0.5;

      set_colour (cr, ink, ml > 0 ? 0.10 : 0.35);
      draw_line (cr, scale->left, y, scale->left + scale->width, y);
      set_colour (cr, ink, 0.72);
      draw_text (self, cr, text, scale->left - 8, y, 1);
    }
}

static UnsootLocal
local_of (UnsootStockPicture *self, gint64 at)
{
  const int interval = g_time_zone_find_interval (self->zone, G_TIME_TYPE_UNIVERSAL, at);

  return unsoot_local_from_unix (at, g_time_zone_get_offset (self->zone, interval) / 60);
}

/* The first of each month, where its name has room. */
static void
draw_months (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *ink)
{
  const UnsootStockScale *scale = &self->scale;
  const double below = scale->top + scale->height + TICKS + 10;

  for (gint64 at = scale->from; at < scale->to; at += DAY_SECONDS)
    {
      const int day = local_of (self, at).day;
      const double x = floor (unsoot_stock_x (scale, at)) + 0.5;
      g_autofree char *words = unsoot_day_short_words (day);
      int year, month, date;

      unsoot_day_split (day, &year, &month, &date);
      if (date != 1 && date != 15)
        continue;
      set_colour (cr, ink, 0.10);
      draw_line (cr, x, scale->top, x, scale->top + scale->height);
      set_colour (cr, ink, 0.72);
      if (date == 1 || scale->width > 700)
        draw_text (self, cr, words, x, below, 0.5);
    }
}

static void
draw_past (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *accent)
{
  const double floor_y = unsoot_stock_y (&self->scale, 0);
  g_autoptr (GArray) points
      = unsoot_stock_steps (&self->scale, self->before_ml, (UnsootStockStep *) self->steps->data,
                            self->steps->len, self->now);
  const UnsootStockPoint *first = &g_array_index (points, UnsootStockPoint, 0);
  const UnsootStockPoint *last = &g_array_index (points, UnsootStockPoint, points->len - 1);

  cairo_new_path (cr); /* a text leaves its point behind */
  for (guint i = 0; i < points->len; i++)
    cairo_line_to (cr, g_array_index (points, UnsootStockPoint, i).x,
                   g_array_index (points, UnsootStockPoint, i).y);
  set_colour (cr, accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_stroke_preserve (cr);
  cairo_line_to (cr, last->x, floor_y);
  cairo_line_to (cr, first->x, floor_y);
  cairo_close_path (cr);
  set_colour (cr, accent, 0.14);
  cairo_fill (cr);
}

static gint64
ahead_at (UnsootStockPicture *self, int day)
{
  return self->now + (gint64) day * DAY_SECONDS;
}

static void
draw_ahead (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *accent)
{
  const UnsootStockScale *scale = &self->scale;
  const double dashes[] = { 5, 4 };

  cairo_new_path (cr);
  for (int i = 0; i <= UNSOOT_STOCK_DAYS_AHEAD; i++)
    cairo_line_to (cr, unsoot_stock_x (scale, ahead_at (self, i)),
                   unsoot_stock_y (scale, self->ahead[i].high));
  for (int i = UNSOOT_STOCK_DAYS_AHEAD; i >= 0; i--)
    cairo_line_to (cr, unsoot_stock_x (scale, ahead_at (self, i)),
                   unsoot_stock_y (scale, self->ahead[i].low));
  cairo_close_path (cr);
  set_colour (cr, accent, 0.10);
  cairo_fill (cr);
  for (int i = 0; i <= UNSOOT_STOCK_DAYS_AHEAD; i++)
    cairo_line_to (cr, unsoot_stock_x (scale, ahead_at (self, i)),
                   unsoot_stock_y (scale, self->ahead[i].ml));
  cairo_save (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  set_colour (cr, accent, 1);
  cairo_set_line_width (cr, 2);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
draw_point (UnsootStockPicture *self, cairo_t *cr)
{
  const UnsootStockScale *scale = &self->scale;
  const double dashes[] = { 2, 3 };
  g_autofree char *volume = NULL, *words = NULL;
  GdkRGBA colour;
  double y;

  if (isnan (self->point))
    return;
  volume = unsoot_format_litres ((gint64) round (self->point / 100) * 100);
  /* Translators: label of a line in a picture; a volume */
  words = g_strdup_printf (_ ("reorder at %s"), volume);
  y = floor (unsoot_stock_y (scale, self->point)) + 0.5;
  colour_named (self, "error_color", &colour);
  set_colour (cr, &colour, 1);
  cairo_save (cr);
  cairo_set_dash (cr, dashes, G_N_ELEMENTS (dashes), 0);
  cairo_set_line_width (cr, 1.5);
  draw_line (cr, scale->left, y, scale->left + scale->width, y);
  cairo_restore (cr);
  draw_text (self, cr, words, scale->left + scale->width, y - 9, 1);
}

/* The path of an arrow head, its tip at @tip. */
static void
arrow (cairo_t *cr, double x, double tip, double base)
{
  cairo_move_to (cr, x, tip);
  cairo_line_to (cr, x - 4, base);
  cairo_line_to (cr, x + 4, base);
  cairo_close_path (cr);
}

static void
draw_arrow (cairo_t *cr, double x, double tip, double base)
{
  arrow (cr, x, tip, base);
  cairo_fill (cr);
}

/* Deliveries point up, bookings down: two shapes as well as two places. What is only on order is
 * hollow. */
static void
draw_ticks (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *accent, const GdkRGBA *ink)
{
  const double y = self->scale.top + self->scale.height;

  set_colour (cr, accent, 1);
  for (guint i = 0; i < self->steps->len; i++)
    {
      const UnsootStockStep *step = &g_array_index (self->steps, UnsootStockStep, i);
      if (step->ml > 0)
        draw_arrow (cr, unsoot_stock_x (&self->scale, step->at), y + 4, y + 12);
    }
  cairo_set_line_width (cr, 1.5);
  for (guint i = 0; i < self->arrivals->len; i++)
    {
      const gint64 at = g_array_index (self->arrivals, UnsootStockStep, i).at;
      arrow (cr, unsoot_stock_x (&self->scale, at), y + 4, y + 12);
      cairo_stroke (cr);
    }
  set_colour (cr, ink, 0.72);
  for (guint i = 0; i < self->bookings->len; i++)
    draw_arrow (
        cr, unsoot_stock_x (&self->scale, g_array_index (self->bookings, UnsootStockStep, i).at),
        y + 12, y + 4);
}

static void
draw_today (UnsootStockPicture *self, cairo_t *cr, const GdkRGBA *ink)
{
  const double x = floor (unsoot_stock_x (&self->scale, self->now)) + 0.5;

  set_colour (cr, ink, 0.5);
  cairo_set_line_width (cr, 1);
  draw_line (cr, x, self->scale.top - 4, x, self->scale.top + self->scale.height);
  set_colour (cr, ink, 0.9);
  draw_text (self, cr, _ ("today"), x, self->scale.top - 12, 0.5);
}

static void
unsoot_stock_picture_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootStockPicture *self = UNSOOT_STOCK_PICTURE (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  GdkRGBA ink, accent;
  cairo_t *cr;

  if (self->zone == NULL)
    return;
  self->scale.left = LEFT;
  self->scale.top = TOP;
  self->scale.width = width - LEFT - RIGHT;
  self->scale.height = height - TOP - BOTTOM;
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &ink);
  colour_named (self, "accent_color", &accent);
  cr = gtk_snapshot_append_cairo (snapshot,
                                  &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  draw_grid (self, cr, &ink);
  draw_months (self, cr, &ink);
  draw_past (self, cr, &accent);
  draw_ahead (self, cr, &accent);
  draw_point (self, cr);
  draw_ticks (self, cr, &accent, &ink);
  draw_today (self, cr, &ink);
  cairo_destroy (cr);
}

static void
unsoot_stock_picture_class_init (UnsootStockPictureClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = unsoot_stock_picture_finalize;
  widget_class->measure = unsoot_stock_picture_measure;
  widget_class->snapshot = unsoot_stock_picture_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
unsoot_stock_picture_init (UnsootStockPicture *self)
{
  self->steps = g_array_new (FALSE, FALSE, sizeof (UnsootStockStep));
  self->bookings = g_array_new (FALSE, FALSE, sizeof (UnsootStockStep));
  self->arrivals = g_array_new (FALSE, FALSE, sizeof (UnsootStockStep));
  unsoot_access_name (GTK_WIDGET (self), _ ("The stock, back and ahead"));
}

static void
take_moves (UnsootStockPicture *self, GPtrArray *moves)
{
  g_array_set_size (self->steps, 0);
  for (guint i = 0; i < moves->len; i++)
    {
      const UnsootMoveLine *line = g_ptr_array_index (moves, i);
      const UnsootStockStep step = { line->move->at, line->move->ml };
      g_array_append_val (self->steps, step);
    }
}

/* What is on order and for which day: one whose day is past may come tomorrow, one without a day is
 * not drawn. */
static GArray *
take_arrivals (UnsootStockPicture *self, const UnsootFluidSupply *supply)
{
  GArray *arrivals = g_array_new (FALSE, FALSE, sizeof (UnsootOutlookNeed));
  const int today = local_of (self, self->now).day;

  g_array_set_size (self->arrivals, 0);
  for (guint i = 0; i < supply->orders->len; i++)
    {
      const UnsootSupplyOrder *order = g_ptr_array_index (supply->orders, i);
      int day;

      if (order->expected_on == NULL || !unsoot_day_parse (order->expected_on, &day, NULL))
        continue;
      const UnsootOutlookNeed arrival = { MAX (day - today, 1), order->open_ml };
      const UnsootStockStep step = { ahead_at (self, arrival.day), order->open_ml };
      g_array_append_val (arrivals, arrival);
      if (step.at < self->scale.to)
        g_array_append_val (self->arrivals, step);
    }
  return arrivals;
}

static void
take_needs (UnsootStockPicture *self, const UnsootFluidSupply *supply)
{
  g_autoptr (GArray) needs = g_array_new (FALSE, FALSE, sizeof (UnsootOutlookNeed));
  g_autoptr (GArray) arrivals = take_arrivals (self, supply);

  g_array_set_size (self->bookings, 0);
  for (guint i = 0; i < supply->needs->len; i++)
    {
      const UnsootFluidNeed *need = g_ptr_array_index (supply->needs, i);
      const UnsootStockStep booking = { MAX (need->starts_at, self->now), -need->ml };
      const UnsootOutlookNeed dose
          = { local_of (self, booking.at).day - local_of (self, self->now).day, need->ml };

      g_array_append_val (needs, dose);
      if (booking.at < self->scale.to)
        g_array_append_val (self->bookings, booking);
    }
  unsoot_outlook (supply->stock->on_hand_ml - supply->stock->unusable_ml,
                  (UnsootOutlookNeed *) needs->data, needs->len,
                  (UnsootOutlookNeed *) arrivals->data, arrivals->len, supply->reorder.demand,
                  supply->reorder.demand_sd, BAND_Z, self->ahead, G_N_ELEMENTS (self->ahead));
}

static void
describe (UnsootStockPicture *self, const UnsootFluidSupply *supply)
{
  g_autofree char *here = unsoot_format_litres (supply->stock->on_hand_ml);
  g_autofree char *then
      = unsoot_format_litres ((gint64) round (self->ahead[UNSOOT_STOCK_DAYS_AHEAD].ml / 100) * 100);
  /* Translators: what a picture shows: two volumes and a number of days */
  g_autofree char *words
      = g_strdup_printf (_ ("%s on hand today; %s expected in %d days, with what is on order"),
                         here, then, (int) UNSOOT_STOCK_DAYS_AHEAD);

  unsoot_access_describe (GTK_WIDGET (self), words);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), words);
}

void
unsoot_stock_picture_show (UnsootStockPicture *self, const UnsootFluidSupply *supply,
                           GPtrArray *moves, gint64 before_ml, UnsootSession *session)
{
  double most;

  g_clear_pointer (&self->zone, g_time_zone_unref);
  self->zone = g_time_zone_ref (unsoot_session_zone (session));
  self->now = unsoot_session_now (session);
  self->scale.from = self->now - (gint64) UNSOOT_STOCK_DAYS_BACK * DAY_SECONDS;
  self->scale.to = self->now + (gint64) UNSOOT_STOCK_DAYS_AHEAD * DAY_SECONDS;
  self->before_ml = before_ml;
  self->point = supply->has_point ? supply->suggestion.point : (double) NAN;
  take_moves (self, moves);
  take_needs (self, supply);
  most = (double) unsoot_stock_most (before_ml, (UnsootStockStep *) self->steps->data,
                                     self->steps->len);
  for (int i = 0; i <= UNSOOT_STOCK_DAYS_AHEAD; i++)
    most = MAX (most, self->ahead[i].ml);
  if (!isnan (self->point))
    most = MAX (most, self->point * 1.15);
  self->scale.most_ml = unsoot_stock_top (most);
  describe (self, supply);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
