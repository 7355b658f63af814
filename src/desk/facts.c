/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "facts.h"

enum
{
  VALUE_CHARS = 40 /* what a value would like to have; a card gives it more */
};

struct _UnsootFacts
{
  GtkGrid parent_instance;

  int n_rows;
};

G_DEFINE_FINAL_TYPE (UnsootFacts, unsoot_facts, GTK_TYPE_GRID)

static void
unsoot_facts_class_init (UnsootFactsClass *klass)
{
}

static void
unsoot_facts_init (UnsootFacts *self)
{
  gtk_grid_set_row_spacing (GTK_GRID (self), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self), 18);
}

GtkWidget *
unsoot_facts_new (void)
{
  return g_object_new (UNSOOT_TYPE_FACTS, NULL);
}

void
unsoot_facts_add_widget (UnsootFacts *self, const char *what, GtkWidget *value)
{
  GtkWidget *label = gtk_label_new (what);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_valign (label, GTK_IS_LABEL (value) ? GTK_ALIGN_START : GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_accessible_update_relation (GTK_ACCESSIBLE (value), GTK_ACCESSIBLE_RELATION_DESCRIBED_BY,
                                  label, NULL, -1);
  gtk_grid_attach (GTK_GRID (self), label, 0, self->n_rows, 1, 1);
  gtk_grid_attach (GTK_GRID (self), value, 1, self->n_rows, 1, 1);
  self->n_rows++;
}

GtkWidget *
unsoot_facts_add (UnsootFacts *self, const char *what, const char *value)
{
  GtkWidget *label;

  if (value == NULL || *value == '\0')
    return NULL;
  label = gtk_label_new (value);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), VALUE_CHARS);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "figures");
  unsoot_facts_add_widget (self, what, label);
  return label;
}

gboolean
unsoot_facts_is_empty (UnsootFacts *self)
{
  return self->n_rows == 0;
}
