/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "day-strip.h"

#include "format.h"
#include "strip-layout.h"

enum
{
  LANE_HEIGHT = 54,
  LANE_GAP = 6,
  TOP = 30,
  LEFT_MIN = 48,
  LEFT_GAP = 12,
  HALF_LABEL = 18,
  HOUR_LABEL_WIDTH = 48,
  MIN_WIDTH = 420,
  NATURAL_WIDTH = 900
};

struct _UnsootDayStrip
{
  GtkWidget parent_instance;

  /* owned */
  GStrv lanes;
  GTimeZone *zone;
  GArray *spans;     /* UnsootStripSpan, in the order of the blocks */
  GPtrArray *blocks; /* borrowed children */

  UnsootStripScale scale;
  gint64 now;
};

G_DEFINE_FINAL_TYPE (UnsootDayStrip, unsoot_day_strip, GTK_TYPE_WIDGET)

static guint
n_lanes (UnsootDayStrip *self)
{
  return self->lanes != NULL ? g_strv_length (self->lanes) : 0;
}

static void
remove_blocks (UnsootDayStrip *self)
{
  for (guint i = 0; i < self->blocks->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->blocks, i));
  g_ptr_array_set_size (self->blocks, 0);
  g_array_set_size (self->spans, 0);
}

static void
unsoot_day_strip_dispose (GObject *object)
{
  remove_blocks (UNSOOT_DAY_STRIP (object));
  G_OBJECT_CLASS (unsoot_day_strip_parent_class)->dispose (object);
}

static void
unsoot_day_strip_finalize (GObject *object)
{
  UnsootDayStrip *self = UNSOOT_DAY_STRIP (object);

  g_clear_pointer (&self->lanes, g_strfreev);
  g_clear_pointer (&self->zone, g_time_zone_unref);
  g_clear_pointer (&self->spans, g_array_unref);
  g_clear_pointer (&self->blocks, g_ptr_array_unref);
  G_OBJECT_CLASS (unsoot_day_strip_parent_class)->finalize (object);
}

static double
lane_top (guint lane)
{
  return TOP + lane * (LANE_HEIGHT + LANE_GAP);
}

static void
unsoot_day_strip_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                          int *natural, int *minimum_baseline, int *natural_baseline)
{
  UnsootDayStrip *self = UNSOOT_DAY_STRIP (widget);

  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MIN_WIDTH;
      *natural = NATURAL_WIDTH;
    }
  else
    *minimum = *natural = (int) lane_top (MAX (n_lanes (self), 1)) - LANE_GAP;
}

/* Room for the widest name of a lane. */
static double
measure_left (UnsootDayStrip *self)
{
  int widest = LEFT_MIN;

  for (guint i = 0; i < n_lanes (self); i++)
    {
      g_autoptr (PangoLayout) layout
          = gtk_widget_create_pango_layout (GTK_WIDGET (self), self->lanes[i]);
      int width;
      pango_layout_get_pixel_size (layout, &width, NULL);
      widest = MAX (widest, width);
    }
  return widest + LEFT_GAP;
}

static void
unsoot_day_strip_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  UnsootDayStrip *self = UNSOOT_DAY_STRIP (widget);
  g_autofree UnsootStripRect *rects = g_new0 (UnsootStripRect, self->spans->len);

  self->scale.left = measure_left (self);
  self->scale.width = width - HALF_LABEL;
  unsoot_strip_place (&self->scale, (const UnsootStripSpan *) self->spans->data, self->spans->len,
                      rects);
  for (guint i = 0; i < self->blocks->len; i++)
    {
      const GtkAllocation place = { (int) rects[i].x + 1, (int) rects[i].y,
                                    MAX ((int) rects[i].width - 2, 1), (int) rects[i].height };
      gtk_widget_size_allocate (g_ptr_array_index (self->blocks, i), &place, -1);
    }
}

static void
draw_text (UnsootDayStrip *self, GtkSnapshot *snapshot, const char *text, double x, double y,
           double align, const GdkRGBA *colour, PangoWeight weight)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();
  int width, height;

  pango_attr_list_insert (attributes, pango_attr_weight_new (weight));
  pango_attr_list_insert (attributes, pango_attr_scale_new (0.9));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum"));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_get_pixel_size (layout, &width, &height);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (
      snapshot, &GRAPHENE_POINT_INIT ((float) (x - width * align), (float) (y - height / 2.0)));
  gtk_snapshot_append_layout (snapshot, layout, colour);
  gtk_snapshot_restore (snapshot);
}

