/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* Where a job stands, as a small label: its words, on a ground that tells whether it waits, is
 * being worked on, is done, or is off its path. */
GtkWidget *unsoot_status_mark_new (void);
void unsoot_status_mark_set (GtkWidget *mark, const char *status);
