/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-stop.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "stop-happening.h"

enum
{
  LINE_WIDTH = 48 /* characters */
};

struct _UnsootBayStop
{
  GtkBox parent_instance;

  /* template */
  GtkBox *pages;
  GtkBox *others;
  GtkLabel *title;
  GtkBox *lines;
  GtkLabel *never;
  GtkLabel *trouble;
  GtkButton *record;

  GtkToggleButton *first; /* borrowed from pages */
  UnsootHappening happening;
  gint64 since;
};

enum
{
  RECORD,
  BACK,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayStop, unsoot_bay_stop, GTK_TYPE_BOX)

static void
add_line (UnsootBayStop *self, guint number, const char *text)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *figure = g_strdup_printf ("%u", number);
  GtkWidget *mark = gtk_label_new (figure), *words = gtk_label_new (text);

  gtk_widget_add_css_class (mark, "stop-number");
  gtk_widget_set_valign (mark, GTK_ALIGN_START);
  gtk_label_set_xalign (GTK_LABEL (words), 0);
  gtk_label_set_wrap (GTK_LABEL (words), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (words), LINE_WIDTH);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_widget_add_css_class (words, "stop-line");
  gtk_box_append (GTK_BOX (row), mark);
  gtk_box_append (GTK_BOX (row), words);
  gtk_box_append (self->lines, row);
}

static void
show_page (UnsootBayStop *self)
{
  const UnsootStopPage page = unsoot_stop_page_of (self->happening);
  const char *line;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->lines))) != NULL)
    gtk_box_remove (self->lines, child);
  gtk_label_set_text (self->title, unsoot_happening_label (self->happening));
  for (guint i = 0; (line = unsoot_stop_line (page, i)) != NULL; i++)
    add_line (self, i + 1, line);
  gtk_label_set_text (self->never, unsoot_stop_never (page));
}

static void
toggled_cb (GtkToggleButton *button, UnsootBayStop *self)
{
  if (!gtk_toggle_button_get_active (button))
    return;
  self->happening
      = (UnsootHappening) GPOINTER_TO_INT (g_object_get_data (G_OBJECT (button), "happening"));
  show_page (self);
}

/* Return records next. */
static void
chosen_cb (GtkToggleButton *button, UnsootBayStop *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->record));
}

static void
add_choice (UnsootBayStop *self, GtkBox *box, const char *words, UnsootHappening happening,
            const char *css_class)
{
  GtkWidget *button = gtk_toggle_button_new_with_label (words);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_widget_add_css_class (button, css_class);
  gtk_widget_set_hexpand (button, TRUE);
  g_object_set_data (G_OBJECT (button), "happening", GINT_TO_POINTER (happening));
  g_signal_connect (button, "toggled", G_CALLBACK (toggled_cb), self);
  g_signal_connect (button, "clicked", G_CALLBACK (chosen_cb), self);
  if (self->first == NULL)
    self->first = GTK_TOGGLE_BUTTON (button);
  else
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), self->first);
  unsoot_access_name (button, words);
  gtk_box_append (box, button);
}

static void
record_cb (GtkButton *button, UnsootBayStop *self)
{
  const gboolean chosen
      = unsoot_stop_page_happening (unsoot_stop_page_of (self->happening)) == self->happening;
  g_autoptr (UnsootRunEvent) event
      = unsoot_run_event_new (chosen ? UNSOOT_RUN_HALT : UNSOOT_RUN_HAPPENED, self->since);

  event->happening = self->happening;
  g_signal_emit (self, signals[RECORD], 0, event);
}

static void
back_cb (GtkButton *button, UnsootBayStop *self)
{
  g_signal_emit (self, signals[BACK], 0);
}

static void
unsoot_bay_stop_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_bay_stop_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BAY_STOP);
}

static void
unsoot_bay_stop_class_init (UnsootBayStopClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_stop_dispose;
  signals[RECORD] = g_signal_new ("record", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 1, G_TYPE_POINTER);
  signals[BACK]
      = g_signal_new ("back", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/bay-stop.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, pages);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, others);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, lines);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, never);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootBayStop, record);
  gtk_widget_class_bind_template_callback (widget_class, record_cb);
  gtk_widget_class_bind_template_callback (widget_class, back_cb);
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
unsoot_bay_stop_init (UnsootBayStop *self)
{
  static const UnsootHappening others[]
      = { UNSOOT_HAPPENING_BURST_HOSE, UNSOOT_HAPPENING_LOST_AIR, UNSOOT_HAPPENING_CO_ALARM };

  gtk_widget_init_template (GTK_WIDGET (self));
  for (int page = 0; page < UNSOOT_STOP_PAGES; page++)
    add_choice (self, self->pages, unsoot_slug_words (unsoot_stop_pages, page),
                unsoot_stop_page_happening ((UnsootStopPage) page), "deed");
  for (gsize i = 0; i < G_N_ELEMENTS (others); i++)
    add_choice (self, self->others, unsoot_happening_label (others[i]), others[i], "aside");
}

void
unsoot_bay_stop_open (UnsootBayStop *self, gint64 now)
{
  g_return_if_fail (UNSOOT_IS_BAY_STOP (self));

  self->since = now;
  unsoot_bay_stop_say (self, NULL);
  gtk_toggle_button_set_active (self->first, TRUE);
  self->happening = UNSOOT_HAPPENING_STOP;
  show_page (self);
  gtk_widget_grab_focus (GTK_WIDGET (self->first));
}

void
unsoot_bay_stop_say (UnsootBayStop *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}
