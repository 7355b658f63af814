/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-page.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "call-deeds.h"
#include "card.h"
#include "columns.h"
#include "credit-dialog.h"
#include "deed-button.h"
#include "deed-dialog.h"
#include "facts.h"
#include "format.h"
#include "invoice-cards.h"
#include "invoice-deeds.h"
#include "invoice-view.h"
#include "invoice-words.h"
#include "lists.h"
#include "money.h"
#include "paper-view.h"
#include "title-block.h"

struct _UnsootInvoicePage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *deeds;
  UnsootCard *lines;
  UnsootCard *money;
  UnsootCard *whom;
  UnsootCard *calls;

  /* owned */
  UnsootInvoiceView *shown;
};

G_DEFINE_FINAL_TYPE (UnsootInvoicePage, unsoot_invoice_page_view, UNSOOT_TYPE_VIEW)

/* For a picture of the place: the newest. 0 on error. */
static gint64
newest (UnsootDb *db, GError **error)
{
  const UnsootListPage page = { .limit = 1, .order = UNSOOT_LIST_DOWN };
  g_autoptr (GPtrArray) lines
      = unsoot_invoice_page (db, &page, UNSOOT_INVOICES_OPEN, NULL, 0, error);

  if (lines == NULL)
    return 0;
  if (lines->len > 0)
    return ((const UnsootInvoiceLine *) g_ptr_array_index (lines, 0))->id;
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                       _ ("There is no open invoice, so there is nothing to show here."));
  return 0;
}

static gpointer
read_invoice (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  const gint64 id = query->record != 0 ? query->record : newest (db, error);

  return id != 0 ? unsoot_invoice_view_load (db, id, error) : NULL;
}

static void
show_head (UnsootInvoicePage *self)
{
  const UnsootInvoiceRow *row = self->shown->file->invoice;
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  g_autofree char *title = unsoot_invoice_title (row->kind, row->number);
  g_autofree char *issued = unsoot_format_day (row->issued_on, today);
  gboolean late;
  g_autofree char *state
      = unsoot_invoice_state (row->kind, row->due_on, self->shown->open_minor, today, &late);
  /* Translators: when an invoice was issued, and how it stands */
  g_autofree char *detail = g_strdup_printf (_ ("issued %s · %s"), issued, state);

  unsoot_view_set_title (UNSOOT_VIEW (self), title);
  unsoot_title_block_show (self->head, title, detail);
  if (row->job_id != 0)
    {
      g_autofree char *job = g_strdup_printf (_ ("Job %d"), (int) self->shown->job_number);
      unsoot_title_block_link (self->head, "unsoot-job-symbolic", job, "job", row->job_id);
    }
  unsoot_title_block_link (self->head, "unsoot-customer-symbolic", self->shown->customer->name,
                           "customer", row->customer_id);
}

static void
pay_cb (GtkButton *button, UnsootInvoicePage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootInvoiceRow *row = self->shown->file->invoice;
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (GTK_WIDGET (self), session, &unsoot_form_payment, row->id);
  g_autofree char *open = unsoot_session_money (session, self->shown->open_minor);
  g_autofree char *about = g_strdup_printf (_ ("%s is open on invoice %d of %s."), open,
                                            (int) row->number, self->shown->customer->name);
  g_autofree char *plain = unsoot_money_plain (self->shown->open_minor, row->currency);

  unsoot_deed_dialog_say (dialog, about);
  unsoot_deed_dialog_set_text (dialog, UNSOOT_PAYMENT_AMOUNT, plain);
  unsoot_deed_dialog_open (dialog);
}

static void
credit_cb (GtkButton *button, UnsootInvoicePage *self)
{
  unsoot_credit_dialog_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                             self->shown);
}

static UnsootPaperView *
show_paper (UnsootInvoicePage *self)
{
  const UnsootInvoiceRow *row = self->shown->file->invoice;

  return unsoot_paper_view_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                                 row->job_id, UNSOOT_PAPER_INVOICE, row->id);
}

static void
paper_cb (GtkButton *button, UnsootInvoicePage *self)
{
  show_paper (self);
}

static void
statement_cb (GtkButton *button, UnsootInvoicePage *self)
{
  unsoot_paper_view_open_statement (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                                    self->shown->file->invoice->customer_id);
}

