/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "invoice-cards.h"

#include <glib/gi18n-lib.h>

#include "facts.h"
#include "format.h"

static void
add_exemption (GtkWidget *facts, const UnsootInvoiceView *view)
{
  for (guint i = 0; i < view->file->taxes->len; i++)
    {
      const UnsootInvoiceTaxRow *tax = g_ptr_array_index (view->file->taxes, i);
      if (g_strcmp0 (tax->category, "E") == 0)
        unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Tax exempt"), tax->label);
    }
}

/* Whom to call about it. */
static void
add_phones (GtkWidget *facts, const UnsootInvoiceView *view)
{
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Ask for"), view->customer->contact);
  for (guint i = 0; i < view->phones->len; i++)
    {
      const UnsootPhoneRow *phone = g_ptr_array_index (view->phones, i);
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Phone"), phone->number);
    }
}

void
unsoot_invoice_card_whom (UnsootCard *card, const UnsootInvoiceView *view, UnsootSession *session)
{
  const UnsootInvoiceRow *row = view->file->invoice;
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *issued = unsoot_format_exact_day (row->issued_on);
  g_autofree char *due = unsoot_format_exact_day (row->due_on);

  unsoot_card_clear (card);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Billed to"), row->bill_to);
  add_phones (facts, view);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Vehicle"), row->vehicle);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Purchase order"), row->po_number);
  add_exemption (facts, view);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Issued"), issued);
  if (!unsoot_invoice_view_is_credit (view))
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Due"), due);
  gtk_box_append (GTK_BOX (card), facts);
}
