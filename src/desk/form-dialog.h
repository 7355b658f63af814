/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "form-draft.h"

G_BEGIN_DECLS

/* The window around fields that are filled in together: a way out, and one verb. Ctrl+Return does
 * it from anywhere, Ctrl+L hands the desk over. Signal "apply". */
#define UNSOOT_TYPE_FORM_DIALOG (unsoot_form_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFormDialog, unsoot_form_dialog, UNSOOT, FORM_DIALOG, AdwWindow)

/* @over: any widget of the window; @content is put into it. */
UnsootFormDialog *unsoot_form_dialog_new (GtkWidget *over, const char *title, const char *verb,
                                          GtkWidget *content);

/* What keeps the fields; the form says which they are and when it begins. */
UnsootFormDraft *unsoot_form_dialog_get_draft (UnsootFormDialog *self);

/* What is wrong, and what was done about it; NULL: nothing. Ends being busy. */
void unsoot_form_dialog_say (UnsootFormDialog *self, const char *trouble);

/* While it is carried out nothing is begun a second time. */
void unsoot_form_dialog_set_busy (UnsootFormDialog *self, gboolean busy);

/* It is carried out: a toast in the window below it, and away. */
void unsoot_form_dialog_done (UnsootFormDialog *self, const char *said);

G_END_DECLS
