/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "statement-task.h"

#include "paper-statement.h"
#include "statements.h"

typedef struct
{
  gint64 customer_id;
  gint64 now;
} Ask;

void
unsoot_statement_made_free (UnsootStatementMade *made)
{
  g_clear_pointer (&made->pdf, g_bytes_unref);
  g_free (made->remark);
  g_free (made->file_name);
  g_free (made->customer);
  g_free (made);
}

gpointer
unsoot_statement_ask_new (gint64 customer_id, gint64 now)
{
  Ask *ask = g_new0 (Ask, 1);

  ask->customer_id = customer_id;
  ask->now = now;
  return ask;
}

gpointer
unsoot_statement_make (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Ask *ask = data;
  g_autoptr (UnsootStatementFile) file
      = unsoot_statement_load (db, ask->customer_id, ask->now, error);
  g_autoptr (UnsootStatementMade) made = g_new0 (UnsootStatementMade, 1);
  UnsootPaperSize size = UNSOOT_PAPER_LETTER;

  if (file == NULL)
    return NULL;
  unsoot_paper_size_find (file->shop->paper, &size);
  made->pdf = unsoot_paper_statement (file, size, &made->remark, error);
  made->file_name = unsoot_paper_statement_file_name (file);
  made->customer = g_strdup (file->customer->name);
  return made->pdf != NULL ? g_steal_pointer (&made) : NULL;
}
