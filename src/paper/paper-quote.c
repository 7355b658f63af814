/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-quote.h"

#include "shop-terms.h"

static GPtrArray *
lines_by_state (const UnsootJobFile *file, gboolean declined)
{
  GPtrArray *lines = g_ptr_array_new ();

  for (guint i = 0; i < file->lines->len; i++)
    {
      UnsootJobLineRow *line = g_ptr_array_index (file->lines, i);
      if ((g_strcmp0 (line->state, "declined") == 0) == declined)
        g_ptr_array_add (lines, line);
    }
  return lines;
}

GPtrArray *
unsoot_paper_quote_lines (const UnsootJobFile *file)
{
  return lines_by_state (file, FALSE);
}

GPtrArray *
unsoot_paper_quote_declined (const UnsootJobFile *file)
{
  return lines_by_state (file, TRUE);
}

UnsootBill *
unsoot_paper_quote_bill (const UnsootJobFile *file, const GPtrArray *lines, GError **error)
{
  g_autoptr (UnsootShopTerms) terms
      = unsoot_shop_terms_new (file->tax_rules, file->customer, error);

  return terms != NULL ? unsoot_job_lines_bill (lines, terms, error) : NULL;
}
