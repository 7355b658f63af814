/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "card.h"
#include "deed-form.h"
#include "record.h"
#include "session.h"

#include <gtk/gtk.h>

/* How a kept record of the shop is changed through a deed's form: each field is filled from the
 * record and put back into it by the same table, so that a conflict can say what both have. */
typedef struct
{
  const UnsootDeedForm *form;
  const UnsootRecordType *type;
  /* What stands in a field: as it may be typed; of a choice its number. To free. */
  char *(*text) (gconstpointer record, gsize field, const char *currency);
  /* Puts what was typed into the record. */
  gboolean (*apply) (gpointer record, const UnsootDeedOrder *order, GError **error);
  gboolean (*save) (UnsootDb *db, const UnsootActing *who, gpointer record, GError **error);
  /* (nullable): the name of the record that a field chose, to free; on the worker */
  char *(*chosen) (UnsootDb *db, gconstpointer record, gsize field);
} UnsootPrefsEdit;

/* The whole of a form's deed, on the worker. Where someone saved it meanwhile the sentence names
 * what they have and what was typed here, and nothing is lost: the form keeps it. */
gboolean unsoot_prefs_carry_out (UnsootDb *db, const UnsootActing *who, UnsootDeedOrder *order,
                                 const UnsootPrefsEdit *edit, GError **error);

/**
 * unsoot_prefs_row_new:
 * @title, @detail, @value: plain texts; the last two may be NULL
 * @record: what is changed; NULL: nothing can be, and there is no button
 *
 * A row that shows it, with a button that opens the form.
 */
GtkWidget *unsoot_prefs_row_new (UnsootSession *session, const UnsootPrefsEdit *edit,
                                 const char *title, const char *detail, const char *value,
                                 gconstpointer record);

/* A button that opens the form for a new record. */
GtkWidget *unsoot_prefs_add_button_new (UnsootSession *session, const UnsootPrefsEdit *edit,
                                        const char *label);

/* A button that opens a form which is no record's; @id is what it is about, 0: nothing yet. */
GtkWidget *unsoot_prefs_form_button_new (UnsootSession *session, const UnsootDeedForm *form,
                                         const char *label, gint64 id, const char *about);

/* One more button on @row that opens another form of the same record. */
void unsoot_prefs_row_add_change (GtkWidget *row, UnsootSession *session,
                                  const UnsootPrefsEdit *edit, const char *label, const char *about,
                                  gconstpointer record);

/* A button at the end of @row that asks, and then carries out a form without fields. */
void unsoot_prefs_row_add_drop (GtkWidget *row, UnsootSession *session, const UnsootDeedForm *form,
                                gint64 id, const char *about);

/* The list that such rows stand in. */
GtkWidget *unsoot_prefs_list_new (const char *name);

/* Puts the list into the card, or, where nothing stands in it, a quiet sentence. Takes @list. */
void unsoot_prefs_list_show (GtkWidget *list, UnsootCard *card, const char *empty);
