/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-quote.h"

#include <glib/gi18n-lib.h>

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

/* A discount takes labour back: what the shop gives away is its own work. */
static UnsootBillKind
bill_kind (const char *line_kind)
{
  int kind;

  if (g_strcmp0 (line_kind, "discount") == 0)
    return UNSOOT_BILL_LABOUR;
  return unsoot_slug_find (unsoot_bill_kinds, line_kind, &kind) ? (UnsootBillKind) kind
                                                                : UNSOOT_BILL_OTHER;
}

static char *
exempt_reason (const UnsootCustomerRow *customer)
{
  if (!customer->tax_exempt)
    return NULL;
  if (customer->tax_exempt_number == NULL)
    return g_strdup (customer->tax_exempt_reason);
  /* Translators: why there is no tax, the number of the certificate */
  return g_strdup_printf (_ ("%s, number %s"), customer->tax_exempt_reason,
                          customer->tax_exempt_number);
}

static UnsootBillTerms
terms_of (const UnsootJobFile *file, const char *exempt)
{
  UnsootBillTerms terms = { .exempt_reason = exempt };

  for (int kind = 0; kind < UNSOOT_BILL_KINDS; kind++)
    terms.rules[kind] = (UnsootTaxRule){ UNSOOT_TAX_OUTSIDE, 0, _ ("no tax rule for it") };
  for (guint i = 0; i < file->tax_rules->len; i++)
    {
      const UnsootTaxRuleRow *rule = g_ptr_array_index (file->tax_rules, i);
      int category;

      if (unsoot_slug_find (unsoot_tax_categories, rule->category, &category))
        terms.rules[bill_kind (rule->line_kind)]
            = (UnsootTaxRule){ (UnsootTaxCategory) category, rule->rate_milli_percent,
                               rule->label };
    }
  return terms;
}

UnsootBill *
unsoot_paper_quote_bill (const UnsootJobFile *file, const GPtrArray *lines, GError **error)
{
  g_autoptr (GArray) billed = g_array_new (FALSE, TRUE, sizeof (UnsootBillLine));
  g_autofree char *exempt = exempt_reason (file->customer);
  const UnsootBillTerms terms = terms_of (file, exempt);

  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *row = g_ptr_array_index (lines, i);
      const UnsootBillLine line = { .kind = bill_kind (row->kind),
                                    .quantity = row->quantity_milli,
                                    .unit_price = row->unit_price_minor };
      g_array_append_val (billed, line);
    }
  return unsoot_bill_reckon ((const UnsootBillLine *) (gconstpointer) billed->data, billed->len,
                             NULL, 0, &terms, error);
}
