/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bill.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "money.h"
#include "trade-error.h"

#define WHOLE_PERCENT 100000

const UnsootSlug unsoot_bill_kinds[] = {
  { UNSOOT_BILL_LABOUR, "labour", N_ ("Labour") },
  { UNSOOT_BILL_FLUID, "fluid", N_ ("Fluid") },
  { UNSOOT_BILL_KIT, "kit", N_ ("Gaskets and filters") },
  { UNSOOT_BILL_DISPOSAL, "disposal", N_ ("Disposal") },
  { UNSOOT_BILL_OTHER, "other", N_ ("Other") },
  { 0, NULL, NULL },
};

const UnsootSlug unsoot_tax_categories[] = {
  { UNSOOT_TAX_STANDARD, "S", N_ ("Taxed") },
  { UNSOOT_TAX_ZERO, "Z", N_ ("Taxed at zero") },
  { UNSOOT_TAX_EXEMPT, "E", N_ ("Exempt") },
  { UNSOOT_TAX_OUTSIDE, "O", N_ ("Not subject to tax") },
  { 0, NULL, NULL },
};

static void
clear_row (gpointer data)
{
  g_clear_pointer (&((UnsootTaxRow *) data)->reason, g_free);
}

static UnsootBill *
bill_new (void)
{
  UnsootBill *bill = g_new0 (UnsootBill, 1);
  bill->nets = g_array_new (FALSE, FALSE, sizeof (gint64));
  bill->rows = g_array_new (FALSE, TRUE, sizeof (UnsootTaxRow));
  g_array_set_clear_func (bill->rows, clear_row);
  return bill;
}

void
unsoot_bill_free (UnsootBill *bill)
{
  if (bill == NULL)
    return;
  g_array_unref (bill->nets);
  g_array_unref (bill->rows);
  g_free (bill);
}

static gboolean
refuse (GError **error, const char *sentence)
{
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE, sentence);
  return FALSE;
}

gboolean
unsoot_bill_line_net (const UnsootBillLine *line, gint64 *net, GError **error)
{
  if (line->unit_price < 0)
    return refuse (error, _ ("The unit price is below zero; turn the quantity's sign instead."));
  if (line->base_quantity < 0)
    return refuse (error, _ ("The quantity that the price buys is below zero."));
  if (line->discount_rate < 0 || line->discount_rate > WHOLE_PERCENT)
    return refuse (error, _ ("The discount is not between 0 and 100 %."));
  gint64 base = line->base_quantity ? line->base_quantity : 1000;
  gint64 gross, off, left;
  if (!unsoot_money_ratio (line->unit_price, line->quantity, base, &gross, error)
      || !unsoot_money_rate (gross, line->discount_rate, &off, error)
      || !unsoot_money_ratio (off, -1, 1, &off, error)
      || !unsoot_money_add (gross, off, &left, error)
      || !unsoot_money_ratio (line->discount, -1, 1, &off, error))
    return FALSE;
  return unsoot_money_add (left, off, net, error);
}

static gboolean
check_rule (const UnsootTaxRule *rule, UnsootBillKind kind, GError **error)
{
  const char *words = unsoot_slug_words (unsoot_bill_kinds, (int) kind);
  const char *fault = NULL;
  gboolean reasoned = rule->reason && *rule->reason;
  switch (rule->category)
    {
    case UNSOOT_TAX_STANDARD: /* BR-S-05 */
      if (rule->rate <= 0 || rule->rate > WHOLE_PERCENT)
        fault = _ ("its tax rate must be above 0 and at most 100 %");
      break;
    case UNSOOT_TAX_ZERO: /* BR-Z-05 */
      if (rule->rate != 0)
        fault = _ ("what is taxed at zero has no rate");
      break;
    case UNSOOT_TAX_EXEMPT:  /* BR-E-05, BR-E-10 */
    case UNSOOT_TAX_OUTSIDE: /* BR-O-05, BR-O-10 */
      if (rule->rate != 0)
        fault = _ ("what is not taxed has no rate");
      else if (!reasoned)
        fault = _ ("the reason why it is not taxed is missing");
      break;
    default:
      fault = _ ("its tax category is unknown");
    }
  if (fault == NULL)
    return TRUE;
  /* Translators: a kind of line (Labour), then what is wrong with its tax. */
  g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_RANGE,
               _ ("Tax of lines of the kind “%s”: %s. Correct it in the shop's taxes."), words,
               fault);
  return FALSE;
}

