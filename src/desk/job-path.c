/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-path.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "format.h"
#include "job-stops.h"

enum
{
  DOT_ROOM = 26, /* height kept for the dots above the words */
  STOP_MIN_WIDTH = 72
};

struct _UnsootJobPath
{
  GtkWidget parent_instance;

  UnsootJobStop stops[UNSOOT_MAX_STOPS];
  guint n_stops;
};

G_DEFINE_FINAL_TYPE (UnsootJobPath, unsoot_job_path, GTK_TYPE_WIDGET)

static void
remove_children (GtkWidget *widget)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (widget)) != NULL)
    gtk_widget_unparent (child);
}

static void
unsoot_job_path_dispose (GObject *object)
{
  remove_children (GTK_WIDGET (object));
  G_OBJECT_CLASS (unsoot_job_path_parent_class)->dispose (object);
}

static void
unsoot_job_path_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                         int *natural, int *minimum_baseline, int *natural_baseline)
{
  const guint n = UNSOOT_JOB_PATH (widget)->n_stops;
  const int room
      = orientation == GTK_ORIENTATION_VERTICAL && for_size > 0 && n > 0 ? for_size / (int) n : -1;

  *minimum = *natural = 0;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int least, usual;
      gtk_widget_measure (child, orientation, room, &least, &usual, NULL, NULL);
      *minimum = MAX (*minimum, least);
      *natural = MAX (*natural, usual);
    }
  if (orientation == GTK_ORIENTATION_HORIZONTAL)
    {
      *minimum = MAX (*minimum, STOP_MIN_WIDTH) * (int) n;
      *natural = MAX (*natural + 24, STOP_MIN_WIDTH) * (int) n;
    }
  else
    {
      *minimum += DOT_ROOM;
      *natural += DOT_ROOM;
    }
}

static void
unsoot_job_path_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  const int n = (int) UNSOOT_JOB_PATH (widget)->n_stops;
  int i = 0;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child), i++)
    {
      const int left = width * i / n, right = width * (i + 1) / n;
      const GtkAllocation place = { left, DOT_ROOM, right - left, height - DOT_ROOM };
      gtk_widget_size_allocate (child, &place, -1);
    }
}

static void
draw_disc (GtkSnapshot *snapshot, float x, float y, float radius, const GdkRGBA *colour,
           float corner)
{
  GskRoundedRect disc;

  gsk_rounded_rect_init_from_rect (
      &disc, &GRAPHENE_RECT_INIT (x - radius, y - radius, 2 * radius, 2 * radius), radius * corner);
  gtk_snapshot_push_rounded_clip (snapshot, &disc);
  gtk_snapshot_append_color (snapshot, colour, &disc.bounds);
  gtk_snapshot_pop (snapshot);
}

static void
draw_ring (GtkSnapshot *snapshot, float x, float y, float radius, const GdkRGBA *colour)
{
  const float widths[] = { 2, 2, 2, 2 };
  const GdkRGBA colours[] = { *colour, *colour, *colour, *colour };
  GskRoundedRect ring;

  gsk_rounded_rect_init_from_rect (
      &ring, &GRAPHENE_RECT_INIT (x - radius, y - radius, 2 * radius, 2 * radius), radius);
  gtk_snapshot_append_border (snapshot, &ring, widths, colours);
}

typedef struct
{
  GdkRGBA accent;
  GdkRGBA faint;
  GdkRGBA warning;
} Inks;

static void
draw_stop (GtkSnapshot *snapshot, UnsootStopState state, float x, const Inks *inks)
{
  const float y = DOT_ROOM / 2.0f - 2;

  switch (state)
    {
    case UNSOOT_STOP_PASSED:
      draw_disc (snapshot, x, y, 6, &inks->accent, 1);
      break;
    case UNSOOT_STOP_SKIPPED:
      draw_disc (snapshot, x, y, 3, &inks->accent, 1);
      break;
    case UNSOOT_STOP_HERE:
      draw_ring (snapshot, x, y, 11, &inks->accent);
      draw_disc (snapshot, x, y, 7, &inks->accent, 1);
      break;
    case UNSOOT_STOP_AHEAD:
      draw_ring (snapshot, x, y, 6, &inks->faint);
      break;
    case UNSOOT_STOP_OFF:
      draw_disc (snapshot, x, y, 9, &inks->warning, 0.3f);
      break;
    }
}

/* How far the stop's own drawing reaches, so that the line does not run through it. */
static float
reach (UnsootStopState state)
{
  switch (state)
    {
    case UNSOOT_STOP_PASSED:
    case UNSOOT_STOP_AHEAD:
      return 6;
    case UNSOOT_STOP_SKIPPED:
      return 3;
    case UNSOOT_STOP_HERE:
      return 11;
    case UNSOOT_STOP_OFF:
      return 9;
    }
  g_return_val_if_reached (0);
}

static void
draw_line (GtkSnapshot *snapshot, const UnsootJobStop *from, const UnsootJobStop *to, float x0,
           float x1, const Inks *inks)
{
  const gboolean done = to->state != UNSOOT_STOP_AHEAD;
  const float left = x0 + reach (from->state) + 3, right = x1 - reach (to->state) - 3;
  const GdkRGBA *ink = to->state == UNSOOT_STOP_OFF ? &inks->warning
                       : done                       ? &inks->accent
                                                    : &inks->faint;

  if (right > left)
    gtk_snapshot_append_color (
        snapshot, ink, &GRAPHENE_RECT_INIT (left, DOT_ROOM / 2.0f - 3, right - left, done ? 2 : 1));
}

