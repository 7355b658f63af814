/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "owed-bar.h"

#include <glib/gi18n-lib.h>

#include "access.h"

enum
{
  BAR_HEIGHT = 6,
  CELLS = 6
};

struct _UnsootOwedBar
{
  GtkBox parent_instance;

  GtkLabel *amounts[CELLS]; /* borrowed */
  GtkWidget *bars[CELLS];
  double shares[CELLS]; /* 0 to 1 of the total */
};

G_DEFINE_FINAL_TYPE (UnsootOwedBar, unsoot_owed_bar, GTK_TYPE_BOX)

static const char *const heads[CELLS] = {
  N_ ("Owed in all"),        N_ ("Not due yet"),        N_ ("1 to 30 days over"),
  N_ ("31 to 60 days over"), N_ ("61 to 90 days over"), N_ ("Over 90 days"),
};

/* The longer it has been, the more it asks for. */
static const char *const inks[CELLS] = {
  "accent_bg_color", "accent_bg_color", "accent_bg_color",
  "warning_color",   "warning_color",   "error_color",
};

static void
draw_cb (GtkDrawingArea *area, cairo_t *cairo, int width, int height, gpointer data)
{
  const double share = *(const double *) data;
  GtkStyleContext *style = gtk_widget_get_style_context (GTK_WIDGET (area));
  const char *ink = g_object_get_data (G_OBJECT (area), "ink");
  GdkRGBA ground, colour;

  gtk_style_context_get_color (style, &ground);
  colour = ground;
  ground.alpha = 0.12f;
  gtk_style_context_lookup_color (style, ink, &colour);
  gdk_cairo_set_source_rgba (cairo, &ground);
  cairo_rectangle (cairo, 0, 0, width, height);
  cairo_fill (cairo);
  gdk_cairo_set_source_rgba (cairo, &colour);
  cairo_rectangle (cairo, 0, 0, width * CLAMP (share, 0, 1), height);
  cairo_fill (cairo);
}

static GtkWidget *
bar_new (double *share, const char *ink)
{
  GtkWidget *bar = gtk_drawing_area_new ();

  gtk_widget_set_size_request (bar, -1, BAR_HEIGHT);
  g_object_set_data (G_OBJECT (bar), "ink", (gpointer) ink);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (bar), draw_cb, share, NULL);
  gtk_accessible_update_state (GTK_ACCESSIBLE (bar), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  return bar;
}

static GtkWidget *
cell_new (UnsootOwedBar *self, int i)
{
  GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *head = gtk_label_new (_ (heads[i])), *amount = gtk_label_new ("–");

  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_label_set_ellipsize (GTK_LABEL (head), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (head, "caption");
  gtk_widget_add_css_class (head, "dim-label");
  gtk_label_set_xalign (GTK_LABEL (amount), 0);
  gtk_label_set_ellipsize (GTK_LABEL (amount), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (amount, "figures");
  gtk_widget_add_css_class (amount, i == 0 ? "title-3" : "text-body");
  self->amounts[i] = GTK_LABEL (amount);
  self->bars[i] = bar_new (&self->shares[i], inks[i]);
  gtk_box_append (GTK_BOX (cell), head);
  gtk_box_append (GTK_BOX (cell), amount);
  gtk_box_append (GTK_BOX (cell), self->bars[i]);
  return cell;
}

static void
unsoot_owed_bar_class_init (UnsootOwedBarClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
unsoot_owed_bar_init (UnsootOwedBar *self)
{
  gtk_box_set_homogeneous (GTK_BOX (self), TRUE);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_widget_add_css_class (GTK_WIDGET (self), "card");
  gtk_widget_add_css_class (GTK_WIDGET (self), "owed-bar");
  for (int i = 0; i < CELLS; i++)
    gtk_box_append (GTK_BOX (self), cell_new (self, i));
  unsoot_access_name (GTK_WIDGET (self), _ ("What is owed"));
}

GtkWidget *
unsoot_owed_bar_new (void)
{
  return g_object_new (UNSOOT_TYPE_OWED_BAR, NULL);
}

void
unsoot_owed_bar_show (UnsootOwedBar *self, const UnsootOwes *owes, UnsootSession *session)
{
  const gint64 amounts[CELLS]
      = { owes->total, owes->not_due, owes->to_30, owes->to_60, owes->to_90, owes->over_90 };

  for (int i = 0; i < CELLS; i++)
    {
      g_autofree char *money = unsoot_session_money (session, amounts[i]);
      gtk_label_set_text (self->amounts[i], money);
      gtk_widget_set_tooltip_text (GTK_WIDGET (self->amounts[i]), money);
      self->shares[i] = owes->total > 0 ? (double) amounts[i] / (double) owes->total : 0;
      gtk_widget_queue_draw (self->bars[i]);
    }
}
