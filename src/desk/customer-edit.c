/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-edit.h"

#include <glib/gi18n-lib.h>

#include "booking-plan.h"
#include "conflict-box.h"
#include "contact-rows.h"
#include "customer-fields.h"
#include "customer-words.h"
#include "customers.h"
#include "form-dialog.h"
#include "store-call.h"

/* A customer with how they are reached. */
typedef struct
{
  UnsootActing who;
  UnsootCustomerRow *row;
  GPtrArray *phones;
  GPtrArray *addresses;
  gboolean conflict;
} Whole;

struct _UnsootCustomerEdit
{
  GtkBox parent_instance;

  /* borrowed children */
  UnsootCustomerFields *fields;
  UnsootContactRows *contacts;
  UnsootConflictBox *conflict;

  /* owned */
  UnsootSession *session;
  UnsootCustomerRow *row;
  Whole *loaded; /* what the contacts were filled from; NULL: someone new */
  Whole *theirs;
  UnsootStoreSlot load_slot;
  UnsootStoreSlot slot;

  UnsootFormDialog *dialog; /* borrowed: it owns these fields */
};

G_DEFINE_FINAL_TYPE (UnsootCustomerEdit, unsoot_customer_edit, GTK_TYPE_BOX)

static const UnsootFieldLabel labels[]
    = { { "kind", N_ ("Kind") },
        { "name", N_ ("Name") },
        { "contact", N_ ("Whom to ask for") },
        { "email", N_ ("Email") },
        { "tax_exempt", N_ ("Is not taxed") },
        { "tax_exempt_reason", N_ ("Why, as the invoice says it") },
        { "tax_exempt_number", N_ ("Number of the exemption") },
        { "terms_days", N_ ("Days to pay") },
        { "po_required", N_ ("Needs a purchase-order number") },
        { "po_limit_minor", N_ ("The most one order covers") },
        { "reminders_ok", N_ ("Agreed to be reminded of the next service") },
        { "note", N_ ("Note") },
        { NULL, NULL } };

static void
whole_free (gpointer data)
{
  Whole *whole = data;

  unsoot_customer_row_free (whole->row);
  g_clear_pointer (&whole->phones, g_ptr_array_unref);
  g_clear_pointer (&whole->addresses, g_ptr_array_unref);
  g_free (whole);
}

static Whole *
load_whole (UnsootDb *db, gint64 id, GError **error)
{
  Whole *whole = g_new0 (Whole, 1);

  if ((whole->row = unsoot_customer_load (db, id, error)) != NULL
      && (whole->phones = unsoot_customer_phones (db, id, error)) != NULL
      && (whole->addresses = unsoot_customer_addresses (db, id, error)) != NULL)
    return whole;
  whole_free (whole);
  return NULL;
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return load_whole (db, *(gint64 *) data, error);
}

/* Their version where someone was quicker, else an empty answer. */
static gpointer
save (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Whole *asked = data;
  g_autoptr (GError) failed = NULL;
  Whole *answer;

  if (unsoot_customer_save (db, &asked->who, asked->row, asked->phones, asked->addresses, &failed))
    return g_new0 (Whole, 1);
  if (!g_error_matches (failed, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT))
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return NULL;
    }
  answer = load_whole (db, asked->row->id, error);
  if (answer != NULL)
    answer->conflict = TRUE;
  return answer;
}

static char *
field_words (gpointer owner, const char *field, gconstpointer record)
{
  UnsootCustomerEdit *self = owner;
  const UnsootCustomerRow *customer = record;

  if (g_str_equal (field, "kind"))
    return g_strdup (unsoot_customer_kind_words (customer->kind));
  if (g_str_equal (field, "po_limit_minor") && customer->po_limit_minor != 0)
    return unsoot_session_money (self->session, customer->po_limit_minor);
  return NULL;
}

static gboolean
show_reach (UnsootCustomerEdit *self)
{
  g_autoptr (GPtrArray) phones = unsoot_contact_rows_get_phones (self->contacts);
  g_autoptr (GPtrArray) addresses = unsoot_contact_rows_get_addresses (self->contacts);
  g_autofree char *my_phones = unsoot_contact_rows_phone_words (self->contacts, phones);
  g_autofree char *their_phones
      = unsoot_contact_rows_phone_words (self->contacts, self->theirs->phones);
  g_autofree char *my_addresses = unsoot_contact_rows_address_words (self->contacts, addresses);
  g_autofree char *their_addresses
      = unsoot_contact_rows_address_words (self->contacts, self->theirs->addresses);
  const gboolean differs
      = unsoot_conflict_box_add (self->conflict, _ ("Phones"), my_phones, their_phones);

  return unsoot_conflict_box_add (self->conflict, _ ("Addresses"), my_addresses, their_addresses)
         || differs;
}

static void mine_cb (UnsootCustomerEdit *self);

/* Takes @theirs. */
static void
show_conflict (UnsootCustomerEdit *self, Whole *theirs)
{
  gboolean differs;

  g_clear_pointer (&self->theirs, whole_free);
  self->theirs = theirs;
  differs = unsoot_conflict_box_show (self->conflict, &unsoot_customer_row_type, self->row,
                                      theirs->row, labels, field_words, self);
  differs = show_reach (self) || differs;
  /* Both wrote the same: there is nothing to choose. */
  if (!differs)
    mine_cb (self);
}

