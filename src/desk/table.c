/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "table.h"

#include "access.h"

enum
{
  MAX_COLUMNS = 8
};

struct _UnsootTable
{
  GtkGrid parent_instance;

  UnsootTableColumn columns[MAX_COLUMNS];
  int n_columns;
  int n_rows;
};

G_DEFINE_FINAL_TYPE (UnsootTable, unsoot_table, GTK_TYPE_GRID)

static void
unsoot_table_class_init (UnsootTableClass *klass)
{
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_TABLE);
}

static void
unsoot_table_init (UnsootTable *self)
{
  gtk_grid_set_row_spacing (GTK_GRID (self), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self), 12);
}

static GtkWidget *
cell_new (UnsootTable *self, int column, const char *markup)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  gtk_label_set_xalign (GTK_LABEL (label), self->columns[column].right ? 1 : 0);
  gtk_widget_set_valign (label, GTK_ALIGN_BASELINE);
  gtk_widget_set_hexpand (label, self->columns[column].stretches);
  gtk_label_set_wrap (GTK_LABEL (label), self->columns[column].stretches);
  gtk_widget_add_css_class (label, "figures");
  return label;
}

static void
add_heads (UnsootTable *self)
{
  gboolean any = FALSE;

  for (int i = 0; i < self->n_columns; i++)
    any |= self->columns[i].head[0] != '\0';
  if (!any)
    return;
  for (int i = 0; i < self->n_columns; i++)
    {
      g_autofree char *markup = g_markup_escape_text (self->columns[i].head, -1);
      GtkWidget *head;

      if (*markup == '\0')
        continue;
      head = cell_new (self, i, markup);
      gtk_widget_add_css_class (head, "caption-heading");
      gtk_widget_add_css_class (head, "dim-label");
      gtk_grid_attach (GTK_GRID (self), head, i, 0, 1, 1);
    }
  self->n_rows = 1;
}

GtkWidget *
unsoot_table_new (const char *name, const UnsootTableColumn *columns)
{
  UnsootTable *self = g_object_new (UNSOOT_TYPE_TABLE, NULL);

  while (self->n_columns < MAX_COLUMNS && columns[self->n_columns].head != NULL)
    {
      self->columns[self->n_columns] = columns[self->n_columns];
      self->n_columns++;
    }
  unsoot_access_name (GTK_WIDGET (self), name);
  add_heads (self);
  return GTK_WIDGET (self);
}

int
unsoot_table_add (UnsootTable *self, const char *const *markup)
{
  for (int i = 0; i < self->n_columns; i++)
    if (markup[i] != NULL)
      gtk_grid_attach (GTK_GRID (self), cell_new (self, i, markup[i]), i, self->n_rows, 1, 1);
  return self->n_rows++;
}

static gboolean
has_cells (UnsootTable *self, int column)
{
  for (int row = 0; row < self->n_rows; row++)
    if (gtk_grid_get_child_at (GTK_GRID (self), column, row) != NULL)
      return TRUE;
  return FALSE;
}

/* A line reaches no further than the last column with something in it. */
static int
columns_used (UnsootTable *self)
{
  int used = self->n_columns;

  while (used > 1 && !has_cells (self, used - 1))
    used--;
  return used;
}

int
unsoot_table_add_total (UnsootTable *self, const char *const *markup)
{
  GtkWidget *line = gtk_separator_new (GTK_ORIENTATION_HORIZONTAL);

  gtk_grid_attach (GTK_GRID (self), line, 0, self->n_rows++, columns_used (self), 1);
  return unsoot_table_add (self, markup);
}

void
unsoot_table_put (UnsootTable *self, int row, int column, GtkWidget *cell)
{
  GtkWidget *old = gtk_grid_get_child_at (GTK_GRID (self), column, row);

  if (old != NULL)
    gtk_grid_remove (GTK_GRID (self), old);
  gtk_widget_set_valign (cell, gtk_widget_has_css_class (cell, "small") ? GTK_ALIGN_START
                                                                        : GTK_ALIGN_BASELINE);
  gtk_grid_attach (GTK_GRID (self), cell, column, row, 1, 1);
}
