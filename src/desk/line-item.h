/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

G_BEGIN_DECLS

/* A line of a list as an object, which is what list models hold. */
#define UNSOOT_TYPE_LINE_ITEM (unsoot_line_item_get_type ())
G_DECLARE_FINAL_TYPE (UnsootLineItem, unsoot_line_item, UNSOOT, LINE_ITEM, GObject)

/* Takes @line. */
UnsootLineItem *unsoot_line_item_new (gpointer line, GDestroyNotify free_line);
gconstpointer unsoot_line_item_get (UnsootLineItem *self);

G_END_DECLS
