/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "statement-file.h"

void
unsoot_statement_line_free (UnsootStatementLine *line)
{
  g_free (line->issued_on);
  g_free (line->due_on);
  g_free (line->vehicle);
  g_free (line->po_number);
  g_free (line);
}

void
unsoot_statement_file_free (UnsootStatementFile *file)
{
  g_clear_pointer (&file->shop, unsoot_shop_row_free);
  g_clear_pointer (&file->customer, unsoot_customer_row_free);
  g_clear_pointer (&file->lines, g_ptr_array_unref);
  g_free (file->bill_to);
  g_free (file->date);
  g_free (file);
}
