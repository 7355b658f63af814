/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "customer-fields.h"

#include <glib/gi18n-lib.h>

#include "contact.h"
#include "entry-form.h"
#include "money.h"
#include "unit-text.h"

static const char *const kinds[] = { "person", "business", "fleet" };

struct _UnsootCustomerFields
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *kind, *name, *contact, *phone, *email, *email_note;
  GtkWidget *terms, *po_required, *po_limit;
  GtkWidget *exempt, *exempt_reason, *exempt_number;
  GtkWidget *reminders, *note;

  /* owned */
  UnsootSession *session;

  gboolean whole;
  gboolean setting;
};

enum
{
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootCustomerFields, unsoot_customer_fields, GTK_TYPE_BOX)

static void
edited (UnsootCustomerFields *self)
{
  if (!self->setting)
    g_signal_emit (self, signals[EDITED], 0);
}

/* Phone and email are looked at where they are typed. */
static void
reach_cb (GtkEditable *editable, UnsootCustomerFields *self)
{
  g_autofree char *phone = self->phone != NULL ? unsoot_form_dup_text (self->phone) : NULL;
  g_autofree char *email = unsoot_form_dup_text (self->email);
  g_autoptr (GError) error = NULL;

  if ((phone != NULL && !unsoot_phone_check (phone, &error))
      || (email != NULL && !unsoot_email_check (email, &error)))
    unsoot_form_say (self->email_note, error->message, TRUE);
  else
    unsoot_form_say (self->email_note, NULL, FALSE);
  edited (self);
}

static void
follow (UnsootCustomerFields *self)
{
  gtk_widget_set_visible (
      self->po_limit,
      self->whole && gtk_check_button_get_active (GTK_CHECK_BUTTON (self->po_required)));
  gtk_widget_set_visible (self->exempt_reason,
                          self->whole
                              && gtk_check_button_get_active (GTK_CHECK_BUTTON (self->exempt)));
  gtk_widget_set_visible (self->exempt_number, gtk_widget_get_visible (self->exempt_reason));
}

static void
toggled_cb (GtkCheckButton *check, UnsootCustomerFields *self)
{
  follow (self);
  edited (self);
}

static void
unsoot_customer_fields_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_CUSTOMER_FIELDS (object)->session);
  G_OBJECT_CLASS (unsoot_customer_fields_parent_class)->dispose (object);
}

static void
unsoot_customer_fields_class_init (UnsootCustomerFieldsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_customer_fields_dispose;
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_customer_fields_init (UnsootCustomerFields *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
}

static GtkWidget *
add_entry (UnsootCustomerFields *self, UnsootForm *form, const char *label, int columns)
{
  GtkWidget *entry = unsoot_form_entry (form, label, columns);

  g_signal_connect_swapped (entry, "changed", G_CALLBACK (edited), self);
  return entry;
}

static GtkWidget *
add_check (UnsootCustomerFields *self, UnsootForm *form, const char *label)
{
  GtkWidget *check = unsoot_form_check (form, label, 2);

  g_signal_connect (check, "toggled", G_CALLBACK (toggled_cb), self);
  gtk_widget_set_visible (check, self->whole);
  return check;
}

static void
build_who (UnsootCustomerFields *self, UnsootForm *form)
{
  const char *const words[] = { _ ("Person"), _ ("Business"), _ ("Fleet"), NULL };

  self->name = add_entry (self, form, _ ("Name"), 2);
  self->kind = unsoot_form_choice (form, _ ("Kind"), 1);
  unsoot_form_set_words (self->kind, words);
  unsoot_form_name (self->kind, _ ("Kind"));
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (edited), self);
  self->contact = add_entry (self, form, _ ("Whom to ask for"), 1);
  if (!self->whole)
    {
      self->phone = unsoot_form_entry (form, _ ("Phone"), 1);
      g_signal_connect (self->phone, "changed", G_CALLBACK (reach_cb), self);
    }
  self->email = unsoot_form_entry (form, _ ("Email"), self->whole ? 2 : 1);
  g_signal_connect (self->email, "changed", G_CALLBACK (reach_cb), self);
  self->email_note = unsoot_form_note (form);
}

static void
build_terms (UnsootCustomerFields *self, UnsootForm *form)
{
  self->reminders = add_check (self, form, _ ("Agreed to be reminded of the next service"));
  self->po_required = add_check (self, form, _ ("Needs a purchase-order number"));
  self->po_limit = add_entry (self, form, _ ("The most one order covers"), 2);
  self->exempt = add_check (self, form, _ ("Is not taxed"));
  self->exempt_reason = add_entry (self, form, _ ("Why, as the invoice says it"), 1);
  self->exempt_number = add_entry (self, form, _ ("Number of the exemption"), 1);
  self->terms = add_entry (self, form, _ ("Days to pay (0: at once)"), 1);
  self->note = add_entry (self, form, _ ("Note"), 2);
  gtk_widget_set_visible (self->terms, self->whole);
  gtk_widget_set_visible (self->note, self->whole);
}

