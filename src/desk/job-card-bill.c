/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-cards.h"

#include <glib/gi18n-lib.h>

#include "deed-button.h"
#include "deed-dialog.h"
#include "invoice-deeds.h"
#include "invoice-words.h"
#include "link-row.h"
#include "path.h"

/* What a click needs to know of the job. */
typedef struct
{
  UnsootSession *session;
  gint64 job_id;
  char *po_number;
  char *about;
} Wanted;

static void
wanted_free (gpointer data, GClosure *closure)
{
  Wanted *wanted = data;

  g_object_unref (wanted->session);
  g_free (wanted->po_number);
  g_free (wanted->about);
  g_free (wanted);
}

/* What will be frozen, in one sentence. */
static char *
about_bill (const UnsootJobViewFile *view, UnsootSession *session)
{
  g_autofree char *total = NULL;

  if (view->bill == NULL)
    return g_strdup (view->bill_trouble);
  total = unsoot_session_money (session, view->bill->with_tax);
  return g_strdup_printf (_ ("%s, to %s. The lines are frozen under the next number; what turns "
                             "out wrong is taken back by a credit note."),
                          total, view->file->customer->name);
}

static Wanted *
wanted_new (const UnsootJobViewFile *view, UnsootSession *session)
{
  Wanted *wanted = g_new0 (Wanted, 1);

  wanted->session = g_object_ref (session);
  wanted->job_id = view->file->job->id;
  wanted->po_number = g_strdup (view->file->job->po_number);
  wanted->about = about_bill (view, session);
  return wanted;
}

static void
open_invoicing (GtkWidget *over, const Wanted *wanted)
{
  UnsootDeedDialog *dialog
      = unsoot_deed_dialog_new (over, wanted->session, &unsoot_form_invoice, wanted->job_id);

  unsoot_deed_dialog_say (dialog, wanted->about);
  unsoot_deed_dialog_set_text (dialog, UNSOOT_INVOICE_ORDER, wanted->po_number);
  unsoot_deed_dialog_open (dialog);
}

static void
invoice_cb (GtkWidget *button, Wanted *wanted)
{
  open_invoicing (button, wanted);
}

void
unsoot_job_invoice_open (GtkWidget *over, UnsootSession *session, const UnsootJobViewFile *view)
{
  Wanted *wanted = wanted_new (view, session);

  open_invoicing (over, wanted);
  wanted_free (wanted, NULL);
}

static void
discount_cb (GtkWidget *button, Wanted *wanted)
{
  unsoot_deed_dialog_open (
      unsoot_deed_dialog_new (button, wanted->session, &unsoot_form_discount, wanted->job_id));
}

static GtkWidget *
button_new (const UnsootJobViewFile *view, UnsootSession *session, UnsootDeed deed,
            const char *label, void (*clicked) (GtkWidget *, Wanted *))
{
  GtkWidget *button = unsoot_deed_button_new (session, deed, label, NULL);

  g_signal_connect_data (button, "clicked", G_CALLBACK (clicked), wanted_new (view, session),
                         wanted_free, 0);
  return button;
}

static void
add_deeds (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *discount
      = button_new (view, session, UNSOOT_DEED_ESTIMATE, _ ("Discount…"), discount_cb);
  GtkWidget *invoice = button_new (view, session, UNSOOT_DEED_INVOICE, _ ("Invoice…"), invoice_cb);

  if (view->bill == NULL)
    unsoot_deed_button_bar (invoice, view->bill_trouble);
  unsoot_deed_button_suggest (invoice, TRUE);
  gtk_widget_set_halign (box, GTK_ALIGN_END);
  gtk_box_append (GTK_BOX (box), discount);
  gtk_box_append (GTK_BOX (box), invoice);
  gtk_box_append (GTK_BOX (card), box);
}

static void
add_invoices (UnsootCard *card, const GPtrArray *invoices, UnsootSession *session)
{
  GtkWidget *list = unsoot_link_list_new (_ ("Invoices and credit notes"));

  for (guint i = 0; i < invoices->len; i++)
    {
      const UnsootInvoiceFile *file = g_ptr_array_index (invoices, i);
      g_autofree char *title = unsoot_invoice_title (file->invoice->kind, file->invoice->number);
      g_autofree char *money = unsoot_session_money (session, file->invoice->total_minor);
      GtkWidget *row
          = unsoot_link_row_new ("invoice", file->invoice->id, title, file->invoice->note);

      unsoot_link_row_add_text (row, money);
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  gtk_box_append (GTK_BOX (card), list);
}

void
unsoot_job_card_bill (UnsootCard *card, const UnsootJobViewFile *view, UnsootSession *session)
{
  UnsootJobStatus status = UNSOOT_JOB_QUOTED;

  if (view->file->invoices->len > 0)
    add_invoices (card, view->file->invoices, session);
  unsoot_job_status_find (view->file->job->status, &status);
  if (status == UNSOOT_JOB_DONE)
    add_deeds (card, view, session);
}