static void
print_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  UnsootInvoicePage *self = UNSOOT_INVOICE_PAGE (widget);

  if (self->shown != NULL && self->shown->file->invoice->job_id != 0)
    unsoot_paper_view_print (show_paper (self));
}

static gboolean
anything_left (const UnsootInvoiceView *shown)
{
  for (guint i = 0; i < shown->file->lines->len; i++)
    {
      const UnsootInvoiceLineRow *line = g_ptr_array_index (shown->file->lines, i);
      if (!unsoot_invoice_view_credited (shown, line->position))
        return TRUE;
    }
  return FALSE;
}

static void
add_deed (UnsootInvoicePage *self, UnsootDeed deed, const char *label, GCallback clicked,
          const char *bar, gboolean next)
{
  GtkWidget *button
      = unsoot_deed_button_new (unsoot_view_get_session (UNSOOT_VIEW (self)), deed, label, NULL);

  unsoot_deed_button_bar (button, bar);
  unsoot_deed_button_suggest (button, next && bar == NULL);
  g_signal_connect (button, "clicked", clicked, self);
  gtk_box_append (self->deeds, button);
}

static void
show_deeds (UnsootInvoicePage *self)
{
  GtkWidget *child, *paper = gtk_button_new_with_label (_ ("Show, save or print"));
  GtkWidget *statement = gtk_button_new_with_label (_ ("Statement"));

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->deeds))) != NULL)
    gtk_box_remove (self->deeds, child);
  if (!unsoot_invoice_view_is_credit (self->shown))
    {
      add_deed (self, UNSOOT_DEED_TAKE_PAYMENT, _ ("Take payment…"), G_CALLBACK (pay_cb),
                self->shown->open_minor > 0 ? NULL : _ ("Nothing is open on this invoice."), TRUE);
      add_deed (self, UNSOOT_DEED_CREDIT, _ ("Credit note…"), G_CALLBACK (credit_cb),
                anything_left (self->shown) ? NULL : _ ("Every line was taken back already."),
                FALSE);
    }
  gtk_widget_set_sensitive (paper, self->shown->file->invoice->job_id != 0);
  gtk_widget_set_tooltip_text (paper, _ ("Ctrl+P prints it"));
  g_signal_connect (paper, "clicked", G_CALLBACK (paper_cb), self);
  gtk_box_append (self->deeds, paper);
  gtk_widget_set_tooltip_text (statement,
                               _ ("All that this customer owes, to show, save or print"));
  unsoot_access_name (statement, _ ("Statement of account"));
  g_signal_connect (statement, "clicked", G_CALLBACK (statement_cb), self);
  gtk_box_append (self->deeds, statement);
}

static void
show_invoice (UnsootView *view, gpointer result)
{
  UnsootInvoicePage *self = UNSOOT_INVOICE_PAGE (view);
  UnsootSession *session = unsoot_view_get_session (view);

  g_clear_pointer (&self->shown, unsoot_invoice_view_free);
  self->shown = result;
  show_head (self);
  show_deeds (self);
  unsoot_invoice_card_lines (self->lines, self->shown, session);
  unsoot_invoice_card_money (self->money, self->shown, session);
  unsoot_invoice_card_whom (self->whom, self->shown, session);
  unsoot_phone_call_card (self->calls, self->shown->calls, session);
}

static void
unsoot_invoice_page_dispose (GObject *object)
{
  g_clear_pointer (&UNSOOT_INVOICE_PAGE (object)->shown, unsoot_invoice_view_free);
  G_OBJECT_CLASS (unsoot_invoice_page_view_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_INVOICE_PAGE);
}

static void
unsoot_invoice_page_view_class_init (UnsootInvoicePageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_invoice_page_dispose;
  view_class->read = read_invoice;
  view_class->free_result = (GDestroyNotify) unsoot_invoice_view_free;
  view_class->show = show_invoice;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_install_action (widget_class, "view.print", NULL, print_action);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/invoice-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, deeds);
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, lines);
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, money);
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, whom);
  gtk_widget_class_bind_template_child (widget_class, UnsootInvoicePage, calls);
}

static void
unsoot_invoice_page_view_init (UnsootInvoicePage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
