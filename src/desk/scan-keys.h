/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

typedef void (*UnsootScanFunc) (const char *code, gpointer user_data);

/* Listens to every key in @widget and below for a scanner that types. What one has typed is taken
 * out of the field again that had the keyboard, its Return presses nothing, and @func is called
 * with the code. */
void unsoot_scan_keys_listen (GtkWidget *widget, UnsootScanFunc func, gpointer user_data);
