/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-page.h"

#include <glib/gi18n-lib.h>

#include "call-deeds.h"
#include "card.h"
#include "columns.h"
#include "customer-edit.h"
#include "customer-file.h"
#include "customer-words.h"
#include "deed-button.h"
#include "facts.h"
#include "first-record.h"
#include "format.h"
#include "job-link.h"
#include "link-row.h"
#include "title-block.h"
#include "vehicle-edit.h"

struct _UnsootCustomerPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  UnsootCard *reach;
  UnsootCard *money;
  UnsootCard *vehicles;
  UnsootCard *jobs;
  UnsootCard *calls;

  gint64 customer_id; /* that is shown */
};

G_DEFINE_FINAL_TYPE (UnsootCustomerPage, unsoot_customer_page, UNSOOT_TYPE_VIEW)

static gpointer
read_customer (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  g_autofree char *today = unsoot_first_record_today (db, query->now, error);
  const gint64 id = today != NULL ? unsoot_first_record (db, query, "customer", error) : 0;

  return id != 0 ? unsoot_customer_file_load (db, id, today, error) : NULL;
}

static void
edit_cb (UnsootCustomerPage *self)
{
  unsoot_customer_edit_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                             self->customer_id);
}

static void
vehicle_cb (UnsootCustomerPage *self)
{
  unsoot_vehicle_edit_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)), 0,
                            self->customer_id);
}

static void
book_cb (UnsootCustomerPage *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "win.open", "(sx)", "booking-party",
                              self->customer_id);
}

static GtkWidget *
deed_button_new (UnsootCustomerPage *self, UnsootDeed deed, const char *label, GCallback callback)
{
  GtkWidget *button
      = unsoot_deed_button_new (unsoot_view_get_session (UNSOOT_VIEW (self)), deed, label, NULL);

  g_signal_connect_object (button, "clicked", callback, self, G_CONNECT_SWAPPED);
  return button;
}

static void
show_deeds (UnsootCustomerPage *self)
{
  GtkWidget *book
      = deed_button_new (self, UNSOOT_DEED_ESTIMATE, _ ("New booking"), G_CALLBACK (book_cb));

  unsoot_deed_button_suggest (book, TRUE);
  unsoot_title_block_add (self->head, deed_button_new (self, UNSOOT_DEED_EDIT_CUSTOMER, _ ("Edit…"),
                                                       G_CALLBACK (edit_cb)));
  unsoot_title_block_add (self->head, book);
}

static void
show_head (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  const UnsootCustomerRow *customer = file->customer;
  const char *kind = unsoot_customer_kind_words (customer->kind);
  g_autofree char *detail = customer->contact != NULL
                                /* Translators: kind of customer, and whom to ask for */
                                ? g_strdup_printf (_ ("%s · ask for %s"), kind, customer->contact)
                                : g_strdup (kind);

  unsoot_view_set_title (UNSOOT_VIEW (self), customer->name);
  unsoot_title_block_show (self->head, customer->name, detail);
  self->customer_id = customer->id;
  show_deeds (self);
}

static char *
address_text (const UnsootAddressRow *address)
{
  g_autoptr (GString) text = g_string_new (address->street);
  const char *const town[] = { address->town, address->region, address->postcode };
  gboolean begun = FALSE;

  for (gsize i = 0; i < G_N_ELEMENTS (town); i++)
    if (town[i] != NULL && *town[i] != '\0')
      {
        if (!begun && text->len > 0)
          g_string_append_c (text, '\n');
        else if (begun)
          g_string_append_c (text, ' ');
        g_string_append (text, town[i]);
        begun = TRUE;
      }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The label that was given it, with a capital as the others have; else the usual one. */
static char *
label_or (const char *label, const char *usual)
{
  g_autofree char *first = NULL;

  if (label == NULL || *label == '\0')
    return g_strdup (usual);
  first = g_utf8_strup (label, g_utf8_next_char (label) - label);
  return g_strconcat (first, g_utf8_next_char (label), NULL);
}

static void
show_reach (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  GtkWidget *facts = unsoot_facts_new ();

  unsoot_card_clear (self->reach);
  for (guint i = 0; i < file->phones->len; i++)
    {
      const UnsootPhoneRow *phone = g_ptr_array_index (file->phones, i);
      g_autofree char *label = label_or (phone->label, _ ("Phone"));
      unsoot_facts_add (UNSOOT_FACTS (facts), label, phone->number);
    }
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Email"), file->customer->email);
  for (guint i = 0; i < file->addresses->len; i++)
    {
      const UnsootAddressRow *address = g_ptr_array_index (file->addresses, i);
      g_autofree char *text = address_text (address);
      g_autofree char *label = label_or (address->label, _ ("Address"));
      unsoot_facts_add (UNSOOT_FACTS (facts), label, text);
    }
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Reminders"),
                    file->customer->reminders_ok ? _ ("agreed to") : _ ("not agreed to"));
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Note"), file->customer->note);
  gtk_box_append (GTK_BOX (self->reach), facts);
}

static void
add_owed (UnsootCustomerPage *self, GtkWidget *facts, const char *what, gint64 minor)
{
  g_autofree char *money
      = minor != 0 ? unsoot_session_money (unsoot_view_get_session (UNSOOT_VIEW (self)), minor)
                   : NULL;

  unsoot_facts_add (UNSOOT_FACTS (facts), what, money);
}

