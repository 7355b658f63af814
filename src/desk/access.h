/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The name by which a screen reader calls @widget. */
void unsoot_access_name (GtkWidget *widget, const char *name);

/* What more is to be said of it. */
void unsoot_access_describe (GtkWidget *widget, const char *description);
