/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-file.h"
#include "bay-lots.h"
#include "bay-task.h"
#include "session.h"

G_BEGIN_DECLS

/* The one thing that is asked for, in big words, with its buttons. Signals: "event" (an
 * UnsootRunEvent that is to be stored, borrowed), "go-on", "sign" (by whom), "not-so" (what was
 * asked again is not so). What was entered stays until
 * something else is asked for. */
#define UNSOOT_TYPE_BAY_CARD (unsoot_bay_card_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayCard, unsoot_bay_card, UNSOOT, BAY_CARD, GtkBox)

/* Takes @task; the others are borrowed for the call. */
void unsoot_bay_card_show (UnsootBayCard *self, UnsootBayTask *task, const UnsootBayFile *file,
                           UnsootSession *session);

/* What is shown; NULL at first. */
const UnsootBayTask *unsoot_bay_card_get_task (UnsootBayCard *self);

/* A sentence about what did not go; NULL takes it away. */
void unsoot_bay_card_say (UnsootBayCard *self, const char *sentence);

/* While something is stored nothing can be pressed twice. */
void unsoot_bay_card_set_busy (UnsootBayCard *self, gboolean busy);

/* Turns the clock on. */
void unsoot_bay_card_tick (UnsootBayCard *self, const UnsootRun *run, gint64 now);

/* Something was scanned; FALSE where no lot is asked for. */
gboolean unsoot_bay_card_scan (UnsootBayCard *self, const char *code);

/* Someone else is at the desk: what was typed is kept for its writer, and asked for anew. */
void unsoot_bay_card_forget (UnsootBayCard *self);

void unsoot_bay_card_focus (UnsootBayCard *self);

G_END_DECLS
