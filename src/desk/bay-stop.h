/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "run.h"

G_BEGIN_DECLS

/* What STOP shows: at once what to do, nothing asked. Which of the pages it is can be changed,
 * and afterwards it is recorded, with the moment at which it was opened. Signals "record" (an
 * UnsootRunEvent, borrowed) and "back" (nothing was stopped). */
#define UNSOOT_TYPE_BAY_STOP (unsoot_bay_stop_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayStop, unsoot_bay_stop, UNSOOT, BAY_STOP, GtkBox)

/* Begins anew with the ordinary stop. */
void unsoot_bay_stop_open (UnsootBayStop *self, gint64 now);

/* A sentence about what did not go; NULL takes it away. */
void unsoot_bay_stop_say (UnsootBayStop *self, const char *sentence);

G_END_DECLS
