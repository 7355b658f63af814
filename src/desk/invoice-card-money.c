/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-cards.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "format.h"
#include "invoice-deeds.h"
#include "invoice-words.h"
#include "link-row.h"
#include "pay-method.h"
#include "table.h"

static void
reverse_cb (GtkButton *button, UnsootSession *session)
{
  const gint64 *id = g_object_get_data (G_OBJECT (button), "payment");
  const char *about = g_object_get_data (G_OBJECT (button), "about");
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (GTK_WIDGET (button), session, &unsoot_form_reversal, *id);

  unsoot_deed_dialog_say (dialog, about);
  unsoot_deed_dialog_open (dialog);
}

static char *
payment_words (const UnsootPaymentRow *payment, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *day = unsoot_format_day (payment->received_on, today);
  const char *words = payment->method;
  int method;

  if (unsoot_slug_find (unsoot_pay_methods, payment->method, &method))
    words = unsoot_slug_words (unsoot_pay_methods, method);
  if (payment->amount_minor < 0)
    /* Translators: money that went back: the way it had come in, when */
    return g_strdup_printf (_ ("Taken back, %s, %s"), words, day);
  /* Translators: a payment: the way it came in, when */
  return g_strdup_printf (_ ("Paid, %s, %s"), words, day);
}

static GtkWidget *
reverse_button_new (const UnsootPaymentRow *payment, const char *words, UnsootSession *session)
{
  g_autofree char *money = unsoot_session_money (session, payment->amount_minor);
  g_autofree char *about = g_strdup_printf ("%s: %s", words, money);
  GtkWidget *button
      = unsoot_deed_button_new (session, UNSOOT_DEED_TAKE_PAYMENT, _ ("Take back…"), about);

  gtk_widget_add_css_class (button, "flat");
  g_object_set_data_full (G_OBJECT (button), "payment", g_memdup2 (&payment->id, sizeof (gint64)),
                          g_free);
  g_object_set_data_full (G_OBJECT (button), "about", g_steal_pointer (&about), g_free);
  g_signal_connect_object (button, "clicked", G_CALLBACK (reverse_cb), session, 0);
  return button;
}

static void
add_payment (GtkWidget *table, const UnsootInvoiceView *view, const UnsootPaymentRow *payment,
             UnsootSession *session)
{
  g_autofree char *words = payment_words (payment, session);
  g_autofree char *text = payment->reference != NULL ? g_markup_printf_escaped (
                              "%s\n<span alpha=\"72%%\">%s</span>", words, payment->reference)
                                                     : g_markup_escape_text (words, -1);
  g_autofree char *money = unsoot_session_money (session, payment->amount_minor);
  const char *const cells[] = { text, money, NULL };
  const int row = unsoot_table_add (UNSOOT_TABLE (table), cells);

  if (payment->amount_minor > 0 && !unsoot_invoice_view_reversed (view, payment->id))
    unsoot_table_put (UNSOOT_TABLE (table), row, 2, reverse_button_new (payment, words, session));
}

static void
add_sum (GtkWidget *table, const char *what, gint64 minor, gboolean total, UnsootSession *session)
{
  g_autofree char *money = unsoot_session_money (session, minor);
  g_autofree char *label = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", what);
  g_autofree char *amount = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", money);
  const char *const cells[] = { label, amount, NULL };

  if (total)
    unsoot_table_add_total (UNSOOT_TABLE (table), cells);
  else
    unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static void
add_credits (UnsootCard *card, const UnsootInvoiceView *view, UnsootSession *session)
{
  GtkWidget *list = unsoot_link_list_new (_ ("Credit notes"));

  for (guint i = 0; i < view->credits->len; i++)
    {
      const UnsootInvoiceFile *credit = g_ptr_array_index (view->credits, i);
      const UnsootInvoiceRow *row = credit->invoice;
      g_autofree char *title = unsoot_invoice_title (row->kind, row->number);
      g_autofree char *money = unsoot_session_money (session, row->total_minor);
      GtkWidget *link = unsoot_link_row_new ("invoice", row->id, title, row->note);

      unsoot_link_row_add_text (link, money);
      gtk_list_box_append (GTK_LIST_BOX (list), link);
    }
  gtk_box_append (GTK_BOX (card), list);
}

static void
show_credit (UnsootCard *card, const UnsootInvoiceView *view, UnsootSession *session)
{
  const UnsootInvoiceRow *row = view->file->invoice;
  g_autofree char *title = unsoot_invoice_title ("invoice", view->credited_number);
  GtkWidget *list = unsoot_link_list_new (_ ("What it takes back"));

  unsoot_card_say (card, row->note);
  gtk_list_box_append (GTK_LIST_BOX (list), unsoot_link_row_new ("invoice", row->credits_id, title,
                                                                 _ ("takes lines of it back")));
  gtk_box_append (GTK_BOX (card), list);
}

void
unsoot_invoice_card_money (UnsootCard *card, const UnsootInvoiceView *view, UnsootSession *session)
{
  const UnsootTableColumn columns[]
      = { { "", FALSE, TRUE }, { "", TRUE, FALSE }, { "", TRUE, FALSE }, { NULL } };
  GtkWidget *table;
  gint64 credited = 0;

  unsoot_card_clear (card);
  if (unsoot_invoice_view_is_credit (view))
    {
      show_credit (card, view, session);
      return;
    }
  table = unsoot_table_new (_ ("Payments"), columns);
  add_sum (table, _ ("Billed"), view->file->invoice->total_minor, FALSE, session);
  for (guint i = 0; i < view->file->payments->len; i++)
    add_payment (table, view, g_ptr_array_index (view->file->payments, i), session);
  for (guint i = 0; i < view->credits->len; i++)
    credited
        += ((const UnsootInvoiceFile *) g_ptr_array_index (view->credits, i))->invoice->total_minor;
  if (credited != 0)
    add_sum (table, _ ("Credited"), credited, FALSE, session);
  add_sum (table, _ ("Open"), view->open_minor, TRUE, session);
  gtk_box_append (GTK_BOX (card), table);
  if (view->credits->len > 0)
    add_credits (card, view, session);
}
