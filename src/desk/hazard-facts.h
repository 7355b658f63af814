/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "fluid-row.h"

/* What a fluid does to people, in the words of its label; always with the caution that the
 * supplier's data sheet and local rules come first. */
GtkWidget *unsoot_hazard_facts_new (const UnsootFluidRow *fluid, const char *today);
