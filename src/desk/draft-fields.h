/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

/* The fields of a form whose texts are kept: each with what its record has, so that only what was
 * typed is kept, and is put back over what nobody has touched. */
typedef struct UnsootDraftFields UnsootDraftFields;

/* How a field is read and filled that is none of the toolkit's. */
typedef struct
{
  const char *signal; /* when it changed; "notify::…" too */
  char *(*dup_text) (GtkWidget *field);
  void (*set_text) (GtkWidget *field, const char *text);
  gboolean spoken; /* its text is what a person reads */
} UnsootFieldWays;

UnsootDraftFields *unsoot_draft_fields_new (void);
void unsoot_draft_fields_free (UnsootDraftFields *self);

/**
 * unsoot_draft_fields_add:
 * @name: of the field in what is kept; the same from one release to the next
 * @label: what the field is called; translated
 * @field: borrowed; never one whose text is hidden
 * @ways: (nullable): lasts as long as the program; NULL for an entry, a text, a drop-down or a
 *   check button
 * @changed: called with @owner, a GObject, when it has another text
 */
void unsoot_draft_fields_add (UnsootDraftFields *self, const char *name, const char *label,
                              GtkWidget *field, const UnsootFieldWays *ways, GCallback changed,
                              gpointer owner);

/* That field says what the others are about: it is kept wherever anything is. */
void unsoot_draft_fields_keep_always (UnsootDraftFields *self, const char *name);

/* What stands in the fields now is what the record has. */
void unsoot_draft_fields_settle (UnsootDraftFields *self);

/* What was typed, as JSON; NULL where that is nothing. */
char *unsoot_draft_fields_dup_typed (const UnsootDraftFields *self);

/* Puts that back over what nobody has touched; whether there was anything. To @theirs is added
 * what the record has by now in a field that was typed into before it had that. */
gboolean unsoot_draft_fields_put_back (UnsootDraftFields *self, const char *json, GString *theirs);

/* What the record has stands in all of them again. */
void unsoot_draft_fields_reset (UnsootDraftFields *self);
