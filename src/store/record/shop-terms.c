/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop-terms.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

void
unsoot_shop_terms_free (UnsootShopTerms *terms)
{
  if (terms == NULL)
    return;
  g_clear_pointer (&terms->rows, g_ptr_array_unref);
  g_free (terms->exempt_reason);
  g_free (terms);
}

gboolean
unsoot_job_line_kind (const char *kind, UnsootBillKind *bill_kind, GError **error)
{
  int value;

  if (g_strcmp0 (kind, "discount") == 0)
    {
      *bill_kind = UNSOOT_BILL_LABOUR;
      return TRUE;
    }
  if (!unsoot_slug_parse (unsoot_bill_kinds, _ ("a kind of line"), kind, &value, error))
    return FALSE;
  *bill_kind = (UnsootBillKind) value;
  return TRUE;
}

static gboolean
take_rules (UnsootShopTerms *terms, GError **error)
{
  gboolean known[UNSOOT_BILL_KINDS] = { FALSE };

  for (guint i = 0; i < terms->rows->len; i++)
    {
      const UnsootTaxRuleRow *row = terms->rows->pdata[i];
      int category;
      UnsootBillKind kind;
      if (!unsoot_job_line_kind (row->line_kind, &kind, error)
          || !unsoot_slug_parse (unsoot_tax_categories, _ ("a tax category"), row->category,
                                 &category, error))
        return FALSE;
      known[kind] = TRUE;
      terms->terms.rules[kind] = (UnsootTaxRule){ .category = (UnsootTaxCategory) category,
                                                  .rate = row->rate_milli_percent,
                                                  .reason = row->label };
    }
  for (int kind = 0; kind < UNSOOT_BILL_KINDS; kind++)
    if (!known[kind])
      {
        g_set_error (
            error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED,
            _ ("The shop has no tax rule for %s. An owner enters it, even where there is no tax."),
            unsoot_slug_words (unsoot_bill_kinds, kind));
        return FALSE;
      }
  return TRUE;
}

static char *
exempt_reason (const UnsootCustomerRow *customer)
{
  if (!customer->tax_exempt)
    return NULL;
  /* Translators: why there is no tax, the number of the certificate */
  return customer->tax_exempt_number != NULL ? g_strdup_printf (
             _ ("%s, number %s"), customer->tax_exempt_reason, customer->tax_exempt_number)
                                             : g_strdup (customer->tax_exempt_reason);
}

UnsootShopTerms *
unsoot_shop_terms_new (GPtrArray *rules, const UnsootCustomerRow *customer, GError **error)
{
  g_autoptr (UnsootShopTerms) terms = g_new0 (UnsootShopTerms, 1);

  terms->rows = g_ptr_array_ref (rules);
  terms->exempt_reason = exempt_reason (customer);
  terms->terms.exempt_reason = terms->exempt_reason;
  return take_rules (terms, error) ? g_steal_pointer (&terms) : NULL;
}

void
unsoot_shop_terms_of (const UnsootShopTerms *terms, const char *line_kind,
                      UnsootTaxCategory *category, gint64 *rate)
{
  UnsootBillKind kind = UNSOOT_BILL_OTHER;

  unsoot_job_line_kind (line_kind, &kind, NULL);
  *category = terms->terms.rules[kind].category;
  *rate = terms->terms.rules[kind].rate;
  if (terms->exempt_reason != NULL && *category == UNSOOT_TAX_STANDARD)
    {
      *category = UNSOOT_TAX_EXEMPT;
      *rate = 0;
    }
}

const char *
unsoot_shop_terms_label (const UnsootShopTerms *terms, const UnsootTaxRow *row)
{
  if (row->reason != NULL)
    return row->reason;
  for (int kind = 0; kind < UNSOOT_BILL_KINDS; kind++)
    if (terms->terms.rules[kind].category == row->category
        && terms->terms.rules[kind].rate == row->rate)
      return terms->terms.rules[kind].reason;
  return NULL;
}

UnsootBill *
unsoot_job_lines_bill (const GPtrArray *lines, const UnsootShopTerms *terms, GError **error)
{
  g_autoptr (GArray) bill_lines = g_array_new (FALSE, TRUE, sizeof (UnsootBillLine));

  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *row = lines->pdata[i];
      UnsootBillLine line
          = { .quantity = row->quantity_milli, .unit_price = row->unit_price_minor };
      if (!unsoot_job_line_kind (row->kind, &line.kind, error))
        return NULL;
      g_array_append_val (bill_lines, line);
    }
  return unsoot_bill_reckon ((const UnsootBillLine *) (gconstpointer) bill_lines->data,
                             bill_lines->len, NULL, 0, &terms->terms, error);
}
