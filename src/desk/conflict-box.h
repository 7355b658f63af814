/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "record.h"

G_BEGIN_DECLS

/* What a field of a record is called on the screen; closed by a NULL. */
typedef struct
{
  const char *field;
  const char *label; /* N_ () */
} UnsootFieldLabel;

/* Both versions of a record that someone saved meanwhile, field by field where they differ, and
 * the choice between them. Signals "mine" and "theirs". */
#define UNSOOT_TYPE_CONFLICT_BOX (unsoot_conflict_box_get_type ())
G_DECLARE_FINAL_TYPE (UnsootConflictBox, unsoot_conflict_box, UNSOOT, CONFLICT_BOX, GtkBox)

GtkWidget *unsoot_conflict_box_new (void);

/* How a field of @record reads; NULL: as it is kept. To free. */
typedef char *(*UnsootFieldWords) (gpointer owner, const char *field, gconstpointer record);

/* Shows the differences; FALSE where there are none in fields that have a label. @words may be
 * NULL. */
gboolean unsoot_conflict_box_show (UnsootConflictBox *self, const UnsootRecordType *type,
                                   gconstpointer mine, gconstpointer theirs,
                                   const UnsootFieldLabel *labels, UnsootFieldWords words,
                                   gpointer owner);

/* One line more below them, if both texts differ; FALSE where they don't. */
gboolean unsoot_conflict_box_add (UnsootConflictBox *self, const char *label, const char *mine,
                                  const char *theirs);

G_END_DECLS