static GdkRGBA
faded (const GdkRGBA *colour, float alpha)
{
  GdkRGBA result = *colour;

  result.alpha *= alpha;
  return result;
}

static void
draw_lanes (UnsootDayStrip *self, GtkSnapshot *snapshot, const GdkRGBA *text)
{
  const GdkRGBA ground = faded (text, 0.045f);
  const float left = (float) self->scale.left;
  const float width = (float) (self->scale.width - self->scale.left);

  for (guint i = 0; i < n_lanes (self); i++)
    {
      GskRoundedRect lane;
      gsk_rounded_rect_init_from_rect (
          &lane, &GRAPHENE_RECT_INIT (left, (float) lane_top (i), width, LANE_HEIGHT), 7);
      gtk_snapshot_push_rounded_clip (snapshot, &lane);
      gtk_snapshot_append_color (snapshot, &ground, &lane.bounds);
      gtk_snapshot_pop (snapshot);
      draw_text (self, snapshot, self->lanes[i], 0, lane_top (i) + LANE_HEIGHT / 2.0, 0, text,
                 PANGO_WEIGHT_BOLD);
    }
}

static void
draw_hours (UnsootDayStrip *self, GtkSnapshot *snapshot, const GdkRGBA *text)
{
  const GdkRGBA line = faded (text, 0.12f), label = faded (text, 0.72f);
  const int step = unsoot_strip_hour_step (&self->scale, HOUR_LABEL_WIDTH);
  const float bottom = (float) (lane_top (n_lanes (self)) - LANE_GAP);
  const double now_x = unsoot_strip_x (&self->scale, self->now);
  int hour = 0;

  for (gint64 at = self->scale.from; at <= self->scale.to; at += 3600, hour++)
    {
      const double x = unsoot_strip_x (&self->scale, at);
      g_autofree char *clock = unsoot_format_clock (at, self->zone);

      gtk_snapshot_append_color (snapshot, &line,
                                 &GRAPHENE_RECT_INIT ((float) x, TOP - 4, 1, bottom - TOP + 4));
      if (hour % step == 0 && ABS (now_x - x) > HOUR_LABEL_WIDTH - 6)
        draw_text (self, snapshot, clock, x, TOP / 2.0 - 3, 0.5, &label, PANGO_WEIGHT_NORMAL);
    }
}

static void
draw_now_line (UnsootDayStrip *self, GtkSnapshot *snapshot, const GdkRGBA *ink)
{
  const float x = (float) unsoot_strip_x (&self->scale, self->now);
  const float bottom = (float) (lane_top (n_lanes (self)) - LANE_GAP);

  gtk_snapshot_append_color (snapshot, ink, &GRAPHENE_RECT_INIT (x - 1, 21, 2, bottom - 21));
}

static void
draw_now_tag (UnsootDayStrip *self, GtkSnapshot *snapshot, const GdkRGBA *ink, const GdkRGBA *paper)
{
  const float x = (float) unsoot_strip_x (&self->scale, self->now);
  g_autofree char *clock = unsoot_format_clock (self->now, self->zone);
  GskRoundedRect tag;

  gsk_rounded_rect_init_from_rect (&tag, &GRAPHENE_RECT_INIT (x - 23, 2, 46, 20), 10);
  gtk_snapshot_push_rounded_clip (snapshot, &tag);
  gtk_snapshot_append_color (snapshot, ink, &tag.bounds);
  gtk_snapshot_pop (snapshot);
  draw_text (self, snapshot, clock, x, 12, 0.5, paper, PANGO_WEIGHT_BOLD);
}

