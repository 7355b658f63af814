/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The window that lists the keys. */
GtkWidget *unsoot_shortcuts_new (GtkWindow *over);
