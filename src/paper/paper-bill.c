/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "paper-bill.h"

#include <glib/gi18n-lib.h>

#include "page-draw.h"
#include "page-table.h"
#include "paper-words.h"

#define LABEL_WIDTH 190.0
#define AMOUNT_WIDTH 96.0

static const UnsootTextStyle sum_style = { 13, 18, TRUE, &unsoot_tone_ink };

void
unsoot_paper_lines (UnsootPageKit *kit, const UnsootPaperLine *lines, guint n_lines,
                    const char *currency)
{
  const UnsootColumn columns[] = {
    { _ ("Work and material"), -1, UNSOOT_ALIGN_LEFT },
    { _ ("Quantity"), 64, UNSOOT_ALIGN_RIGHT },
    { _ ("Price each"), 84, UNSOOT_ALIGN_RIGHT },
    { _ ("Amount"), 90, UNSOOT_ALIGN_RIGHT },
  };
  UnsootTable table;

  unsoot_table_begin (&table, kit, columns, G_N_ELEMENTS (columns), TRUE);
  for (guint i = 0; i < n_lines; i++)
    {
      g_autofree char *quantity = unsoot_paper_quantity (lines[i].quantity_milli);
      g_autofree char *price = unsoot_paper_money (lines[i].unit_price_minor, currency);
      g_autofree char *net = unsoot_paper_money (lines[i].net_minor, currency);
      const UnsootCell cells[] = {
        { UNSOOT_CELL_TEXT, .text = lines[i].text },
        { UNSOOT_CELL_TEXT, .text = quantity, .unit = lines[i].unit },
        { UNSOOT_CELL_TEXT, .text = price },
        { UNSOOT_CELL_TEXT, .text = net },
      };
      unsoot_table_row (&table, cells);
    }
  unsoot_table_end (&table);
}

static void
clear_total (gpointer data)
{
  g_free (((UnsootPaperTotal *) data)->label);
}

GArray *
unsoot_paper_totals_new (void)
{
  GArray *totals = g_array_new (FALSE, TRUE, sizeof (UnsootPaperTotal));

  g_array_set_clear_func (totals, clear_total);
  return totals;
}

void
unsoot_paper_totals_add (GArray *totals, char *label, gint64 amount_minor, gboolean strong)
{
  const UnsootPaperTotal total = { label, amount_minor, strong };

  g_array_append_val (totals, total);
}

typedef struct
{
  const GArray *totals;
  const char *currency;
} Totals;

static void
draw_total (UnsootPageKit *kit, const UnsootPaperTotal *total, const char *currency)
{
  const UnsootTextStyle *style = total->strong ? &sum_style : &unsoot_text_body;
  const double left = kit->right - LABEL_WIDTH - AMOUNT_WIDTH;
  g_autofree char *amount = unsoot_paper_money (total->amount_minor, currency);
  g_autoptr (GPtrArray) lines = unsoot_page_wrap (kit, style, total->label, LABEL_WIDTH);
  double height;

  if (total->strong)
    {
      kit->y += 3;
      unsoot_page_rule (kit, left, kit->right, kit->y, 0.8, &unsoot_tone_grey);
      kit->y += 2;
    }
  height = unsoot_page_write_lines (kit, style, UNSOOT_ALIGN_LEFT, left, kit->y, lines);
  unsoot_page_write (kit, style, UNSOOT_ALIGN_RIGHT, kit->right,
                     kit->y + height - style->leading + unsoot_text_baseline (style), amount);
  kit->y += height + 1;
}

static void
draw_totals (UnsootPageKit *kit, gconstpointer data)
{
  const Totals *all = data;

  for (guint i = 0; i < all->totals->len; i++)
    draw_total (kit, &g_array_index (all->totals, UnsootPaperTotal, i), all->currency);
  kit->y += 6;
}

void
unsoot_paper_totals_draw (UnsootPageKit *kit, const GArray *totals, const char *currency)
{
  const Totals all = { totals, currency };

  unsoot_page_keep (kit, draw_totals, &all, 0);
}

char *
unsoot_paper_tax_label (const char *category, gint64 rate_milli_percent, const char *label)
{
  const gboolean named = label != NULL && *label != '\0';
  g_autofree char *rate = unsoot_paper_rate (rate_milli_percent);
  const char *words
      = category != NULL ? unsoot_slug_words (unsoot_tax_categories, category[0]) : NULL;

  if (rate_milli_percent != 0)
    return g_strdup_printf ("%s %s", named ? label : _ ("Tax"), rate);
  if (words == NULL)
    words = _ ("Tax");
  return named ? g_strdup_printf ("%s: %s", words, label) : g_strdup (words);
}
