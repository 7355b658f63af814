/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Facts in two columns: what, and what it is. */
#define UNSOOT_TYPE_FACTS (unsoot_facts_get_type ())
G_DECLARE_FINAL_TYPE (UnsootFacts, unsoot_facts, UNSOOT, FACTS, GtkGrid)

GtkWidget *unsoot_facts_new (void);

/* A line of text; nothing is added for a value of NULL or "". Returns the value's label. */
GtkWidget *unsoot_facts_add (UnsootFacts *self, const char *what, const char *value);

/* The same with any widget as the value, which gets its name from @what where it is no label. */
void unsoot_facts_add_widget (UnsootFacts *self, const char *what, GtkWidget *value);

gboolean unsoot_facts_is_empty (UnsootFacts *self);

G_END_DECLS
