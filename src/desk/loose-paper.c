/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "loose-paper.h"

#include <glib/gi18n-lib.h>

#include "order-papers.h"
#include "paper-order.h"
#include "paper-statement.h"
#include "statements.h"

typedef struct
{
  gint64 id;
  gint64 now;
} Ask;

void
unsoot_loose_paper_free (UnsootLoosePaper *paper)
{
  g_clear_pointer (&paper->pdf, g_bytes_unref);
  g_free (paper->remark);
  g_free (paper->file_name);
  g_free (paper->title);
  g_free (paper->about);
  g_free (paper);
}

gpointer
unsoot_loose_paper_ask_new (gint64 id, gint64 now)
{
  Ask *ask = g_new0 (Ask, 1);

  ask->id = id;
  ask->now = now;
  return ask;
}

static UnsootPaperSize
size_of (const UnsootShopRow *shop)
{
  UnsootPaperSize size = UNSOOT_PAPER_LETTER;

  unsoot_paper_size_find (shop->paper, &size);
  return size;
}

gpointer
unsoot_loose_paper_statement (UnsootDb *db, gpointer data, GCancellable *cancellable,
                              GError **error)
{
  const Ask *ask = data;
  g_autoptr (UnsootStatementFile) file = unsoot_statement_load (db, ask->id, ask->now, error);
  g_autoptr (UnsootLoosePaper) made = g_new0 (UnsootLoosePaper, 1);

  if (file == NULL)
    return NULL;
  made->pdf = unsoot_paper_statement (file, size_of (file->shop), &made->remark, error);
  made->file_name = unsoot_paper_statement_file_name (file);
  made->title = g_strdup (_ ("Statement of account"));
  made->about = g_strdup (file->customer->name);
  return made->pdf != NULL ? g_steal_pointer (&made) : NULL;
}

gpointer
unsoot_loose_paper_order (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Ask *ask = data;
  g_autoptr (UnsootOrderFile) file = unsoot_order_file_load (db, ask->id, error);
  g_autoptr (UnsootLoosePaper) made = g_new0 (UnsootLoosePaper, 1);

  if (file == NULL)
    return NULL;
  made->pdf = unsoot_paper_order (file, size_of (file->shop), &made->remark, error);
  made->file_name = unsoot_paper_order_file_name (file);
  made->title = g_strdup_printf (_ ("Purchase order %d"), (int) file->order->number);
  made->about = g_strdup (file->supplier->name);
  return made->pdf != NULL ? g_steal_pointer (&made) : NULL;
}