static void
saved_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootCustomerEdit *self = owner;
  Whole *answer = result;

  unsoot_form_dialog_say (self->dialog, error != NULL ? error->message : NULL);
  if (answer == NULL)
    return;
  if (answer->conflict)
    {
      show_conflict (self, answer);
      return;
    }
  unsoot_form_dialog_done (self->dialog, _ ("The customer is saved"));
  whole_free (answer);
}

static void
apply_cb (UnsootCustomerEdit *self)
{
  g_autoptr (GError) error = NULL;
  Whole *whole;

  if (self->row == NULL)
    return;
  if (!unsoot_customer_fields_read (self->fields, self->row, NULL, &error))
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  whole = g_new0 (Whole, 1);
  whole->who = unsoot_session_acting (self->session);
  whole->row = unsoot_record_copy (&unsoot_customer_row_type, self->row);
  whole->phones = unsoot_contact_rows_get_phones (self->contacts);
  whole->addresses = unsoot_contact_rows_get_addresses (self->contacts);
  unsoot_form_dialog_set_busy (self->dialog, TRUE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), save, whole,
                          whole_free, whole_free, saved_cb, self);
}

/* What was typed stands over their version, which the log of changes keeps; a phone or an address
 * that they added stays. */
static void
mine_cb (UnsootCustomerEdit *self)
{
  self->row->version = self->theirs->row->version;
  unsoot_contact_rows_rebase (self->contacts, self->loaded->phones, self->loaded->addresses,
                              self->theirs->phones, self->theirs->addresses);
  whole_free (self->loaded);
  self->loaded = g_steal_pointer (&self->theirs);
  gtk_widget_set_visible (GTK_WIDGET (self->conflict), FALSE);
  apply_cb (self);
}

/* Takes @whole. */
static void
fill (UnsootCustomerEdit *self, Whole *whole)
{
  g_clear_pointer (&self->row, unsoot_customer_row_free);
  g_clear_pointer (&self->loaded, whole_free);
  self->loaded = whole;
  self->row = unsoot_record_copy (&unsoot_customer_row_type, whole->row);
  unsoot_customer_fields_set (self->fields, self->row, NULL);
  unsoot_contact_rows_set (self->contacts, whole->phones, whole->addresses);
}

static void
theirs_cb (UnsootCustomerEdit *self)
{
  fill (self, g_steal_pointer (&self->theirs));
  unsoot_form_draft_settle (unsoot_form_dialog_get_draft (self->dialog));
  gtk_widget_set_visible (GTK_WIDGET (self->conflict), FALSE);
}

static void
unsoot_customer_edit_dispose (GObject *object)
{
  UnsootCustomerEdit *self = UNSOOT_CUSTOMER_EDIT (object);

  unsoot_store_slot_clear (&self->load_slot);
  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->row, unsoot_customer_row_free);
  g_clear_pointer (&self->loaded, whole_free);
  g_clear_pointer (&self->theirs, whole_free);
  G_OBJECT_CLASS (unsoot_customer_edit_parent_class)->dispose (object);
}

static void
unsoot_customer_edit_class_init (UnsootCustomerEditClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_customer_edit_dispose;
}

static void
unsoot_customer_edit_init (UnsootCustomerEdit *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->conflict = UNSOOT_CONFLICT_BOX (unsoot_conflict_box_new ());
  g_signal_connect_swapped (self->conflict, "mine", G_CALLBACK (mine_cb), self);
  g_signal_connect_swapped (self->conflict, "theirs", G_CALLBACK (theirs_cb), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->conflict));
}

static void
begin_draft (UnsootCustomerEdit *self)
{
  UnsootFormDraft *draft = unsoot_form_dialog_get_draft (self->dialog);

  unsoot_customer_fields_watch (self->fields, draft);
  unsoot_contact_rows_watch (self->contacts, draft);
  unsoot_form_draft_begin (draft, self->session, "customer", self->row->id);
}

static void
loaded_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootCustomerEdit *self = owner;

  if (error != NULL)
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  fill (self, result);
  begin_draft (self);
}

static void
begin_new (UnsootCustomerEdit *self)
{
  g_autoptr (UnsootBookingPlan) plan = unsoot_booking_plan_new ();

  unsoot_booking_plan_new_customer (plan, NULL);
  self->row = g_steal_pointer (&plan->customer);
  unsoot_customer_fields_set (self->fields, self->row, NULL);
  begin_draft (self);
}

void
unsoot_customer_edit_open (GtkWidget *over, UnsootSession *session, gint64 customer_id)
{
  UnsootCustomerEdit *self = g_object_new (UNSOOT_TYPE_CUSTOMER_EDIT, NULL);

  self->session = g_object_ref (session);
  self->fields = UNSOOT_CUSTOMER_FIELDS (unsoot_customer_fields_new (session, TRUE));
  self->contacts = UNSOOT_CONTACT_ROWS (unsoot_contact_rows_new ());
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->fields));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->contacts));
  self->dialog
      = unsoot_form_dialog_new (over, customer_id != 0 ? _ ("The customer") : _ ("New customer"),
                                _ ("Save"), GTK_WIDGET (self));
  g_signal_connect_object (self->dialog, "apply", G_CALLBACK (apply_cb), self, G_CONNECT_SWAPPED);
  if (customer_id != 0)
    unsoot_store_slot_call (&self->load_slot, unsoot_session_get_store (session), load,
                            g_memdup2 (&customer_id, sizeof customer_id), g_free, whole_free,
                            loaded_cb, self);
  else
    begin_new (self);
  gtk_window_present (GTK_WINDOW (self->dialog));
  unsoot_customer_fields_focus (self->fields);
}
