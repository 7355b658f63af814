/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-paint.h"

enum
{
  RADIUS = 7
};

static void
draw_box (GtkSnapshot *snapshot, const UnsootStripRect *rect, const GdkRGBA *ink, float ground,
          float line)
{
  const graphene_rect_t bounds = GRAPHENE_RECT_INIT (
      (float) rect->x + 1, (float) rect->y, MAX ((float) rect->width - 2, 1), (float) rect->height);
  const float widths[] = { line, line, line, line };
  GdkRGBA fill = *ink;
  GskRoundedRect box;

  fill.alpha = ground;
  gsk_rounded_rect_init_from_rect (&box, &bounds, RADIUS);
  gtk_snapshot_push_rounded_clip (snapshot, &box);
  gtk_snapshot_append_color (snapshot, &fill, &bounds);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &box, widths, (const GdkRGBA[]){ *ink, *ink, *ink, *ink });
}

static void
rect_of (const UnsootStripScale *scale, const UnsootStripSpan *span, UnsootStripRect *rect)
{
  rect->x = unsoot_strip_x (scale, span->from);
  rect->width = unsoot_strip_x (scale, span->to) - rect->x;
  rect->y = scale->top + span->lane * (scale->lane_height + scale->gap);
  rect->height = scale->lane_height;
}

static void
find_ink (GtkWidget *widget, const char *name, GdkRGBA *ink)
{
  GtkStyleContext *style = gtk_widget_get_style_context (widget);

  gtk_style_context_get_color (style, ink);
  gtk_style_context_lookup_color (style, name, ink);
}

static const char *
verdict_ink (UnsootVerdict verdict)
{
  switch (verdict)
    {
    case UNSOOT_VERDICT_ASKED:
      return "theme_fg_color";
    case UNSOOT_VERDICT_FREE:
      return "accent_color";
    case UNSOOT_VERDICT_BREAKS:
      return "error_color";
    }
  g_return_val_if_reached ("theme_fg_color");
}

void
unsoot_planner_paint_free (GtkWidget *widget, GtkSnapshot *snapshot, const UnsootStripScale *scale,
                           const GArray *spans)
{
  UnsootStripRect rect;
  GdkRGBA ink;

  find_ink (widget, "success_color", &ink);
  for (guint i = 0; i < spans->len; i++)
    {
      rect_of (scale, &g_array_index (spans, UnsootStripSpan, i), &rect);
      draw_box (snapshot, &rect, &ink, 0.10f, 1);
    }
}

void
unsoot_planner_paint_held (GtkWidget *widget, GtkSnapshot *snapshot, const UnsootStripScale *scale,
                           const UnsootStripSpan *span, UnsootVerdict verdict)
{
  UnsootStripRect rect;
  GdkRGBA ink;

  find_ink (widget, verdict_ink (verdict), &ink);
  rect_of (scale, span, &rect);
  draw_box (snapshot, &rect, &ink, 0.25f, verdict == UNSOOT_VERDICT_BREAKS ? 3 : 2);
}
