/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draft-fields.h"

G_BEGIN_DECLS

/* What is typed for a new shop, before there is a book to keep it in: kept in a small file in the
 * person's own state folder, $XDG_STATE_HOME/unsoot/new-shop.json, that only they can read. */
#define UNSOOT_TYPE_NEW_SHOP_DRAFT (unsoot_new_shop_draft_get_type ())
G_DECLARE_FINAL_TYPE (UnsootNewShopDraft, unsoot_new_shop_draft, UNSOOT, NEW_SHOP_DRAFT, GObject)

UnsootNewShopDraft *unsoot_new_shop_draft_new (void);

/* As unsoot_draft_fields_add (). */
void unsoot_new_shop_draft_watch (UnsootNewShopDraft *self, const char *name, GtkWidget *field,
                                  const UnsootFieldWays *ways);

/* What was kept stands in the fields again. */
void unsoot_new_shop_draft_begin (UnsootNewShopDraft *self);

/* The form is left: what was typed is kept now. */
void unsoot_new_shop_draft_leave (UnsootNewShopDraft *self);

/* The book is open: nothing is kept any more. */
void unsoot_new_shop_draft_done (UnsootNewShopDraft *self);

G_END_DECLS