GtkWidget *
unsoot_customer_fields_new (UnsootSession *session, gboolean whole)
{
  UnsootCustomerFields *self = g_object_new (UNSOOT_TYPE_CUSTOMER_FIELDS, NULL);
  GtkWidget *form = unsoot_form_new ();

  self->session = g_object_ref (session);
  self->whole = whole;
  build_who (self, UNSOOT_FORM (form));
  build_terms (self, UNSOOT_FORM (form));
  follow (self);
  gtk_box_append (GTK_BOX (self), form);
  return GTK_WIDGET (self);
}

void
unsoot_customer_fields_set (UnsootCustomerFields *self, const UnsootCustomerRow *customer,
                            const char *phone)
{
  const char *currency = unsoot_session_get_shop (self->session)->currency;
  g_autofree char *terms = g_strdup_printf ("%d", (int) customer->terms_days);
  g_autofree char *limit = customer->po_limit_minor > 0
                               ? unsoot_money_plain (customer->po_limit_minor, currency)
                               : NULL;

  self->setting = TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (customer->kind, kinds[i]) == 0)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->kind), i);
  unsoot_form_set_text (self->name, customer->name);
  unsoot_form_set_text (self->contact, customer->contact);
  if (self->phone != NULL)
    unsoot_form_set_text (self->phone, phone);
  unsoot_form_set_text (self->email, customer->email);
  unsoot_form_set_text (self->terms, terms);
  unsoot_form_set_text (self->po_limit, limit);
  unsoot_form_set_text (self->exempt_reason, customer->tax_exempt_reason);
  unsoot_form_set_text (self->exempt_number, customer->tax_exempt_number);
  unsoot_form_set_text (self->note, customer->note);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->po_required), customer->po_required);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->exempt), customer->tax_exempt);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->reminders), customer->reminders_ok);
  follow (self);
  self->setting = FALSE;
}

static void
read_text (GtkWidget *entry, char **text)
{
  g_free (*text);
  *text = unsoot_form_dup_text (entry);
}

static gboolean
read_terms (UnsootCustomerFields *self, UnsootCustomerRow *customer, GError **error)
{
  g_autofree char *terms = unsoot_form_dup_text (self->terms);
  g_autofree char *limit = unsoot_form_dup_text (self->po_limit);
  double days = 0;

  customer->po_required = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->po_required));
  customer->tax_exempt = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->exempt));
  customer->reminders_ok = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->reminders));
  read_text (self->exempt_reason, &customer->tax_exempt_reason);
  read_text (self->exempt_number, &customer->tax_exempt_number);
  read_text (self->note, &customer->note);
  if (terms != NULL && !unsoot_number_parse (terms, &days, error))
    return FALSE;
  customer->terms_days = (gint64) days;
  customer->po_limit_minor = 0;
  return limit == NULL || !customer->po_required
         || unsoot_session_parse_money (self->session, limit, &customer->po_limit_minor, error);
}

gboolean
unsoot_customer_fields_read (UnsootCustomerFields *self, UnsootCustomerRow *customer, char **phone,
                             GError **error)
{
  const guint kind = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind));

  g_free (customer->kind);
  customer->kind = g_strdup (kinds[MIN (kind, G_N_ELEMENTS (kinds) - 1)]);
  read_text (self->name, &customer->name);
  read_text (self->contact, &customer->contact);
  read_text (self->email, &customer->email);
  if (phone != NULL && self->phone != NULL)
    read_text (self->phone, phone);
  return !self->whole || read_terms (self, customer, error);
}

void
unsoot_customer_fields_watch (UnsootCustomerFields *self, UnsootFormDraft *draft)
{
  unsoot_form_draft_watch (draft, "name", _ ("Name"), self->name);
  unsoot_form_draft_watch (draft, "kind", _ ("Kind"), self->kind);
  unsoot_form_draft_watch (draft, "contact", _ ("Whom to ask for"), self->contact);
  unsoot_form_draft_watch (draft, "email", _ ("Email"), self->email);
  unsoot_form_draft_watch (draft, "reminders", _ ("Agreed to be reminded of the next service"),
                           self->reminders);
  unsoot_form_draft_watch (draft, "po-required", _ ("Needs a purchase-order number"),
                           self->po_required);
  unsoot_form_draft_watch (draft, "po-limit", _ ("The most one order covers"), self->po_limit);
  unsoot_form_draft_watch (draft, "exempt", _ ("Is not taxed"), self->exempt);
  unsoot_form_draft_watch (draft, "exempt-reason", _ ("Why, as the invoice says it"),
                           self->exempt_reason);
  unsoot_form_draft_watch (draft, "exempt-number", _ ("Number of the exemption"),
                           self->exempt_number);
  unsoot_form_draft_watch (draft, "terms", _ ("Days to pay"), self->terms);
  unsoot_form_draft_watch (draft, "note", _ ("Note"), self->note);
}

void
unsoot_customer_fields_focus (UnsootCustomerFields *self)
{
  g_autofree char *name = unsoot_form_dup_text (self->name);

  gtk_widget_grab_focus (name == NULL || self->phone == NULL ? self->name : self->phone);
}
