/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "format.h"
#include "job-deeds.h"
#include "money.h"
#include "path.h"
#include "table.h"

enum
{
  DEED_COLUMN = 4
};

static gboolean
is_declined (const UnsootJobLineRow *line)
{
  return g_strcmp0 (line->state, "declined") == 0;
}

/* What was billed stands, and so does a quote that is off. */
static gboolean
is_open (const UnsootJobViewFile *view)
{
  UnsootJobStatus status = UNSOOT_JOB_PAID;

  return unsoot_job_status_find (view->file->job->status, &status)
         && (status <= UNSOOT_JOB_DONE || status == UNSOOT_JOB_STOPPED);
}

static gint64
line_of (GtkWidget *button)
{
  return *(const gint64 *) g_object_get_data (G_OBJECT (button), "line");
}

static void
decline_cb (GtkWidget *button, UnsootSession *session)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (button, session, &unsoot_job_line_decline_form, line_of (button));

  unsoot_deed_dialog_say (dialog, g_object_get_data (G_OBJECT (button), "about"));
  unsoot_deed_dialog_open (dialog);
}

static void
offer_cb (GtkWidget *button, UnsootSession *session)
{
  unsoot_deed_do (button, session, &unsoot_job_line_offer_form, line_of (button));
}

static GtkWidget *
line_button_new (UnsootSession *session, UnsootDeed deed, const char *verb,
                 const UnsootJobLineRow *line, GCallback clicked)
{
  GtkWidget *button = unsoot_deed_button_new (session, deed, verb, line->text);

  gtk_widget_add_css_class (button, "flat");
  g_object_set_data_full (G_OBJECT (button), "line", g_memdup2 (&line->id, sizeof line->id),
                          g_free);
  g_object_set_data_full (G_OBJECT (button), "about", g_strdup (line->text), g_free);
  g_signal_connect_object (button, "clicked", clicked, session, 0);
  return button;
}

static void
add_line (GtkWidget *table, const UnsootJobLineRow *line, UnsootSession *session, gboolean open)
{
  int row;
  g_autofree char *text = g_markup_escape_text (line->text, -1);
  g_autofree char *number = unsoot_format_number ((double) line->quantity_milli / 1000.0, 3);
  g_autofree char *quantity = unsoot_format_with_unit (number, line->unit);
  g_autofree char *price = unsoot_session_money (session, line->unit_price_minor);
  g_autofree char *net = NULL;
  gint64 minor;

  if (unsoot_money_times (line->unit_price_minor, line->quantity_milli, &minor, NULL))
    net = unsoot_session_money (session, minor);
  const char *const cells[] = { text, quantity, price, net, NULL };
  row = unsoot_table_add (UNSOOT_TABLE (table), cells);
  if (open)
    {
      GtkWidget *decline = line_button_new (session, UNSOOT_DEED_DECLINE, _ ("Decline…"), line,
                                            G_CALLBACK (decline_cb));
      /* A verb on every line would shout. */
      unsoot_deed_button_draw (decline, "list-remove-symbolic", _ ("Decline…"));
      gtk_widget_add_css_class (decline, "small");
      unsoot_table_put (UNSOOT_TABLE (table), row, DEED_COLUMN, decline);
    }
}

static void
add_sum (GtkWidget *table, const char *what, gint64 minor, UnsootSession *session, gboolean total)
{
  g_autofree char *money = unsoot_session_money (session, minor);
  g_autofree char *label = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", what);
  g_autofree char *amount = g_markup_printf_escaped (total ? "<b>%s</b>" : "%s", money);
  const char *const cells[] = { label, NULL, NULL, amount, NULL };

  if (total)
    unsoot_table_add_total (UNSOOT_TABLE (table), cells);
  else
    unsoot_table_add (UNSOOT_TABLE (table), cells);
}

static GtkWidget *
declined_new (const UnsootJobLineRow *line, UnsootSession *session, gboolean open)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12), *label;
  g_autofree char *text
      = line->declined_reason != NULL
            /* Translators: work that the customer declined, and why */
            ? g_strdup_printf (_ ("Declined: %s (%s)"), line->text, line->declined_reason)
            : g_strdup_printf (_ ("Declined: %s"), line->text);

  label = gtk_label_new (text);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (row), label);
  if (open)
    {
      GtkWidget *offer = line_button_new (session, UNSOOT_DEED_ESTIMATE, _ ("Offer again"), line,
                                          G_CALLBACK (offer_cb));
      gtk_widget_add_css_class (offer, "small-deed");
      gtk_box_append (GTK_BOX (row), offer);
    }
  return row;
}

static void
add_declined (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const GPtrArray *lines = view->file->lines;
  const gboolean open = is_open (view);

  for (guint i = 0; i < lines->len; i++)
    if (is_declined (g_ptr_array_index (lines, i)))
      gtk_box_append (GTK_BOX (card), declined_new (g_ptr_array_index (lines, i), session, open));
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

/* How many lines stand. */
static guint
add_lines (GtkWidget *table, const UnsootJobViewFile *view, UnsootSession *session)
{
  const GPtrArray *lines = view->file->lines;
  guint n = 0;

  for (guint i = 0; i < lines->len; i++)
    if (!is_declined (g_ptr_array_index (lines, i)))
      {
        add_line (table, g_ptr_array_index (lines, i), session, is_open (view));
        n++;
      }
  return n;
}

static void
add_overrun (UnsootCard *card, const char *overrun)
{
  GtkWidget *label;

  if (overrun == NULL)
    return;
  label = gtk_label_new (overrun);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "trouble");
  gtk_box_append (GTK_BOX (card), label);
}

void
unsoot_job_card_lines (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  const UnsootTableColumn columns[]
      = { { "", FALSE, TRUE },         { _ ("Quantity"), TRUE, FALSE },
          { _ ("Each"), TRUE, FALSE }, { _ ("Amount"), TRUE, FALSE },
          { "", TRUE, FALSE },         { NULL } };
  GtkWidget *table = g_object_ref_sink (unsoot_table_new (_ ("Lines and total"), columns));

  if (add_lines (table, view, session) > 0)
    {
      if (view->bill != NULL)
        add_totals (table, view, session);
      gtk_box_append (GTK_BOX (card), table);
    }
  else
    unsoot_card_say (card, _ ("Nothing is charged yet."));
  g_object_unref (table);
  add_declined (card, view, session);
  add_overrun (card, view->overrun);
  if (view->bill_trouble != NULL)
    unsoot_card_say (card, view->bill_trouble);
}
