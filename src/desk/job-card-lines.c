/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "money.h"
#include "table.h"

static gboolean
is_declined (const UnsootJobLineRow *line)
{
  return g_strcmp0 (line->state, "declined") == 0;
}

static void
add_line (GtkWidget *table, const UnsootJobLineRow *line, UnsootSession *session)
{
  g_autofree char *text = g_markup_escape_text (line->text, -1);
  g_autofree char *number = unsoot_format_number ((double) line->quantity_milli / 1000.0, 3);
  g_autofree char *quantity = unsoot_format_with_unit (number, line->unit);
  g_autofree char *price = unsoot_session_money (session, line->unit_price_minor);
  g_autofree char *net = NULL;
  gint64 minor;

  if (unsoot_money_times (line->unit_price_minor, line->quantity_milli, &minor, NULL))
    net = unsoot_session_money (session, minor);
  const char *const cells[] = { text, quantity, price, net };
  unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static void
add_sum (GtkWidget *table, const char *what, gint64 minor, UnsootSession *session, gboolean total)
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

static void
add_declined (UnsootCard *card, const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const UnsootJobLineRow *line = g_ptr_array_index (lines, i);
      g_autofree char *text = NULL;

      if (!is_declined (line))
        continue;
      text = line->declined_reason != NULL
                 /* Translators: work that the customer declined, and why */
                 ? g_strdup_printf (_ ("Declined: %s (%s)"), line->text, line->declined_reason)
                 : g_strdup_printf (_ ("Declined: %s"), line->text);
      unsoot_card_say (card, text);
    }
}

/* What was paid on the job's invoices, credit notes taken off. */
static void
add_paid (GtkWidget *table, const GPtrArray *invoices, UnsootSession *session)
{
  gint64 billed = 0, paid = 0;

  for (guint i = 0; i < invoices->len; i++)
    {
      const UnsootInvoiceFile *invoice = g_ptr_array_index (invoices, i);
      billed += invoice->invoice->total_minor;
      for (guint j = 0; j < invoice->payments->len; j++)
        paid += ((const UnsootPaymentRow *) g_ptr_array_index (invoice->payments, j))->amount_minor;
    }
  if (invoices->len == 0)
    return;
  add_sum (table, _ ("Paid"), paid, session, FALSE);
  add_sum (table, _ ("Still open"), billed - paid, session, FALSE);
}

static void
add_totals (GtkWidget *table, const UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootBill *bill = view->bill;

  if (bill->tax != 0)
    {
      add_sum (table, _ ("Without tax"), bill->without_tax, session, FALSE);
      add_sum (table, _ ("Tax"), bill->tax, session, FALSE);
    }
  add_sum (table, _ ("Total"), bill->with_tax, session, TRUE);
  add_paid (table, view->file->invoices, session);
}

void
unsoot_job_card_lines (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootTableColumn columns[] = {
    { "", FALSE, TRUE },
    { _ ("Quantity"), TRUE, FALSE },
    { _ ("Each"), TRUE, FALSE },
    { _ ("Amount"), TRUE, FALSE },
    { NULL },
  };
  const GPtrArray *lines = view->file->lines;
  GtkWidget *table = unsoot_table_new (_ ("Lines and total"), columns);
  guint n = 0;

  for (guint i = 0; i < lines->len; i++)
    if (!is_declined (g_ptr_array_index (lines, i)))
      {
        add_line (table, g_ptr_array_index (lines, i), session);
        n++;
      }
  if (view->bill != NULL && n > 0)
    add_totals (table, view, session);
  if (n > 0)
    gtk_box_append (GTK_BOX (card), table);
  else
    {
      g_object_ref_sink (table);
      g_object_unref (table);
      unsoot_card_say (card, _ ("Nothing is charged yet."));
    }
  add_declined (card, lines);
  if (view->overrun != NULL)
    {
      GtkWidget *label = gtk_label_new (view->overrun);
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_widget_add_css_class (label, "trouble");
      gtk_box_append (GTK_BOX (card), label);
    }
  if (view->bill_trouble != NULL)
    unsoot_card_say (card, view->bill_trouble);
}