static void
find_inks (GtkWidget *widget, Inks *inks)
{
  GtkStyleContext *style = gtk_widget_get_style_context (widget);

  gtk_style_context_get_color (style, &inks->faint);
  inks->accent = inks->warning = inks->faint;
  inks->faint.alpha *= 0.4f;
  gtk_style_context_lookup_color (style, "accent_color", &inks->accent);
  gtk_style_context_lookup_color (style, "warning_color", &inks->warning);
}

static void
unsoot_job_path_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  UnsootJobPath *self = UNSOOT_JOB_PATH (widget);
  const float step = (float) gtk_widget_get_width (widget) / (float) MAX (self->n_stops, 1);
  Inks inks;

  find_inks (widget, &inks);
  for (guint i = 0; i < self->n_stops; i++)
    {
      const float x = step * ((float) i + 0.5f);
      if (i > 0)
        draw_line (snapshot, &self->stops[i - 1], &self->stops[i], x - step, x, &inks);
      draw_stop (snapshot, self->stops[i].state, x, &inks);
    }
  GTK_WIDGET_CLASS (unsoot_job_path_parent_class)->snapshot (widget, snapshot);
}

static GtkSizeRequestMode
unsoot_job_path_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
unsoot_job_path_class_init (UnsootJobPathClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_job_path_dispose;
  widget_class->measure = unsoot_job_path_measure;
  widget_class->get_request_mode = unsoot_job_path_get_request_mode;
  widget_class->size_allocate = unsoot_job_path_size_allocate;
  widget_class->snapshot = unsoot_job_path_snapshot;
  gtk_widget_class_set_css_name (widget_class, "jobpath");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_LIST);
}

static void
unsoot_job_path_init (UnsootJobPath *self)
{
  unsoot_access_name (GTK_WIDGET (self), _ ("The path of this job"));
}

GtkWidget *
unsoot_job_path_new (void)
{
  return g_object_new (UNSOOT_TYPE_JOB_PATH, NULL);
}

static char *
stop_name (const UnsootJobStop *stop, const char *words, const char *time)
{
  switch (stop->state)
    {
    case UNSOOT_STOP_PASSED:
      return g_strdup_printf ("%s, %s", words, time);
    case UNSOOT_STOP_SKIPPED:
      /* Translators: a stop of a job's path that it went past: “Booked, left out” */
      return g_strdup_printf (_ ("%s, left out"), words);
    case UNSOOT_STOP_HERE:
    case UNSOOT_STOP_OFF:
      /* Translators: where a job stands: “In bay, now, since 08:40” */
      return g_strdup_printf (_ ("%s, now, since %s"), words, time);
    case UNSOOT_STOP_AHEAD:
      /* Translators: a stop of a job's path still to come: “Paid, to come” */
      return g_strdup_printf (_ ("%s, to come"), words);
    }
  g_return_val_if_reached (NULL);
}

static GtkWidget *
stop_new (const UnsootJobStop *stop, gint64 now, GTimeZone *zone)
{
  GtkWidget *box = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL,
                                 "accessible-role", GTK_ACCESSIBLE_ROLE_LIST_ITEM, NULL);
  const char *words = unsoot_job_status_words (stop->status);
  g_autofree char *time = unsoot_format_stamp (stop->at, now, zone);
  g_autofree char *name = stop_name (stop, words, time);
  GtkWidget *title = gtk_label_new (words), *stamp = gtk_label_new (time);

  gtk_label_set_wrap (GTK_LABEL (title), TRUE);
  gtk_label_set_justify (GTK_LABEL (title), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (stamp, "caption");
  gtk_widget_add_css_class (stamp, "figures");
  gtk_widget_add_css_class (stamp, "dim-label");
  if (stop->state == UNSOOT_STOP_HERE || stop->state == UNSOOT_STOP_OFF)
    gtk_widget_add_css_class (title, "heading");
  if (stop->state == UNSOOT_STOP_AHEAD || stop->state == UNSOOT_STOP_SKIPPED)
    gtk_widget_add_css_class (title, "dim-label");
  gtk_box_append (GTK_BOX (box), title);
  gtk_box_append (GTK_BOX (box), stamp);
  unsoot_access_name (box, name);
  if (stop->at != 0)
    {
      g_autofree char *exact = unsoot_format_exact (stop->at, zone);
      gtk_widget_set_tooltip_text (box, exact);
    }
  return box;
}

void
unsoot_job_path_show (UnsootJobPath *self, const char *status, const GPtrArray *history, gint64 now,
                      GTimeZone *zone)
{
  g_return_if_fail (UNSOOT_IS_JOB_PATH (self));

  remove_children (GTK_WIDGET (self));
  self->n_stops = unsoot_job_stops (status, history, self->stops);
  for (guint i = 0; i < self->n_stops; i++)
    gtk_widget_set_parent (stop_new (&self->stops[i], now, zone), GTK_WIDGET (self));
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
