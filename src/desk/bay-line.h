/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* A label that wraps, at the left. */
GtkWidget *unsoot_bay_line_new (const char *text, const char *css_class);

/* Gives it a width to wrap at, and returns it: a card is asked how high it is at the narrowest
 * that it can be. */
GtkWidget *unsoot_bay_line_narrow (GtkWidget *line, int characters);
