/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "bay-file.h"
#include "bay-lots.h"
#include "bay-task.h"
#include "form-draft.h"
#include "session.h"

G_BEGIN_DECLS

/* What a person enters with a step: a pressure, a lot and a volume, the oil level, a note. Empty
 * where nothing is asked for. Signals "activate" (Return in a field), "answered" (a choice
 * was made by its button: nothing is left to enter) and "refused" as of the lots. */
#define UNSOOT_TYPE_BAY_ENTRY (unsoot_bay_entry_get_type ())
G_DECLARE_FINAL_TYPE (UnsootBayEntry, unsoot_bay_entry, UNSOOT, BAY_ENTRY, GtkBox)

/* What @task asks for. Nothing is kept of the arguments. */
GtkWidget *unsoot_bay_entry_new (const UnsootBayTask *task, const UnsootBayFile *file,
                                 UnsootSession *session);

/* Who signs; @who is proposed. */
GtkWidget *unsoot_bay_entry_new_signature (const char *who);

/* Adds what was entered to @event. Errors: a sentence on what is missing or no number. */
gboolean unsoot_bay_entry_read (UnsootBayEntry *self, UnsootRunEvent *event, GError **error);

/* The lots where one is asked for, else NULL. */
UnsootBayLots *unsoot_bay_entry_lots (UnsootBayEntry *self);

/* The note or signature as it is typed; empty where none is asked for. */
const char *unsoot_bay_entry_note (UnsootBayEntry *self);

/* Puts the keyboard where something is entered; FALSE where nothing is. */
gboolean unsoot_bay_entry_focus (UnsootBayEntry *self);

/* What is written there is kept by @draft. */
void unsoot_bay_entry_watch (UnsootBayEntry *self, UnsootFormDraft *draft);

G_END_DECLS
