/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

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

/* A button at the end of @row that asks, and then carries out a form without fields. */
void unsoot_prefs_row_add_drop (GtkWidget *row, UnsootSession *session, const UnsootDeedForm *form,
                                gint64 id, const char *about);

/* The list that such rows stand in. */
GtkWidget *unsoot_prefs_list_new (const char *name);
