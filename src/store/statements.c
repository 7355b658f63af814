/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "statements.h"

#include "civil.h"
#include "customers.h"
#include "shops.h"

/* Every invoice with what was paid and credited on it; which are open is told from that. */
static const char lines_sql[]
    = "SELECT i.number, i.issued_on, i.due_on, i.vehicle, i.po_number, i.total_minor,"
      " COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0),"
      " COALESCE ((SELECT sum (c.total_minor) FROM invoices c WHERE c.credits_id = i.id), 0)"
      " FROM invoices i WHERE i.customer_id = $1 AND i.kind = 'invoice' ORDER BY i.number";

static const char owing_sql[]
    = "SELECT o.customer_id, c.name FROM (SELECT i.customer_id, i.total_minor"
      " - COALESCE ((SELECT sum (p.amount_minor) FROM payments p WHERE p.invoice_id = i.id), 0)"
      " + COALESCE ((SELECT sum (n.total_minor) FROM invoices n WHERE n.credits_id = i.id), 0)"
      " AS open FROM invoices i WHERE i.kind = 'invoice') AS o"
      " JOIN customers c ON c.id = o.customer_id WHERE o.open <> 0"
      " GROUP BY o.customer_id, c.name ORDER BY sum (o.open) DESC, c.name, o.customer_id";

static UnsootStatementLine *
read_line (UnsootQuery *row)
{
  UnsootStatementLine *line = g_new0 (UnsootStatementLine, 1);

  line->number = unsoot_query_get_int (row, 0);
  line->issued_on = unsoot_query_dup_text (row, 1);
  line->due_on = unsoot_query_dup_text (row, 2);
  line->vehicle = unsoot_query_dup_text (row, 3);
  line->po_number = unsoot_query_dup_text (row, 4);
  line->total_minor = unsoot_query_get_int (row, 5);
  line->paid_minor = unsoot_query_get_int (row, 6);
  line->credited_minor = -unsoot_query_get_int (row, 7);
  line->open_minor = line->total_minor - line->paid_minor - line->credited_minor;
  return line;
}

static gboolean
load_lines (UnsootDb *db, UnsootStatementFile *file, GError **error)
{
  g_autoptr (UnsootQuery) row
      = unsoot_db_query (db, error, lines_sql, unsoot_int (file->customer->id));
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (row != NULL && (step = unsoot_query_step (row, error)) == UNSOOT_STEP_ROW)
    {
      UnsootStatementLine *line = read_line (row);
      if (line->open_minor != 0)
        g_ptr_array_add (file->lines, line);
      else
        unsoot_statement_line_free (line);
    }
  return step == UNSOOT_STEP_DONE;
}

static gboolean
reckon_ages (UnsootStatementFile *file, GError **error)
{
  g_autofree UnsootOpenItem *items = g_new0 (UnsootOpenItem, file->lines->len + 1);
  int today;

  if (!unsoot_day_parse (file->date, &today, error))
    return FALSE;
  for (guint i = 0; i < file->lines->len; i++)
    {
      const UnsootStatementLine *line = g_ptr_array_index (file->lines, i);
      if (!unsoot_day_parse (line->issued_on, &items[i].issued, error)
          || !unsoot_day_parse (line->due_on, &items[i].due, error))
        return FALSE;
      items[i].open = line->open_minor;
    }
  return unsoot_ageing_sum (items, file->lines->len, UNSOOT_AGED_FROM_DUE, today, &file->owed,
                            error);
}

UnsootStatementFile *
unsoot_statement_load (UnsootDb *db, gint64 customer_id, gint64 now, GError **error)
{
  g_autoptr (UnsootStatementFile) file = g_new0 (UnsootStatementFile, 1);

  file->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_statement_line_free);
  file->at = now;
  if ((file->shop = unsoot_shop_load (db, error)) == NULL
      || (file->customer = unsoot_customer_load (db, customer_id, error)) == NULL
      || (file->bill_to = unsoot_customer_bill_to (db, file->customer, error)) == NULL)
    return NULL;
  file->date = unsoot_shop_date (file->shop, now);
  return load_lines (db, file, error) && reckon_ages (file, error) ? g_steal_pointer (&file) : NULL;
}

void
unsoot_owing_free (UnsootOwing *owing)
{
  g_free (owing->name);
  g_free (owing);
}

GPtrArray *
unsoot_owing_list (UnsootDb *db, const char *today, GError **error)
{
  g_autoptr (GPtrArray) list = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_owing_free);
  g_autoptr (UnsootQuery) row = unsoot_db_query (db, error, owing_sql);
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (row != NULL && (step = unsoot_query_step (row, error)) == UNSOOT_STEP_ROW)
    {
      UnsootOwing *owing = g_new0 (UnsootOwing, 1);
      owing->customer_id = unsoot_query_get_int (row, 0);
      owing->name = unsoot_query_dup_text (row, 1);
      g_ptr_array_add (list, owing);
    }
  for (guint i = 0; step == UNSOOT_STEP_DONE && i < list->len; i++)
    {
      UnsootOwing *owing = g_ptr_array_index (list, i);
      if (!unsoot_customer_owes (db, owing->customer_id, today, &owing->owes, error))
        return NULL;
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&list) : NULL;
}
