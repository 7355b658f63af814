/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "job-view-file.h"

/* The marks of both sides with their doses, and a button "Why?" that opens the reasoning: rule,
 * inputs and source of each, and what was noted when it was quoted. NULL where no side is done. */
GtkWidget *unsoot_dose_why_new (const UnsootJobViewFile *file);
