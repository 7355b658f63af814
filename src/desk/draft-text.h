/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What was typed into the fields of a form, by their names, each with what stood there before:
 * the text that a draft keeps. */
typedef struct UnsootDraftText UnsootDraftText;

UnsootDraftText *unsoot_draft_text_new (void);
void unsoot_draft_text_free (UnsootDraftText *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDraftText, unsoot_draft_text_free)

/* @base: what the record had; @typed: what stands there now. */
void unsoot_draft_text_add (UnsootDraftText *self, const char *name, const char *base,
                            const char *typed);

/* Both texts of that field, borrowed; FALSE where nothing was kept of it. */
gboolean unsoot_draft_text_find (const UnsootDraftText *self, const char *name, const char **base,
                                 const char **typed);

/* JSON: {"name": ["base", "typed"], …}. */
char *unsoot_draft_text_to_json (const UnsootDraftText *self);

/* NULL for a text that is none; what is odd in it is left out. */
UnsootDraftText *unsoot_draft_text_from_json (const char *json);
