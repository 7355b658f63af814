/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-file.h"
#include "bay-lots.h"
#include "bay-task.h"
#include "form-draft.h"
#include "session.h"

G_BEGIN_DECLS

/* The middle of the bay's card: what is entered with a step, the clock of a timer, the cautions
 * of a phase, or sentences. Signals "activate" (Return in a field), "answered" (a choice was made
 * by its button), "note" (what was used so far is to be noted) and "refused" as of the lots. */
#define UNSOOT_TYPE_BAY_BODY (unsoot_bay_body_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayBody, unsoot_bay_body, UNSOOT, BAY_BODY, GtkBox)

/* Makes anew what @task asks for. Nothing is kept of the arguments. */
void unsoot_bay_body_show (UnsootBayBody *self, const UnsootBayTask *task,
                           const UnsootBayFile *file, UnsootSession *session);

/* The clock, at @now. */
void unsoot_bay_body_tick (UnsootBayBody *self, const UnsootRun *run, gint64 now);

/* Adds what was entered to @event. Errors: a sentence on what is missing or no number. */
gboolean unsoot_bay_body_read (UnsootBayBody *self, UnsootRunEvent *event, GError **error);

/* The lots where one is asked for, else NULL. */
UnsootBayLots *unsoot_bay_body_lots (UnsootBayBody *self);

/* The signature that was typed; empty where none is asked for. */
const char *unsoot_bay_body_note (UnsootBayBody *self);

/* What is written there is kept by @draft. */
void unsoot_bay_body_watch (UnsootBayBody *self, UnsootFormDraft *draft);

/* Puts the keyboard where something is entered; FALSE where nothing is. */
gboolean unsoot_bay_body_focus (UnsootBayBody *self);

G_END_DECLS
