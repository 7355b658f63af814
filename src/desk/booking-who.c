/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-who.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "customer-fields.h"
#include "customer-words.h"
#include "entry-form.h"
#include "party-box.h"

struct _UnsootBookingWho
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *party;
  GtkWidget *known;
  GtkWidget *name, *detail, *rule;
  GtkWidget *fresh;
  GtkWidget *fields;
  GtkWidget *other;
};

enum
{
  CUSTOMER,
  VEHICLE,
  SOMEBODY_NEW,
  FORGET,
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingWho, unsoot_booking_who, GTK_TYPE_BOX)

static void
customer_cb (UnsootPartyBox *party, gint64 id, UnsootBookingWho *self)
{
  g_signal_emit (self, signals[CUSTOMER], 0, id);
}

static void
vehicle_cb (UnsootPartyBox *party, gint64 id, UnsootBookingWho *self)
{
  g_signal_emit (self, signals[VEHICLE], 0, id);
}

static void
new_cb (UnsootPartyBox *party, const char *typed, UnsootBookingWho *self)
{
  g_signal_emit (self, signals[SOMEBODY_NEW], 0, typed);
}

static void
forget_cb (UnsootBookingWho *self)
{
  g_signal_emit (self, signals[FORGET], 0);
}

static void
edited_cb (UnsootBookingWho *self)
{
  g_signal_emit (self, signals[EDITED], 0);
}

static guint
signal_new (GType type, const char *name, GType argument)
{
  return g_signal_new (name, type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       argument != G_TYPE_NONE ? 1 : 0, argument);
}

static void
unsoot_booking_who_class_init (UnsootBookingWhoClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[CUSTOMER] = signal_new (type, "customer", G_TYPE_INT64);
  signals[VEHICLE] = signal_new (type, "vehicle", G_TYPE_INT64);
  signals[SOMEBODY_NEW] = signal_new (type, "somebody-new", G_TYPE_STRING);
  signals[FORGET] = signal_new (type, "forget", G_TYPE_NONE);
  signals[EDITED] = signal_new (type, "edited", G_TYPE_NONE);
}

static void
unsoot_booking_who_init (UnsootBookingWho *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
}

static GtkWidget *
label_new (const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
other_button_new (UnsootBookingWho *self)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Someone else"));

  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  unsoot_access_name (button, _ ("Someone else"));
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (forget_cb), self);
  return button;
}

static void
build_known (UnsootBookingWho *self)
{
  GtkWidget *texts = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  self->known = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->name = label_new ("heading");
  self->detail = label_new ("dim-label");
  self->rule = label_new ("caption");
  gtk_widget_set_hexpand (texts, TRUE);
  gtk_box_append (GTK_BOX (texts), self->name);
  gtk_box_append (GTK_BOX (texts), self->detail);
  gtk_box_append (GTK_BOX (texts), self->rule);
  gtk_box_append (GTK_BOX (self->known), texts);
  self->other = other_button_new (self);
  gtk_box_append (GTK_BOX (self->known), self->other);
  gtk_box_append (GTK_BOX (self), self->known);
}

GtkWidget *
unsoot_booking_who_new (UnsootSession *session)
{
  UnsootBookingWho *self = g_object_new (UNSOOT_TYPE_BOOKING_WHO, NULL);

  self->party = unsoot_party_box_new (session);
  g_signal_connect (self->party, "customer", G_CALLBACK (customer_cb), self);
  g_signal_connect (self->party, "vehicle", G_CALLBACK (vehicle_cb), self);
  g_signal_connect (self->party, "somebody-new", G_CALLBACK (new_cb), self);
  gtk_box_append (GTK_BOX (self), self->party);
  build_known (self);
  self->fresh = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  self->fields = unsoot_customer_fields_new (session, FALSE);
  g_signal_connect_swapped (self->fields, "edited", G_CALLBACK (edited_cb), self);
  gtk_box_append (GTK_BOX (self->fresh), self->fields);
  GtkWidget *other = other_button_new (self);
  gtk_widget_set_halign (other, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self->fresh), other);
  gtk_box_append (GTK_BOX (self), self->fresh);
  return GTK_WIDGET (self);
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
  gtk_label_set_text (GTK_LABEL (self->name), customer->name);
  gtk_label_set_text (GTK_LABEL (self->detail), detail->str);
  gtk_label_set_text (GTK_LABEL (self->rule),
                      customer->po_required ? _ ("Needs a purchase-order number.") : "");
  gtk_widget_set_visible (self->rule, customer->po_required);
}

void
unsoot_booking_who_show (UnsootBookingWho *self, const UnsootBookingFile *file)
{
  const gboolean fresh = file->plan->customer != NULL;

  gtk_widget_set_visible (self->party, file->customer == NULL && !fresh);
  gtk_widget_set_visible (self->known, file->customer != NULL);
  gtk_widget_set_visible (self->other, file->job == NULL);
  if (file->customer != NULL)
    show_known (self, file);
  if (fresh && !gtk_widget_get_visible (self->fresh))
    unsoot_customer_fields_set (UNSOOT_CUSTOMER_FIELDS (self->fields), file->plan->customer,
                                file->plan->phone);
  gtk_widget_set_visible (self->fresh, fresh);
}

void
unsoot_booking_who_read (UnsootBookingWho *self, UnsootBookingPlan *plan)
{
  if (plan->customer != NULL)
    unsoot_customer_fields_read (UNSOOT_CUSTOMER_FIELDS (self->fields), plan->customer,
                                 &plan->phone, NULL);
}

void
unsoot_booking_who_focus (UnsootBookingWho *self)
{
  if (gtk_widget_get_visible (self->fresh))
    unsoot_customer_fields_focus (UNSOOT_CUSTOMER_FIELDS (self->fields));
  else
    unsoot_party_box_focus (UNSOOT_PARTY_BOX (self->party));
}