static char *
terms_text (const UnsootCustomerRow *customer)
{
  const int days = (int) customer->terms_days;

  if (days == 0)
    return g_strdup (_ ("at once"));
  return g_strdup_printf (ngettext ("within %d day", "within %d days", (gulong) days), days);
}

static char *
order_text (UnsootCustomerPage *self, const UnsootCustomerRow *customer)
{
  g_autofree char *limit = NULL;

  if (!customer->po_required)
    return NULL;
  if (customer->po_limit_minor == 0)
    return g_strdup (_ ("number needed"));
  limit = unsoot_session_money (unsoot_view_get_session (UNSOOT_VIEW (self)),
                                customer->po_limit_minor);
  /* Translators: a purchase order: its number is needed, and it covers no more than an amount */
  return g_strdup_printf (_ ("number needed, up to %s"), limit);
}

static void
add_invoices (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *today = unsoot_session_today (session);
  GtkWidget *list = unsoot_link_list_new (_ ("Open invoices"));

  for (guint i = 0; i < file->invoices->len; i++)
    {
      const UnsootInvoiceLine *line = g_ptr_array_index (file->invoices, i);
      g_autofree char *due = unsoot_format_day (line->due_on, today);
      g_autofree char *title = g_strdup_printf (_ ("Invoice %d"), (int) line->number);
      /* Translators: when an invoice is to be paid */
      g_autofree char *detail = g_strdup_printf (_ ("due %s"), due);
      g_autofree char *open = unsoot_session_money (session, line->open_minor);
      GtkWidget *row = unsoot_link_row_new ("invoice", line->id, title, detail);

      unsoot_link_row_add_text (row, open);
      gtk_list_box_append (GTK_LIST_BOX (list), row);
    }
  gtk_box_append (GTK_BOX (self->money), list);
}

static void
show_money (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *terms = terms_text (file->customer);
  g_autofree char *order = order_text (self, file->customer);

  unsoot_card_clear (self->money);
  add_owed (self, facts, _ ("Owes"), file->owes.total);
  add_owed (self, facts, _ ("Not due yet"), file->owes.not_due);
  add_owed (self, facts, _ ("1 to 30 days over"), file->owes.to_30);
  add_owed (self, facts, _ ("31 to 60 days over"), file->owes.to_60);
  add_owed (self, facts, _ ("61 to 90 days over"), file->owes.to_90);
  add_owed (self, facts, _ ("Over 90 days"), file->owes.over_90);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Pays"), terms);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Purchase order"), order);
  if (file->customer->tax_exempt)
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Tax exempt"), file->customer->tax_exempt_reason);
  gtk_box_append (GTK_BOX (self->money), facts);
  if (file->invoices->len > 0)
    add_invoices (self, file);
}

static GtkWidget *
new_vehicle_button (UnsootCustomerPage *self)
{
  GtkWidget *button = deed_button_new (self, UNSOOT_DEED_EDIT_VEHICLE, _ ("New vehicle…"),
                                       G_CALLBACK (vehicle_cb));

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  return button;
}

static void
show_vehicles (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (UNSOOT_VIEW (self)));
  GtkWidget *list = unsoot_link_list_new (_ ("Vehicles"));

  unsoot_card_clear (self->vehicles);
  for (guint i = 0; i < file->vehicles->len; i++)
    {
      const UnsootVehicleLine *line = g_ptr_array_index (file->vehicles, i);
      g_autofree char *due = unsoot_format_day (line->next_due_on, today);
      g_autofree char *detail
          /* Translators: when a vehicle's next service is due */
          = line->next_due_on != NULL ? g_strdup_printf (_ ("next due %s"), due) : NULL;

      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_link_row_new ("vehicle", line->id, line->title, detail));
    }
  if (file->vehicles->len > 0)
    gtk_box_append (GTK_BOX (self->vehicles), list);
  else
    unsoot_card_say (self->vehicles, _ ("No vehicle of this customer is known yet."));
  gtk_box_append (GTK_BOX (self->vehicles), new_vehicle_button (self));
}

static void
show_jobs (UnsootCustomerPage *self, const UnsootCustomerFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("Jobs"));

  unsoot_card_clear (self->jobs);
  for (guint i = 0; i < file->jobs->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_job_link_new (g_ptr_array_index (file->jobs, i), session, TRUE));
  if (file->jobs->len > 0)
    gtk_box_append (GTK_BOX (self->jobs), list);
  else
    unsoot_card_say (self->jobs, _ ("No job yet."));
}

static void
show_customer (UnsootView *view, gpointer result)
{
  UnsootCustomerPage *self = UNSOOT_CUSTOMER_PAGE (view);
  g_autoptr (UnsootCustomerFile) file = result;

  show_head (self, file);
  show_reach (self, file);
  show_money (self, file);
  show_vehicles (self, file);
  show_jobs (self, file);
  unsoot_phone_call_card (self->calls, file->calls, unsoot_view_get_session (view));
}

static void
unsoot_customer_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_customer_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_CUSTOMER_PAGE);
}

static void
unsoot_customer_page_class_init (UnsootCustomerPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_customer_page_dispose;
  view_class->read = read_customer;
  view_class->free_result = (GDestroyNotify) unsoot_customer_file_free;
  view_class->show = show_customer;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/customer-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, reach);
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, money);
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, vehicles);
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, jobs);
  gtk_widget_class_bind_template_child (widget_class, UnsootCustomerPage, calls);
}

static void
unsoot_customer_page_init (UnsootCustomerPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
