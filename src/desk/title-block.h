/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The head of a record's page: its title, a quieter line under it, and at the end buttons that
 * lead to what it belongs to. */
#define UNSOOT_TYPE_TITLE_BLOCK (unsoot_title_block_get_type ())
G_DECLARE_FINAL_TYPE (UnsootTitleBlock, unsoot_title_block, UNSOOT, TITLE_BLOCK, GtkBox)

/* Plain texts; @subtitle may be NULL. Takes the links away. */
void unsoot_title_block_show (UnsootTitleBlock *self, const char *title, const char *subtitle);

/* A button with @icon and @label that opens the record. */
GtkWidget *unsoot_title_block_link (UnsootTitleBlock *self, const char *icon, const char *label,
                                    const char *slug, gint64 record);

/* Another button among them: a deed, not a link. */
void unsoot_title_block_add (UnsootTitleBlock *self, GtkWidget *button);

G_END_DECLS
