/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-who.h"

#include <glib/gi18n-lib.h>

#include "customer-fields.h"
#include "customer-words.h"
#include "party-box.h"

struct _UnsootBookingWho
{
  GtkBox parent_instance;

  /* template */
  GtkBox *known;
  GtkLabel *name;
  GtkLabel *detail;
  GtkLabel *rule;
  GtkButton *other;
  GtkBox *fresh;

  /* borrowed children */
  GtkWidget *party;
  GtkWidget *fields;

  /* owned */
  UnsootBookingTalk *talk;
};

G_DEFINE_FINAL_TYPE (UnsootBookingWho, unsoot_booking_who, GTK_TYPE_BOX)

static void
customer_cb (UnsootPartyBox *party, gint64 id, UnsootBookingWho *self)
{
  unsoot_booking_plan_take_customer (unsoot_booking_talk_get_plan (self->talk), id);
  unsoot_booking_talk_go_on (self->talk);
}

static void
vehicle_cb (UnsootPartyBox *party, gint64 id, UnsootBookingWho *self)
{
  unsoot_booking_plan_take_vehicle (unsoot_booking_talk_get_plan (self->talk), id);
  unsoot_booking_talk_go_on (self->talk);
}

static void
new_cb (UnsootPartyBox *party, const char *typed, UnsootBookingWho *self)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);

  unsoot_booking_plan_new_customer (plan, typed);
  if (plan->vehicle == NULL)
    unsoot_booking_plan_new_vehicle (plan, NULL);
  unsoot_booking_talk_go_on (self->talk);
}

static void
forget_cb (UnsootBookingWho *self)
{
  unsoot_booking_plan_forget_caller (unsoot_booking_talk_get_plan (self->talk));
  unsoot_booking_talk_go_on (self->talk);
}

static void
edited_cb (UnsootBookingWho *self)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);

  if (plan == NULL || plan->customer == NULL)
    return;
  unsoot_customer_fields_read (UNSOOT_CUSTOMER_FIELDS (self->fields), plan->customer, &plan->phone,
                               NULL);
  unsoot_booking_talk_changing (self->talk);
}

static void
unsoot_booking_who_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_BOOKING_WHO (object)->talk);
  G_OBJECT_CLASS (unsoot_booking_who_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_WHO);
}

static void
unsoot_booking_who_class_init (UnsootBookingWhoClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_who_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-who.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, known);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, name);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, detail);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, rule);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, other);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingWho, fresh);
  gtk_widget_class_bind_template_callback (widget_class, forget_cb);
}

static void
unsoot_booking_who_init (UnsootBookingWho *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_booking_who_begin (UnsootBookingWho *self, UnsootBookingTalk *talk)
{
  UnsootSession *session = unsoot_booking_talk_get_session (talk);

  self->talk = g_object_ref (talk);
  self->party = unsoot_party_box_new (session);
  g_signal_connect (self->party, "customer", G_CALLBACK (customer_cb), self);
  g_signal_connect (self->party, "vehicle", G_CALLBACK (vehicle_cb), self);
  g_signal_connect (self->party, "somebody-new", G_CALLBACK (new_cb), self);
  gtk_box_prepend (GTK_BOX (self), self->party);
  self->fields = unsoot_customer_fields_new (session, FALSE);
  g_signal_connect_swapped (self->fields, "edited", G_CALLBACK (edited_cb), self);
  gtk_box_prepend (self->fresh, self->fields);
}

static void
show_known (UnsootBookingWho *self, const UnsootBookingFile *file)
{
  const UnsootCustomerRow *customer = file->customer;
  g_autoptr (GString) detail = g_string_new (unsoot_customer_kind_words (customer->kind));

  if (customer->contact != NULL)
    /* Translators: whom to ask for, after the kind of customer */
    g_string_append_printf (detail, _ (" · ask for %s"), customer->contact);
  if (file->phone != NULL)
    g_string_append_printf (detail, " · %s", file->phone);
  gtk_label_set_text (self->name, customer->name);
  gtk_label_set_text (self->detail, detail->str);
}

/* What the customer's own rules ask of every job. */
static char *
rule_words (const UnsootCustomerRow *customer, UnsootSession *session)
{
  g_autofree char *limit = NULL;

  if (!customer->po_required)
    return NULL;
  if (customer->po_limit_minor == 0)
    return g_strdup (_ ("Needs a purchase-order number."));
  limit = unsoot_session_money (session, customer->po_limit_minor);
  /* Translators: an amount */
  return g_strdup_printf (_ ("Needs a purchase-order number; one order covers up to %s."), limit);
}

static void
show_rule (UnsootBookingWho *self, const UnsootCustomerRow *customer)
{
  g_autofree char *rule = rule_words (customer, unsoot_booking_talk_get_session (self->talk));

  gtk_label_set_text (self->rule, rule != NULL ? rule : "");
  gtk_widget_set_visible (GTK_WIDGET (self->rule), rule != NULL);
}

void
unsoot_booking_who_show (UnsootBookingWho *self, const UnsootBookingFile *file)
{
  const gboolean fresh = file->plan->customer != NULL;

  gtk_widget_set_visible (self->party, file->customer == NULL && !fresh);
  gtk_widget_set_visible (GTK_WIDGET (self->known), file->customer != NULL);
  gtk_widget_set_visible (GTK_WIDGET (self->other), file->job == NULL);
  if (file->customer != NULL)
    {
      show_known (self, file);
      show_rule (self, file->customer);
    }
  if (fresh && !gtk_widget_get_visible (GTK_WIDGET (self->fresh)))
    unsoot_customer_fields_set (UNSOOT_CUSTOMER_FIELDS (self->fields), file->plan->customer,
                                file->plan->phone);
  gtk_widget_set_visible (GTK_WIDGET (self->fresh), fresh);
}

void
unsoot_booking_who_focus (UnsootBookingWho *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self->fresh)))
    unsoot_customer_fields_focus (UNSOOT_CUSTOMER_FIELDS (self->fields));
  else
    unsoot_party_box_focus (UNSOOT_PARTY_BOX (self->party));
}
