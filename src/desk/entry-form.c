/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "entry-form.h"

#include "access.h"

struct _UnsootForm
{
  GtkGrid parent_instance;

  int next; /* place, counted over both columns */
};

G_DEFINE_FINAL_TYPE (UnsootForm, unsoot_form, GTK_TYPE_GRID)

static void
unsoot_form_class_init (UnsootFormClass *klass)
{
}

static void
unsoot_form_init (UnsootForm *self)
{
  gtk_grid_set_row_spacing (GTK_GRID (self), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self), 12);
  gtk_grid_set_column_homogeneous (GTK_GRID (self), TRUE);
}

GtkWidget *
unsoot_form_new (void)
{
  return g_object_new (UNSOOT_TYPE_FORM, NULL);
}

static void
attach (UnsootForm *self, GtkWidget *cell, int columns)
{
  const int left = UNSOOT_FORM_COLUMNS - self->next % UNSOOT_FORM_COLUMNS;

  if (columns > left)
    self->next += left;
  gtk_widget_set_hexpand (cell, TRUE);
  gtk_grid_attach (GTK_GRID (self), cell, self->next % UNSOOT_FORM_COLUMNS,
                   self->next / UNSOOT_FORM_COLUMNS, columns, 1);
  self->next += columns;
}

void
unsoot_form_name (GtkWidget *field, const char *label)
{
  unsoot_access_name (field, label);
  unsoot_access_name_inside (field, label);
}

void
unsoot_form_add (UnsootForm *self, const char *label, GtkWidget *field, int columns)
{
  GtkWidget *cell = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2), *title = gtk_label_new (label);

  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_label_set_ellipsize (GTK_LABEL (title), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (title, "caption");
  gtk_widget_add_css_class (title, "dim-label");
  gtk_box_append (GTK_BOX (cell), title);
  gtk_box_append (GTK_BOX (cell), field);
  /* A field is hidden with its label. */
  g_object_bind_property (field, "visible", cell, "visible", G_BINDING_SYNC_CREATE);
  unsoot_form_name (field, label);
  attach (self, cell, columns);
}

GtkWidget *
unsoot_form_entry (UnsootForm *self, const char *label, int columns)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 8);
  unsoot_form_add (self, label, entry, columns);
  return entry;
}

GtkWidget *
unsoot_form_choice (UnsootForm *self, const char *label, int columns)
{
  GtkWidget *choice = gtk_drop_down_new_from_strings ((const char *const[]){ NULL });

  unsoot_form_add (self, label, choice, columns);
  return choice;
}

GtkWidget *
unsoot_form_check (UnsootForm *self, const char *label, int columns)
{
  GtkWidget *check = gtk_check_button_new_with_label (label);

  unsoot_form_name (check, label);
  attach (self, check, columns);
  return check;
}

GtkWidget *
unsoot_form_note (UnsootForm *self)
{
  GtkWidget *note = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (note), 0);
  gtk_label_set_wrap (GTK_LABEL (note), TRUE);
  gtk_widget_add_css_class (note, "caption");
  gtk_widget_set_visible (note, FALSE);
  attach (self, note, UNSOOT_FORM_COLUMNS);
  return note;
}

void
unsoot_form_say (GtkWidget *note, const char *sentence, gboolean warns)
{
  gtk_label_set_text (GTK_LABEL (note), sentence != NULL ? sentence : "");
  gtk_widget_set_visible (note, sentence != NULL);
  gtk_widget_remove_css_class (note, warns ? "dim-label" : "warning");
  gtk_widget_add_css_class (note, warns ? "warning" : "dim-label");
}

char *
unsoot_form_dup_text (GtkWidget *entry)
{
  char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));

  if (*text == '\0')
    g_clear_pointer (&text, g_free);
  return text;
}

void
unsoot_form_set_text (GtkWidget *entry, const char *text)
{
  const char *wanted = text != NULL ? text : "";

  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (entry)), wanted) != 0)
    gtk_editable_set_text (GTK_EDITABLE (entry), wanted);
}

void
unsoot_form_set_words (GtkWidget *choice, const char *const *words)
{
  GtkStringList *list = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (choice)));

  gtk_string_list_splice (list, 0, g_list_model_get_n_items (G_LIST_MODEL (list)), words);
}