static int
category_rank (UnsootTaxCategory category)
{
  return (int) (strchr ("SZEO", (int) category) - "SZEO");
}

static int
compare_rows (gconstpointer a, gconstpointer b)
{
  const UnsootTaxRow *left = a, *right = b;
  if (left->category != right->category)
    return category_rank (left->category) - category_rank (right->category);
  return (left->rate > right->rate) - (left->rate < right->rate);
}

static UnsootTaxRow *
find_row (GArray *rows, const UnsootTaxRule *rule)
{
  for (guint i = 0; i < rows->len; i++)
    {
      UnsootTaxRow *row = &g_array_index (rows, UnsootTaxRow, i);
      if (row->category == rule->category && row->rate == rule->rate)
        return row;
    }
  UnsootTaxRow row = { .category = rule->category, .rate = rule->rate };
  g_array_append_val (rows, row);
  return &g_array_index (rows, UnsootTaxRow, rows->len - 1);
}

/* Two reasons within one category are both printed, each once. */
static void
add_reason (UnsootTaxRow *row, const char *reason)
{
  if (reason == NULL || *reason == '\0')
    return;
  g_auto (GStrv) known = g_strsplit (row->reason ? row->reason : "", "; ", -1);
  if (g_strv_contains ((const char *const *) known, reason))
    return;
  char *joined = row->reason ? g_strdup_printf ("%s; %s", row->reason, reason) : g_strdup (reason);
  g_free (row->reason);
  row->reason = joined;
}

static gboolean
add_taxable (GArray *rows, const UnsootBillTerms *terms, UnsootBillKind kind, gint64 amount,
             GError **error)
{
  UnsootTaxRule rule = terms->rules[kind];
  if (!check_rule (&rule, kind, error))
    return FALSE;
  if (terms->exempt_reason && rule.category == UNSOOT_TAX_STANDARD)
    rule = (UnsootTaxRule){ UNSOOT_TAX_EXEMPT, 0, terms->exempt_reason };
  UnsootTaxRow *row = find_row (rows, &rule);
  add_reason (row, rule.reason);
  return unsoot_money_add (row->taxable, amount, &row->taxable, error);
}

/* BR-CO-10: the sum of line nets. */
static gboolean
add_lines (UnsootBill *bill, const UnsootBillLine *lines, gsize n, const UnsootBillTerms *terms,
           GError **error)
{
  for (gsize i = 0; i < n; i++)
    {
      gint64 net;
      if ((guint) lines[i].kind >= UNSOOT_BILL_KINDS)
        return refuse (error, _ ("A line is of no known kind."));
      if (!unsoot_bill_line_net (&lines[i], &net, error))
        {
          /* Translators: comes before a sentence that says what is wrong. */
          g_prefix_error (error, _ ("Line %u: "), (guint) i + 1);
          return FALSE;
        }
      g_array_append_val (bill->nets, net);
      if (!unsoot_money_add (bill->lines, net, &bill->lines, error)
          || !add_taxable (bill->rows, terms, lines[i].kind, net, error))
        return FALSE;
    }
  return TRUE;
}

/* BR-CO-11 and BR-CO-12: the sums of allowances and of charges. */
static gboolean
add_adjustments (UnsootBill *bill, const UnsootBillAdjustment *adjustments, gsize n,
                 const UnsootBillTerms *terms, GError **error)
{
  for (gsize i = 0; i < n; i++)
    {
      const UnsootBillAdjustment *adjustment = &adjustments[i];
      gint64 *sum = adjustment->charge ? &bill->charges : &bill->allowances;
      gint64 taxable;
      if ((guint) adjustment->kind >= UNSOOT_BILL_KINDS)
        return refuse (error, _ ("A charge or allowance is of no known kind."));
      if (!unsoot_money_add (*sum, adjustment->amount, sum, error)
          || !unsoot_money_ratio (adjustment->amount, adjustment->charge ? 1 : -1, 1, &taxable,
                                  error)
          || !add_taxable (bill->rows, terms, adjustment->kind, taxable, error))
        return FALSE;
    }
  return TRUE;
}

