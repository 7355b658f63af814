/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <adwaita.h>

#include "deed-form.h"
#include "session.h"

G_BEGIN_DECLS

/* Asks for what a deed needs, carries it out, and says so in a toast, with Undo where there is
 * a counter-posting. What is wrong is said at its field, what the store refuses below them, and
 * everything typed stays. What was typed and not carried out is there again when the same deed
 * of the same record is opened next. */
#define UNSOOT_TYPE_DEED_DIALOG (unsoot_deed_dialog_get_type ())
G_DECLARE_FINAL_TYPE (UnsootDeedDialog, unsoot_deed_dialog, UNSOOT, DEED_DIALOG, AdwWindow)

/* @over: any widget of the window; @form lasts as long as the program. */
UnsootDeedDialog *unsoot_deed_dialog_new (GtkWidget *over, UnsootSession *session,
                                          const UnsootDeedForm *form, gint64 record);

/* What it is about, below the title; plain text. */
void unsoot_deed_dialog_say (UnsootDeedDialog *self, const char *sentence);

/* What stands in a field at first, where nothing was typed before. */
void unsoot_deed_dialog_set_text (UnsootDeedDialog *self, gsize field, const char *text);
void unsoot_deed_dialog_add_choice (UnsootDeedDialog *self, gsize field, gint64 number,
                                    const char *words);
void unsoot_deed_dialog_set_choice (UnsootDeedDialog *self, gsize field, gint64 number);

/* The version of the record that the form was filled from; told to the deed. */
void unsoot_deed_dialog_set_version (UnsootDeedDialog *self, gint64 version);

/* It is about this part of the record only (a gauge, a lot, a check): what is typed into it is
 * kept for that. */
void unsoot_deed_dialog_set_part (UnsootDeedDialog *self, const char *part);

/* A picture that goes along, shown above the fields; copied. */
void unsoot_deed_dialog_attach (UnsootDeedDialog *self, const UnsootPicture *picture);

/* Shows it. */
void unsoot_deed_dialog_open (UnsootDeedDialog *self);

/* Carries out a deed that asks for nothing. */
void unsoot_deed_do (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form,
                     gint64 record);

G_END_DECLS
