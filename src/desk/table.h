/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* A small table that is read, not worked in: a row of heads, then rows of text. Long lists are
 * column views, not this. */
#define UNSOOT_TYPE_TABLE (unsoot_table_get_type ())
G_DECLARE_FINAL_TYPE (UnsootTable, unsoot_table, UNSOOT, TABLE, GtkGrid)

typedef struct
{
  const char *head;   /* translated; NULL closes the list, "" has no head */
  gboolean right;     /* numbers stand to the right */
  gboolean stretches; /* takes the room that is left */
} UnsootTableColumn;

/* @name: for a screen reader. */
GtkWidget *unsoot_table_new (const char *name, const UnsootTableColumn *columns);

/* A row of @markup, one for each column; NULL leaves a cell empty. Returns the row's number. */
int unsoot_table_add (UnsootTable *self, const char *const *markup);

/* The same with a heavier line above it, for a total. */
int unsoot_table_add_total (UnsootTable *self, const char *const *markup);

/* Puts @cell in place of a text. */
void unsoot_table_put (UnsootTable *self, int row, int column, GtkWidget *cell);

G_END_DECLS
