/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Fields in two columns, each under its label, filled from left to right. */
#define UNSOOT_TYPE_FORM (unsoot_form_get_type ())
G_DECLARE_FINAL_TYPE (UnsootForm, unsoot_form, UNSOOT, FORM, GtkGrid)

#define UNSOOT_FORM_COLUMNS 2

GtkWidget *unsoot_form_new (void);

/* Puts @field (named by @label) at the next place, @columns wide. */
void unsoot_form_add (UnsootForm *self, const char *label, GtkWidget *field, int columns);

/* A field for text, for one of some words, for yes or no. */
GtkWidget *unsoot_form_entry (UnsootForm *self, const char *label, int columns);
GtkWidget *unsoot_form_choice (UnsootForm *self, const char *label, int columns);
GtkWidget *unsoot_form_check (UnsootForm *self, const char *label, int columns);

/* A quiet line over both columns, for unsoot_form_say (). */
GtkWidget *unsoot_form_note (UnsootForm *self);

/* Says @sentence there, as a warning where it is one; NULL hides the line. */
void unsoot_form_say (GtkWidget *note, const char *sentence, gboolean warns);

/* What was typed, without spaces around; NULL where that is nothing. Free it. */
char *unsoot_form_dup_text (GtkWidget *entry);
void unsoot_form_set_text (GtkWidget *entry, const char *text);

/* Replaces the words of a choice (NULL-terminated). */
void unsoot_form_set_words (GtkWidget *choice, const char *const *words);

/* A choice's name goes to what it is made of, too: for those made elsewhere. */
void unsoot_form_name (GtkWidget *field, const char *label);

G_END_DECLS
