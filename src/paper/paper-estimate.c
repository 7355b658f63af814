/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-estimate.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "caution-sheet.h"
#include "page-block.h"
#include "page-table.h"
#include "paper-bill.h"
#include "paper-error.h"
#include "paper-facts.h"
#include "paper-quote.h"
#include "paper-sides.h"
#include "paper-words.h"
#include "slug.h"

typedef enum
{
  IN_PERSON,
  PHONE,
  EMAIL,
  TEXT,
  SIGNED,
} How;

static const UnsootSlug hows[] = {
  { IN_PERSON, "in-person", N_ ("in person") }, { PHONE, "phone", N_ ("by phone") },
  { EMAIL, "email", N_ ("by email") },          { TEXT, "text", N_ ("by text message") },
  { SIGNED, "signed", N_ ("signed") },          { 0, NULL, NULL },
};

static const char *
how_words (const char *slug)
{
  int how;

  return unsoot_slug_find (hows, slug, &how) ? unsoot_slug_words (hows, how) : slug;
}

/* Lines, each with its net; totals by the trade's own arithmetic. */
static void
draw_lines (UnsootPageKit *kit, const UnsootJobFile *file, const GPtrArray *lines,
            const UnsootBill *bill)
{
  g_autofree UnsootPaperLine *printed = g_new0 (UnsootPaperLine, lines->len + 1);

  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *line = g_ptr_array_index (lines, i);
      printed[i]
          = (UnsootPaperLine){ line->text, line->quantity_milli, line->unit, line->unit_price_minor,
                               g_array_index (bill->nets, gint64, i) };
    }
  unsoot_paper_lines (kit, printed, lines->len, file->shop->currency);
}

static void
draw_totals (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootBill *bill)
{
  g_autoptr (GArray) totals = unsoot_paper_totals_new ();

  unsoot_paper_totals_add (totals, g_strdup (_ ("Without tax")), bill->without_tax, FALSE);
  for (guint i = 0; i < bill->rows->len; i++)
    {
      const UnsootTaxRow *row = &g_array_index (bill->rows, UnsootTaxRow, i);
      const char category[] = { (char) row->category, '\0' };

      unsoot_paper_totals_add (totals, unsoot_paper_tax_label (category, row->rate, row->reason),
                               row->tax, FALSE);
    }
  unsoot_paper_totals_add (totals, g_strdup (_ ("Estimated total")), bill->with_tax, TRUE);
  unsoot_paper_totals_draw (kit, totals, file->shop->currency);
}

/* An estimate whose lines were changed since: what was given then, as it was written down. */
static void
draw_as_given (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootEstimateRow *estimate)
{
  const UnsootColumn columns[] = { { _ ("Work and material, as given"), -1, UNSOOT_ALIGN_LEFT } };
  g_auto (GStrv) lines = g_strsplit (estimate->text != NULL ? estimate->text : "", "\n", -1);
  g_autoptr (GArray) totals = unsoot_paper_totals_new ();
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      const UnsootCell cell = { UNSOOT_CELL_TEXT, .text = lines[i] };
      unsoot_table_row (&table, &cell);
    }
  unsoot_table_end (&table);
  unsoot_paper_totals_add (totals, g_strdup (_ ("Without tax")), estimate->net_minor, FALSE);
  unsoot_paper_totals_add (totals, g_strdup (_ ("Tax")), estimate->tax_minor, FALSE);
  unsoot_paper_totals_add (totals, g_strdup (_ ("Estimated total")), estimate->total_minor, TRUE);
  unsoot_paper_totals_draw (kit, totals, file->shop->currency);
}

static void
draw_declined (UnsootPageKit *kit, const UnsootJobFile *file)
{
  g_autoptr (GPtrArray) declined = unsoot_paper_quote_declined (file);

  if (declined->len == 0)
    return;
  unsoot_page_heading (kit, _ ("Declined, not in the total"), 14);
  for (guint i = 0; i < declined->len; i++)
    {
      const UnsootJobLineRow *line = g_ptr_array_index (declined, i);
      g_autofree char *text = line->declined_reason != NULL && *line->declined_reason != '\0'
                                  ? g_strdup_printf ("%s (%s)", line->text, line->declined_reason)
                                  : g_strdup (line->text);
      unsoot_page_paragraph (kit, &unsoot_text_body, text);
    }
}

/* How far the work may run over before the customer is asked anew. */
static char *
limit_sentence (const UnsootShopRow *shop)
{
  const gboolean by_share = isfinite (shop->estimate_over_percent);
  g_autofree char *share
      = by_share ? unsoot_paper_rate ((gint64) llround (shop->estimate_over_percent * 1000)) : NULL;
  g_autofree char *amount = shop->estimate_over_minor > 0
                                ? unsoot_paper_money (shop->estimate_over_minor, shop->currency)
                                : NULL;

  if (share != NULL && amount != NULL)
    return g_strdup_printf (
        _ ("Nothing beyond this estimate is charged without your word if it comes "
           "to more than %s or %s over it, whichever is less."),
        share, amount);
  if (share != NULL || amount != NULL)
    return g_strdup_printf (
        _ ("Nothing beyond this estimate is charged without your word if it comes to more than %s "
           "over it."),
        share != NULL ? share : amount);
  return g_strdup (_ ("Nothing beyond this estimate is done or charged without your word first."));
}

