/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "line-item.h"

struct _UnsootLineItem
{
  GObject parent_instance;

  gpointer line;
  GDestroyNotify free_line;
};

G_DEFINE_FINAL_TYPE (UnsootLineItem, unsoot_line_item, G_TYPE_OBJECT)

static void
unsoot_line_item_finalize (GObject *object)
{
  UnsootLineItem *self = UNSOOT_LINE_ITEM (object);

  self->free_line (self->line);
  G_OBJECT_CLASS (unsoot_line_item_parent_class)->finalize (object);
}

static void
unsoot_line_item_class_init (UnsootLineItemClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = unsoot_line_item_finalize;
}

static void
unsoot_line_item_init (UnsootLineItem *self)
{
}

UnsootLineItem *
unsoot_line_item_new (gpointer line, GDestroyNotify free_line)
{
  UnsootLineItem *self = g_object_new (UNSOOT_TYPE_LINE_ITEM, NULL);

  self->line = line;
  self->free_line = free_line;
  return self;
}

gconstpointer
unsoot_line_item_get (UnsootLineItem *self)
{
  return self->line;
}
