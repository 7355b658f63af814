/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "days-bar.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "format.h"
#include "stock-chart.h"

enum
{
  LONGEST = 60, /* days at the bar's end */
  WIDTH = 76,
  HEIGHT = 18,
  THICK = 8
};

struct _UnsootDaysBar
{
  GtkWidget parent_instance;

  double days;
  double lead;
};

G_DEFINE_FINAL_TYPE (UnsootDaysBar, unsoot_days_bar, GTK_TYPE_WIDGET)

static void
unsoot_days_bar_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? WIDTH : HEIGHT;
}

static void
fill (GtkSnapshot *snapshot, const GdkRGBA *colour, double alpha, double x, double width)
{
  const graphene_rect_t place
      = GRAPHENE_RECT_INIT ((float) x, (HEIGHT - THICK) / 2.0f, (float) width, (float) THICK);
  GdkRGBA shade = *colour;
  GskRoundedRect round;

  shade.alpha *= (float) alpha;
  gsk_rounded_rect_init_from_rect (&round, &place, THICK / 2.0f);
  gtk_snapshot_push_rounded_clip (snapshot, &round);
  gtk_snapshot_append_color (snapshot, &shade, &place);
  gtk_snapshot_pop (snapshot);
}

static void
unsoot_days_bar_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootDaysBar *self = UNSOOT_DAYS_BAR (widget);
  GtkStyleContext *style = gtk_widget_get_style_context (widget);
  const double width = gtk_widget_get_width (widget);
  const double filled = unsoot_days_share (self->days, LONGEST) * width;
  GdkRGBA ink, colour;

  gtk_style_context_get_color (style, &ink);
  colour = ink;
  gtk_style_context_lookup_color (style, self->days < self->lead ? "error_color" : "accent_color",
                                  &colour);
  fill (snapshot, &ink, 0.12, 0, width);
  if (filled > 0)
    fill (snapshot, &colour, 1, 0, MAX (filled, THICK));
  if (self->lead > 0)
    {
      const double x = floor (unsoot_days_share (self->lead, LONGEST) * width);
      gtk_snapshot_append_color (snapshot, &ink, &GRAPHENE_RECT_INIT ((float) x, 0, 2, HEIGHT));
    }
}

static void
unsoot_days_bar_class_init (UnsootDaysBarClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  widget_class->measure = unsoot_days_bar_measure;
  widget_class->snapshot = unsoot_days_bar_snapshot;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
unsoot_days_bar_init (UnsootDaysBar *self)
{
  self->days = NAN;
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

void
unsoot_days_bar_set (UnsootDaysBar *self, double days, double lead)
{
  g_autofree char *lasts = isnan (days) ? NULL : unsoot_format_number (floor (days), 0);
  g_autofree char *takes = unsoot_format_number (ceil (lead), 0);
  g_autofree char *words = NULL;

  self->days = days;
  self->lead = lead;
  if (lasts == NULL)
    words = g_strdup (_ ("none is used"));
  else if (lead > 0)
    /* Translators: two numbers of days */
    words = g_strdup_printf (_ ("lasts %s days; a delivery takes %s"), lasts, takes);
  else
    words = g_strdup_printf (_ ("lasts %s days"), lasts);
  unsoot_access_name (GTK_WIDGET (self), words);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), words);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}
