/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "table.h"

static void
add_line (GtkWidget *table, const UnsootInvoiceLineRow *line, gboolean credited,
          UnsootSession *session)
{
  g_autofree char *text
      = credited /* Translators: a line of an invoice that a credit note took back */
            ? g_markup_printf_escaped (_ ("<s>%s</s> credited"), line->text)
            : g_markup_escape_text (line->text, -1);
  g_autofree char *number = unsoot_format_number ((double) line->quantity_milli / 1000.0, 3);
  g_autofree char *quantity = unsoot_format_with_unit (number, line->unit);
  g_autofree char *price = unsoot_session_money (session, line->unit_price_minor);
  g_autofree char *net = unsoot_session_money (session, line->net_minor);
  const char *const cells[] = { text, quantity, price, net };

  unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static void
add_sum (GtkWidget *table, const char *what, gint64 minor, gboolean total, UnsootSession *session)
{
  g_autofree char *money = unsoot_session_money (session, minor);
  g_autofree char *label = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", what);
  g_autofree char *amount = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", money);
  const char *const cells[] = { label, NULL, NULL, amount };

  if (total)
    unsoot_table_add_total (UNSOOT_TABLE (table), cells);
  else
    unsoot_table_add (UNSOOT_TABLE (table), cells);
}

/* "Sales tax 8.25 % on $226.60", or why there is none. */
static void
add_tax (GtkWidget *table, const UnsootInvoiceTaxRow *tax, UnsootSession *session)
{
  g_autofree char *rate = unsoot_format_number ((double) tax->rate_milli_percent / 1000.0, 3);
  g_autofree char *taxable = unsoot_session_money (session, tax->taxable_minor);
  const char *label = tax->label != NULL ? tax->label : _ ("Tax");
  g_autofree char *what = tax->rate_milli_percent != 0
                              /* Translators: a tax, its rate, and the amount it is taken on */
                              ? g_strdup_printf (_ ("%s %s %% on %s"), label, rate, taxable)
                              /* Translators: why there is no tax, and on which amount */
                              : g_strdup_printf (_ ("%s: no tax on %s"), label, taxable);

  add_sum (table, what, tax->tax_minor, FALSE, session);
}

void
unsoot_invoice_card_lines (UnsootCard *card, const UnsootInvoiceView *view, UnsootSession *session)
{
  const UnsootTableColumn columns[] = {
    { "", FALSE, TRUE },
    { _ ("Quantity"), TRUE, FALSE },
    { _ ("Each"), TRUE, FALSE },
    { _ ("Amount"), TRUE, FALSE },
    { NULL },
  };
  const UnsootInvoiceFile *file = view->file;
  GtkWidget *table = unsoot_table_new (_ ("Lines and tax"), columns);

  unsoot_card_clear (card);
  for (guint i = 0; i < file->lines->len; i++)
    {
      const UnsootInvoiceLineRow *line = g_ptr_array_index (file->lines, i);
      add_line (table, line, unsoot_invoice_view_credited (view, line->position), session);
    }
  add_sum (table, _ ("Without tax"), file->invoice->net_minor, FALSE, session);
  for (guint i = 0; i < file->taxes->len; i++)
    add_tax (table, g_ptr_array_index (file->taxes, i), session);
  add_sum (table, _ ("Total"), file->invoice->total_minor, TRUE, session);
  gtk_box_append (GTK_BOX (card), table);
}