static void
unsoot_day_strip_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootDayStrip *self = UNSOOT_DAY_STRIP (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  const gboolean today = self->now >= self->scale.from && self->now <= self->scale.to;
  GdkRGBA text, ink, paper, veil;

  if (self->zone == NULL)
    return;
  gtk_style_context_get_color (style, &text);
  ink = paper = text;
  gtk_style_context_lookup_color (style, "accent_bg_color", &ink);
  gtk_style_context_lookup_color (style, "accent_fg_color", &paper);
  veil = faded (&ink, 0.35f);
  draw_lanes (self, snapshot, &text);
  draw_hours (self, snapshot, &text);
  if (today)
    draw_now_line (self, snapshot, &ink);
  GTK_WIDGET_CLASS (unsoot_day_strip_parent_class)->snapshot (widget, snapshot);
  if (!today)
    return;
  /* Through the blocks it only shimmers, so that their words stay readable. */
  draw_now_line (self, snapshot, &veil);
  draw_now_tag (self, snapshot, &ink, &paper);
}

static void
unsoot_day_strip_class_init (UnsootDayStripClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = unsoot_day_strip_dispose;
  object_class->finalize = unsoot_day_strip_finalize;
  widget_class->measure = unsoot_day_strip_measure;
  widget_class->size_allocate = unsoot_day_strip_size_allocate;
  widget_class->snapshot = unsoot_day_strip_snapshot;
  gtk_widget_class_set_css_name (widget_class, "daystrip");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
unsoot_day_strip_init (UnsootDayStrip *self)
{
  self->spans = g_array_new (FALSE, FALSE, sizeof (UnsootStripSpan));
  self->blocks = g_ptr_array_new ();
  self->scale.top = TOP;
  self->scale.lane_height = LANE_HEIGHT;
  self->scale.gap = LANE_GAP;
}

GtkWidget *
unsoot_day_strip_new (void)
{
  return g_object_new (UNSOOT_TYPE_DAY_STRIP, NULL);
}

static void
add_blocks (UnsootDayStrip *self, const UnsootStripItem *items)
{
  const UnsootStripSpan *spans = (const UnsootStripSpan *) self->spans->data;
  g_autofree UnsootStripRect *rects = g_new0 (UnsootStripRect, self->spans->len);

  /* Heights don't depend on the width, so they can be known before there is one. */
  unsoot_strip_place (&self->scale, spans, self->spans->len, rects);
  for (guint i = 0; i < self->spans->len; i++)
    {
      GtkWidget *block = unsoot_strip_block_new (&items[i], rects[i].height < LANE_HEIGHT);
      gtk_widget_set_parent (block, GTK_WIDGET (self));
      g_ptr_array_add (self->blocks, block);
    }
}

void
unsoot_day_strip_set_day (UnsootDayStrip *self, const char *const *lanes, gint64 midnight,
                          gint64 opens, gint64 closes, GTimeZone *zone,
                          const UnsootStripItem *items, gsize n_items)
{
  g_return_if_fail (UNSOOT_IS_DAY_STRIP (self));

  remove_blocks (self);
  g_strfreev (self->lanes);
  self->lanes = g_strdupv ((GStrv) lanes);
  g_clear_pointer (&self->zone, g_time_zone_unref);
  self->zone = g_time_zone_ref (zone);
  for (gsize i = 0; i < n_items; i++)
    {
      const UnsootStripSpan span = { items[i].from, items[i].to, items[i].lane };
      g_array_append_val (self->spans, span);
    }
  unsoot_strip_hours (midnight, opens, closes, (const UnsootStripSpan *) self->spans->data, n_items,
                      &self->scale.from, &self->scale.to);
  add_blocks (self, items);
  gtk_widget_queue_resize (GTK_WIDGET (self));
}

void
unsoot_day_strip_set_now (UnsootDayStrip *self, gint64 now)
{
  self->now = now;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const UnsootStripScale *
unsoot_day_strip_get_scale (UnsootDayStrip *self)
{
  return &self->scale;
}

const UnsootStripSpan *
unsoot_day_strip_get_spans (UnsootDayStrip *self, guint *n)
{
  *n = self->spans->len;
  return (const UnsootStripSpan *) self->spans->data;
}

GtkWidget *
unsoot_day_strip_get_block (UnsootDayStrip *self, guint block)
{
  return block < self->blocks->len ? g_ptr_array_index (self->blocks, block) : NULL;
}

guint
unsoot_day_strip_get_n_lanes (UnsootDayStrip *self)
{
  return n_lanes (self);
}
