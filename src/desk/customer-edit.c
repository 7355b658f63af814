/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-edit.h"

#include <glib/gi18n-lib.h>

#include "booking-plan.h"
#include "conflict-box.h"
#include "contact-rows.h"
#include "customer-fields.h"
#include "customers.h"
#include "form-dialog.h"
#include "store-call.h"

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
  UnsootCustomerRow *theirs;
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

/* A customer with how they are reached. */
typedef struct
{
  UnsootActing who;
  UnsootCustomerRow *row;
  GPtrArray *phones;
  GPtrArray *addresses;
  gboolean conflict;
} Whole;

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

static void
saved_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootCustomerEdit *self = owner;
  Whole *answer = result;

  unsoot_form_dialog_say (self->dialog, error != NULL ? error->message : NULL);
  if (answer == NULL)
    return;
  if (!answer->conflict)
    unsoot_form_dialog_done (self->dialog, _ ("The customer is saved"));
  else
    {
      g_clear_pointer (&self->theirs, unsoot_customer_row_free);
      self->theirs = g_steal_pointer (&answer->row);
      /* Of a phone that was changed elsewhere there is nothing to compare but itself. */
      if (!unsoot_conflict_box_show (self->conflict, &unsoot_customer_row_type, self->row,
                                     self->theirs, labels))
        unsoot_form_dialog_say (self->dialog,
                                _ ("Someone changed a phone or an address meanwhile. Close this "
                                   "and open it again; what you typed is still here to copy."));
    }
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

/* What was typed stands over their version, which the log of changes keeps. */
static void
mine_cb (UnsootCustomerEdit *self)
{
  self->row->version = self->theirs->version;
  gtk_widget_set_visible (GTK_WIDGET (self->conflict), FALSE);
  apply_cb (self);
}

static void
theirs_cb (UnsootCustomerEdit *self)
{
  unsoot_customer_row_free (self->row);
  self->row = g_steal_pointer (&self->theirs);
  unsoot_customer_fields_set (self->fields, self->row, NULL);
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
  g_clear_pointer (&self->theirs, unsoot_customer_row_free);
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
loaded_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootCustomerEdit *self = owner;
  Whole *whole = result;

  if (error != NULL)
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  self->row = g_steal_pointer (&whole->row);
  unsoot_customer_fields_set (self->fields, self->row, NULL);
  unsoot_contact_rows_set (self->contacts, whole->phones, whole->addresses);
  whole_free (whole);
}

static void
begin_new (UnsootCustomerEdit *self)
{
  g_autoptr (UnsootBookingPlan) plan = unsoot_booking_plan_new ();

  unsoot_booking_plan_new_customer (plan, NULL);
  self->row = g_steal_pointer (&plan->customer);
  unsoot_customer_fields_set (self->fields, self->row, NULL);
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
