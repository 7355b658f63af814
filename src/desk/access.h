/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The name by which a screen reader calls @widget. */
void unsoot_access_name (GtkWidget *widget, const char *name);

/* The same for a row of libadwaita's, which names itself by its title: that would be read twice. */
void unsoot_access_name_row (GtkWidget *row, const char *name);

/* What more is to be said of it. */
void unsoot_access_describe (GtkWidget *widget, const char *description);

/* Calls whatever has no name inside a row of the toolkit's as the row is called: its icons,
 * buttons and lists are made by the toolkit, which leaves them nameless. */
void unsoot_access_name_inside (GtkWidget *row, const char *name);

/* Only the page of @stack that is seen is read out: the toolkit tells of all of them. */
void unsoot_access_stack (GtkStack *stack);