/* BR-CO-17 for each category, BR-CO-14 for their sum. */
static gboolean
tax_rows (UnsootBill *bill, GError **error)
{
  g_array_sort (bill->rows, compare_rows);
  for (guint i = 0; i < bill->rows->len; i++)
    {
      UnsootTaxRow *row = &g_array_index (bill->rows, UnsootTaxRow, i);
      if (!unsoot_money_rate (row->taxable, row->rate, &row->tax, error)
          || !unsoot_money_add (bill->tax, row->tax, &bill->tax, error))
        return FALSE;
    }
  return TRUE;
}

/* BR-CO-13, BR-CO-15 and BR-CO-16. */
static gboolean
add_totals (UnsootBill *bill, GError **error)
{
  gint64 minus;
  if (!unsoot_money_ratio (bill->allowances, -1, 1, &minus, error)
      || !unsoot_money_add (bill->lines, minus, &bill->without_tax, error)
      || !unsoot_money_add (bill->without_tax, bill->charges, &bill->without_tax, error)
      || !unsoot_money_add (bill->without_tax, bill->tax, &bill->with_tax, error)
      || !unsoot_money_ratio (bill->prepaid, -1, 1, &minus, error)
      || !unsoot_money_add (bill->with_tax, minus, &bill->due, error))
    return FALSE;
  return unsoot_money_add (bill->due, bill->rounding, &bill->due, error);
}

UnsootBill *
unsoot_bill_reckon (const UnsootBillLine *lines, gsize n_lines,
                    const UnsootBillAdjustment *adjustments, gsize n_adjustments,
                    const UnsootBillTerms *terms, GError **error)
{
  g_autoptr (UnsootBill) bill = bill_new ();
  bill->prepaid = terms->prepaid;
  bill->rounding = terms->rounding;
  if (terms->exempt_reason && *terms->exempt_reason == '\0')
    {
      refuse (error, _ ("The customer's reason for exemption from tax is missing."));
      return NULL;
    }
  if (!add_lines (bill, lines, n_lines, terms, error)
      || !add_adjustments (bill, adjustments, n_adjustments, terms, error)
      || !tax_rows (bill, error) || !add_totals (bill, error))
    return NULL;
  return g_steal_pointer (&bill);
}

static gboolean
turn_sign (gint64 from, gint64 *to, GError **error)
{
  return unsoot_money_ratio (from, -1, 1, to, error);
}

static gboolean
negate_totals (const UnsootBill *from, UnsootBill *to, GError **error)
{
  return turn_sign (from->lines, &to->lines, error)
         && turn_sign (from->allowances, &to->allowances, error)
         && turn_sign (from->charges, &to->charges, error)
         && turn_sign (from->without_tax, &to->without_tax, error)
         && turn_sign (from->tax, &to->tax, error)
         && turn_sign (from->with_tax, &to->with_tax, error)
         && turn_sign (from->prepaid, &to->prepaid, error)
         && turn_sign (from->rounding, &to->rounding, error)
         && turn_sign (from->due, &to->due, error);
}

UnsootBill *
unsoot_bill_negate (const UnsootBill *bill, GError **error)
{
  g_autoptr (UnsootBill) note = bill_new ();
  if (!negate_totals (bill, note, error))
    return NULL;
  for (guint i = 0; i < bill->nets->len; i++)
    {
      gint64 net;
      if (!turn_sign (g_array_index (bill->nets, gint64, i), &net, error))
        return NULL;
      g_array_append_val (note->nets, net);
    }
  for (guint i = 0; i < bill->rows->len; i++)
    {
      UnsootTaxRow row = g_array_index (bill->rows, UnsootTaxRow, i);
      if (!turn_sign (row.taxable, &row.taxable, error) || !turn_sign (row.tax, &row.tax, error))
        return NULL;
      row.reason = g_strdup (row.reason);
      g_array_append_val (note->rows, row);
    }
  return g_steal_pointer (&note);
}

gboolean
unsoot_bill_mixes_outside (const UnsootBill *bill)
{
  for (guint i = 0; i < bill->rows->len; i++)
    if (g_array_index (bill->rows, UnsootTaxRow, i).category == UNSOOT_TAX_OUTSIDE)
      return bill->rows->len > 1;
  return FALSE;
}
