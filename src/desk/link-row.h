/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* A row of a boxed list that opens a record: plain texts, either may be NULL. */
GtkWidget *unsoot_link_row_new (const char *slug, gint64 record, const char *title,
                                const char *subtitle);

/* Puts @widget at the row's end. */
void unsoot_link_row_add (GtkWidget *row, GtkWidget *widget);

/* Puts a text there, plain. */
void unsoot_link_row_add_text (GtkWidget *row, const char *text);

/* A list for such rows, named for a screen reader. */
GtkWidget *unsoot_link_list_new (const char *name);
