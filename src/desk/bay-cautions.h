/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The cautions of a phase side by side, each with its heading. @cautions: UnsootCaution, or'ed. */
GtkWidget *unsoot_bay_cautions_new (guint cautions);
