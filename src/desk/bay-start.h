/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-file.h"

G_BEGIN_DECLS

/* Before the first step: on which machine, with what its tanks hold. Signal "begin" (the
 * machine's id). */
#define UNSOOT_TYPE_BAY_START (unsoot_bay_start_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayStart, unsoot_bay_start, UNSOOT, BAY_START, GtkBox)

/* Borrowed for the call. The machine chosen before stays chosen. */
void unsoot_bay_start_show (UnsootBayStart *self, const UnsootBayFile *file);

/* Why it can't begin; NULL takes it away. */
void unsoot_bay_start_say (UnsootBayStart *self, const char *sentence);
void unsoot_bay_start_set_busy (UnsootBayStart *self, gboolean busy);

G_END_DECLS
