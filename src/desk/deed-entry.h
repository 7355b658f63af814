/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "deed-form.h"

G_BEGIN_DECLS

/* One field of a deed's dialog: its label, what is typed or chosen, and below it how it may be
 * typed or what is wrong with it. Signals "edited" and "activate". */
#define UNSOOT_TYPE_DEED_ENTRY (unsoot_deed_entry_get_type ())
G_DECLARE_FINAL_TYPE (UnsootDeedEntry, unsoot_deed_entry, UNSOOT, DEED_ENTRY, GtkBox)

/* @field lasts as long as the program. */
GtkWidget *unsoot_deed_entry_new (const UnsootDeedField *field);

/* What may be chosen; for choices that are not fixed. */
void unsoot_deed_entry_add_choice (UnsootDeedEntry *self, gint64 number, const char *words);

/* Puts in what was typed before, or the number of a choice. */
void unsoot_deed_entry_set_text (UnsootDeedEntry *self, const char *text);
void unsoot_deed_entry_set_choice (UnsootDeedEntry *self, gint64 number);
char *unsoot_deed_entry_dup_text (UnsootDeedEntry *self);

/* Reads it; what is wrong is said below it, until it is edited. */
gboolean unsoot_deed_entry_read (UnsootDeedEntry *self, const char *currency,
                                 UnsootDeedValue *value);
void unsoot_deed_entry_focus (UnsootDeedEntry *self);

G_END_DECLS
