/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "find.h"

G_BEGIN_DECLS

/* One result of the find box. */
#define UNSOOT_TYPE_FIND_ROW (unsoot_find_row_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFindRow, unsoot_find_row, UNSOOT, FIND_ROW, GtkListBoxRow)

GtkWidget *unsoot_find_row_new (const UnsootFound *found);

UnsootFoundKind unsoot_find_row_get_kind (UnsootFindRow *self);
const char *unsoot_find_row_get_title (UnsootFindRow *self);
/* What it opens with win.open. */
const char *unsoot_find_row_get_slug (UnsootFindRow *self);
gint64 unsoot_find_row_get_record (UnsootFindRow *self);

/* Where a booking for it begins; NULL: nowhere. */
const char *unsoot_find_row_get_booking (UnsootFindRow *self);

/* Gives it its acts, buttons of the action "find.open" (sx): opening it and, where @books, a
 * booking for it. They are shown where it is the chosen one. */
void unsoot_find_row_offer (UnsootFindRow *self, gboolean books);
void unsoot_find_row_show_acts (UnsootFindRow *self, gboolean shown);

/* The keyboard goes to the next act, or @back to the one before. FALSE: there is none. */
gboolean unsoot_find_row_walk_acts (UnsootFindRow *self, gboolean back);

/* Name of the group: "Customers". */
const char *unsoot_found_kind_words (UnsootFoundKind kind);

G_END_DECLS
