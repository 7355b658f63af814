/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-steps.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "bay-task.h"

struct _UnsootBaySteps
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkLabel *done;
  GtkScrolledWindow *scroll;
  GtkBox *list;
  GtkWidget *present; /* NULL: none */

  guint scroll_id;
};

G_DEFINE_FINAL_TYPE (UnsootBaySteps, unsoot_bay_steps, GTK_TYPE_BOX)

static void
unsoot_bay_steps_dispose (GObject *object)
{
  UnsootBaySteps *self = UNSOOT_BAY_STEPS (object);

  if (self->scroll_id != 0)
    gtk_widget_remove_tick_callback (GTK_WIDGET (self), self->scroll_id);
  self->scroll_id = 0;
  G_OBJECT_CLASS (unsoot_bay_steps_parent_class)->dispose (object);
}

static void
unsoot_bay_steps_class_init (UnsootBayStepsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_bay_steps_dispose;
}

static void
unsoot_bay_steps_init (UnsootBaySteps *self)
{
  GtkWidget *done = gtk_label_new (NULL), *scroll = gtk_scrolled_window_new ();
  GtkWidget *list = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL,
                                  "accessible-role", GTK_ACCESSIBLE_ROLE_LIST, NULL);

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->done = GTK_LABEL (done);
  self->scroll = GTK_SCROLLED_WINDOW (scroll);
  self->list = GTK_BOX (list);
  gtk_label_set_xalign (self->done, 0);
  gtk_widget_add_css_class (done, "heading");
  gtk_widget_add_css_class (done, "figures");
  gtk_scrolled_window_set_policy (self->scroll, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_child (self->scroll, list);
  gtk_widget_set_vexpand (scroll, TRUE);
  unsoot_access_name (list, _ ("Steps of this part"));
  gtk_widget_add_css_class (GTK_WIDGET (self), "steps");
  gtk_box_append (GTK_BOX (self), done);
  gtk_box_append (GTK_BOX (self), scroll);
}

/* After the list has its size, and once. */
static gboolean
scroll_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  UnsootBaySteps *self = UNSOOT_BAY_STEPS (widget);
  GtkAdjustment *adjustment = gtk_scrolled_window_get_vadjustment (self->scroll);
  graphene_rect_t place;

  self->scroll_id = 0;
  if (self->present != NULL
      && gtk_widget_compute_bounds (self->present, GTK_WIDGET (self->list), &place))
    gtk_adjustment_set_value (adjustment, (double) (place.origin.y + place.size.height / 2)
                                              - gtk_adjustment_get_page_size (adjustment) * 0.4);
  return G_SOURCE_REMOVE;
}

static GtkWidget *
row_new (const UnsootRun *run, int index, const char **state)
{
  const UnsootStep *step = unsoot_procedure_step (unsoot_run_procedure (run), index);
  GtkWidget *row = g_object_new (GTK_TYPE_BOX, "spacing", 6, "accessible-role",
                                 GTK_ACCESSIBLE_ROLE_LIST_ITEM, NULL);
  const gboolean done = unsoot_run_step_done (run, index);
  const gboolean passed = unsoot_run_step_passed_over (run, index);
  const gboolean present = index == unsoot_run_current (run);
  g_autofree char *words = unsoot_step_words (step);
  g_autofree char *number = done     ? g_strdup ("✓")
                            : passed ? g_strdup ("–")
                                     : g_strdup_printf ("%d", index + 1);
  GtkWidget *mark = gtk_label_new (number), *text = gtk_label_new (words);

  *state = done ? _ ("done") : passed ? _ ("passed over") : present ? _ ("now") : _ ("to come");
  gtk_label_set_width_chars (GTK_LABEL (mark), 3);
  gtk_label_set_xalign (GTK_LABEL (mark), 1);
  gtk_label_set_xalign (GTK_LABEL (text), 0);
  gtk_label_set_wrap (GTK_LABEL (text), TRUE);
  gtk_label_set_lines (GTK_LABEL (text), 2);
  gtk_label_set_ellipsize (GTK_LABEL (text), PANGO_ELLIPSIZE_END);
  gtk_widget_set_hexpand (text, TRUE);
  gtk_widget_add_css_class (mark, "figures");
  gtk_widget_add_css_class (row, "step-row");
  gtk_widget_add_css_class (row, present ? "present" : done || passed ? "past" : "ahead");
  gtk_box_append (GTK_BOX (row), mark);
  gtk_box_append (GTK_BOX (row), text);
  return row;
}

static void
add_row (UnsootBaySteps *self, const UnsootRun *run, int index)
{
  const UnsootStep *step = unsoot_procedure_step (unsoot_run_procedure (run), index);
  g_autofree char *words = unsoot_step_words (step);
  const char *state;
  GtkWidget *row = row_new (run, index, &state);
  /* Translators: a step of the list, for a screen reader: “8, Set the air: now” */
  g_autofree char *name = g_strdup_printf (_ ("%d, %s: %s"), index + 1, words, state);

  unsoot_access_name (row, name);
  gtk_box_append (self->list, row);
  if (index == unsoot_run_current (run))
    self->present = row;
}

void
unsoot_bay_steps_show (UnsootBaySteps *self, const UnsootRun *run)
{
  const UnsootProcedure *procedure = unsoot_run_procedure (run);
  guint steps = 0, done = 0;
  const int phase = unsoot_bay_phase (run, &steps, &done);
  g_autofree char *words = g_strdup_printf (_ ("%d of %d done"), (int) done, (int) steps);
  GtkWidget *row;

  g_return_if_fail (UNSOOT_IS_BAY_STEPS (self));
  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_box_remove (self->list, row);
  self->present = NULL;
  gtk_label_set_text (self->done, words);
  for (int i = 0; i < (int) procedure->steps->len; i++)
    if (unsoot_procedure_step (procedure, i)->phase == phase)
      add_row (self, run, i);
  if (self->scroll_id == 0)
    self->scroll_id = gtk_widget_add_tick_callback (GTK_WIDGET (self), scroll_cb, NULL, NULL);
}
