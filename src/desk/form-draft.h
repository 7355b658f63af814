/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "draft-fields.h"
#include "session.h"

G_BEGIN_DECLS

/* Keeps what is typed into a form until it is carried out, by person, form and record: a moment
 * after it was typed, when the form is left, and when hands change. Opened again the form has it
 * again, and this is the quiet line that says from when, with a way to drop it. What someone else
 * saved meanwhile in a field that was typed into stands in the line.
 *
 * Signal "hands-changed": someone else is at the desk, what was typed is kept, the form is to
 * close. */
#define UNSOOT_TYPE_FORM_DRAFT (unsoot_form_draft_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFormDraft, unsoot_form_draft, UNSOOT, FORM_DRAFT, GtkBox)

GtkWidget *unsoot_form_draft_new (void);

/**
 * unsoot_form_draft_watch:
 * @name: of the field in what is kept; the same from one release to the next
 * @label: what the field is called; translated
 * @field: an entry, a text, a drop-down or a check button; never one whose text is hidden
 */
void unsoot_form_draft_watch (UnsootFormDraft *self, const char *name, const char *label,
                              GtkWidget *field);

/* The same for any other. @ways lasts as long as the program. */
void unsoot_form_draft_watch_as (UnsootFormDraft *self, const char *name, const char *label,
                                 GtkWidget *field, const UnsootFieldWays *ways);

/* That field says what the others are about: it is kept wherever anything is. */
void unsoot_form_draft_watch_always (UnsootFormDraft *self, const char *name);

/* What stands in the fields now is what the record has; what was kept is put over it as soon as
 * it is read. The widget is in its form by now. @record 0: something new. */
void unsoot_form_draft_begin (UnsootFormDraft *self, UnsootSession *session, const char *place,
                              gint64 record);

/* What stands in the fields now was saved, or read anew: typing counts from here. */
void unsoot_form_draft_settle (UnsootFormDraft *self);

/* The same fields are for something else from here on: it is kept, and the next begin is about
 * that. Until then nothing is. */
void unsoot_form_draft_leave (UnsootFormDraft *self);

/* Keeps it now. */
void unsoot_form_draft_keep (UnsootFormDraft *self);

/* It is carried out: nothing is kept any more. */
void unsoot_form_draft_done (UnsootFormDraft *self);

/* Ctrl+L in a form's window, as in the one below it: it closes, and hands change there. For its
 * class_init. */
void unsoot_form_draft_add_hands (GtkWidgetClass *window_class);

G_END_DECLS
