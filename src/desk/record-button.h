/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "prefs-edit.h"

G_BEGIN_DECLS

/* Records that a field chooses from: an array that owns UnsootRecordChoice. */
typedef struct
{
  gint64 id; /* 0: none of them */
  char *name;
} UnsootRecordChoice;

GPtrArray *unsoot_record_choices_new (void);
void unsoot_record_choices_add (GPtrArray *choices, gint64 id, const char *name);

/**
 * unsoot_record_button_new:
 * @about: (nullable): what the dialog is about, and what the button's name says
 * @record: what is changed; one without an id is new, and stands in the form at first
 * @choices: (nullable): for each field of the form an array or %NULL; referenced
 *
 * A button that opens a record's form, for whoever may.
 */
GtkWidget *unsoot_record_button_new (UnsootSession *session, const UnsootPrefsEdit *edit,
                                     const char *label, const char *about, gconstpointer record,
                                     GPtrArray *const *choices);

/* A row of a list: what it is, with such a button and one that takes it out (@drop, nullable). */
GtkWidget *unsoot_record_row_new (UnsootSession *session, const UnsootPrefsEdit *edit,
                                  const UnsootDeedForm *drop, const char *title, const char *detail,
                                  gconstpointer record, GPtrArray *const *choices);

/* For the text () of such records: "" for none. */
char *unsoot_record_text (const char *text);
char *unsoot_record_number (gint64 number);

/* Puts what was typed there; NULL where nothing was. */
void unsoot_record_take (char **member, const UnsootDeedOrder *order, gsize field);

G_END_DECLS