static void
draw_terms (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootEstimateRow *estimate)
{
  g_autoptr (GPtrArray) sentences = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *until = unsoot_paper_day (estimate->valid_until);
  const UnsootNotice notice = { UNSOOT_NOTICE_PLAIN, NULL, sentences, NULL };

  if (until != NULL)
    g_ptr_array_add (sentences, g_strdup_printf (_ ("This estimate is valid until %s."), until));
  g_ptr_array_add (sentences, limit_sentence (file->shop));
  g_ptr_array_add (sentences, g_strdup (unsoot_caution_closing ()));
  unsoot_page_notice (kit, &notice);
}

static void
draw_given (UnsootPageKit *kit, const UnsootJobFile *file)
{
  const UnsootColumn columns[] = {
    { _ ("Authorised by"), -3, UNSOOT_ALIGN_LEFT },
    { _ ("How"), 86, UNSOOT_ALIGN_LEFT },
    { _ ("When"), 100, UNSOOT_ALIGN_LEFT },
    { _ ("Up to"), 90, UNSOOT_ALIGN_RIGHT },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < file->authorisations->len; i++)
    {
      const UnsootAuthorisationRow *given = g_ptr_array_index (file->authorisations, i);
      g_autofree char *when = unsoot_paper_moment (file, given->at);
      g_autofree char *amount = unsoot_paper_money (given->amount_minor, file->shop->currency);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TEXT, .text = given->by_name, .note = given->note },
        { UNSOOT_CELL_TEXT, .text = how_words (given->how) },
        { UNSOOT_CELL_TEXT, .text = when },
        { UNSOOT_CELL_TEXT, .text = amount },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static void
draw_to_sign (UnsootPageKit *kit, gconstpointer data)
{
  const char *total = data;
  const UnsootSignLine lines[] = {
    { _ ("Name"), NULL, 2 },
    { _ ("Signature"), NULL, 2.4 },
    { _ ("Date"), NULL, 1 },
  };
  /* Translators: the estimate's total */
  g_autofree char *sentence = g_strdup_printf (
      _ ("I authorise the work above up to a total of %s. I have the right to have this vehicle "
         "worked on."),
      total);

  unsoot_page_paragraph (kit, &unsoot_text_body, sentence);
  unsoot_page_sign (kit, lines, G_N_ELEMENTS (lines));
}

static void
draw_authorisation (UnsootPageKit *kit, const UnsootJobFile *file,
                    const UnsootEstimateRow *estimate)
{
  g_autofree char *total = unsoot_paper_money (estimate->total_minor, file->shop->currency);

  unsoot_page_heading (kit, _ ("Authorisation"), 60);
  if (file->authorisations->len > 0)
    draw_given (kit, file);
  else
    unsoot_page_keep (kit, draw_to_sign, total, 0);
}

static void
draw_body (UnsootPageKit *kit, const UnsootJobFile *file, const UnsootEstimateRow *estimate,
           const GPtrArray *lines, const UnsootBill *bill)
{
  unsoot_paper_facts_of_job (kit, file);
  unsoot_page_heading (kit, _ ("What we would do"), 60);
  unsoot_paper_sides_draw (kit, file, FALSE);
  if (bill->with_tax == estimate->total_minor && bill->without_tax == estimate->net_minor)
    {
      draw_lines (kit, file, lines, bill);
      draw_totals (kit, file, bill);
    }
  else
    draw_as_given (kit, file, estimate);
  draw_declined (kit, file);
  unsoot_page_skip (kit, 6);
  draw_terms (kit, file, estimate);
  draw_authorisation (kit, file, estimate);
}

GBytes *
unsoot_paper_estimate (const UnsootJobFile *file, UnsootPaperSize size, char **remark,
                       GError **error)
{
  const UnsootEstimateRow *estimate;
  g_autoptr (GPtrArray) lines = NULL;
  g_autoptr (UnsootBill) bill = NULL;
  g_autoptr (UnsootPageKit) kit = NULL;

  if (!unsoot_paper_check (file, error))
    return NULL;
  if (file->estimates->len == 0)
    {
      g_autofree char *number = unsoot_paper_serial (file->job->number);
      g_set_error (error, UNSOOT_PAPER_ERROR, UNSOOT_PAPER_ERROR_RECORD,
                   /* Translators: a job's number */
                   _ ("Job %s has no estimate yet; make one first."), number);
      return NULL;
    }
  estimate = g_ptr_array_index (file->estimates, file->estimates->len - 1);
  lines = unsoot_paper_quote_lines (file);
  bill = unsoot_paper_quote_bill (file, lines, error);
  if (bill == NULL)
    return NULL;
  kit = unsoot_page_kit_new (
      size,
      unsoot_paper_head (file, g_strdup (_ ("Estimate")), unsoot_paper_serial (estimate->number),
                         unsoot_paper_moment_day (file, estimate->at), estimate->at),
      error);
  if (kit == NULL)
    return NULL;
  draw_body (kit, file, estimate, lines, bill);
  return unsoot_page_kit_finish (kit, remark, error);
}
