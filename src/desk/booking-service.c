/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-service.h"

#include <glib/gi18n-lib.h>

#include "entry-form.h"
#include "format.h"
#include "unit-text.h"

struct _UnsootBookingService
{
  GtkBox parent_instance;

  /* template */
  UnsootForm *form;

  /* borrowed fields of the form */
  GtkWidget *services, *complaint, *order, *fuel_dose, *intake_dose, *note;

  /* owned */
  UnsootBookingTalk *talk;

  gboolean filling;
};

G_DEFINE_FINAL_TYPE (UnsootBookingService, unsoot_booking_service, GTK_TYPE_BOX)

/* NULL while nothing that a person does is to be heard. */
static UnsootBookingPlan *
plan_of (UnsootBookingService *self)
{
  return self->filling || self->talk == NULL ? NULL : unsoot_booking_talk_get_plan (self->talk);
}

static void
service_cb (UnsootBookingService *self)
{
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->services));
  UnsootBookingPlan *plan = plan_of (self);
  const UnsootBookingFile *file = plan != NULL ? unsoot_booking_talk_get_file (self->talk) : NULL;

  if (file == NULL || chosen >= file->services->len)
    return;
  plan->service_id = ((const UnsootServiceRow *) g_ptr_array_index (file->services, chosen))->id;
  unsoot_booking_talk_changed (self->talk);
}

static void
texts_cb (UnsootBookingService *self)
{
  UnsootBookingPlan *plan = plan_of (self);

  if (plan == NULL)
    return;
  g_free (plan->complaint);
  plan->complaint = unsoot_form_dup_text (self->complaint);
  g_free (plan->po_number);
  plan->po_number = unsoot_form_dup_text (self->order);
  unsoot_booking_talk_changing (self->talk);
}

static gboolean
read_dose (GtkWidget *entry, gint64 *ml, GError **error)
{
  g_autofree char *text = unsoot_form_dup_text (entry);
  UnsootTyped typed;

  *ml = 0;
  return text == NULL || unsoot_volume_parse (text, UNSOOT_UNIT_L, &typed, ml, error);
}

static void
dose_cb (UnsootBookingService *self)
{
  UnsootBookingPlan *plan = plan_of (self);
  g_autoptr (GError) error = NULL;

  if (plan == NULL)
    return;
  if (!read_dose (self->fuel_dose, &plan->fuel_ml, &error)
      || !read_dose (self->intake_dose, &plan->intake_ml, &error))
    unsoot_form_say (self->note, error->message, TRUE);
  else
    unsoot_form_say (self->note, NULL, FALSE);
  unsoot_booking_talk_changing (self->talk);
}

static void
unsoot_booking_service_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_BOOKING_SERVICE (object)->talk);
  G_OBJECT_CLASS (unsoot_booking_service_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_SERVICE);
}

static void
unsoot_booking_service_class_init (UnsootBookingServiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_service_dispose;
  g_type_ensure (UNSOOT_TYPE_FORM);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-service.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingService, form);
}

static GtkWidget *
add_entry (UnsootBookingService *self, const char *label, int columns, GCallback changed)
{
  GtkWidget *entry = unsoot_form_entry (self->form, label, columns);

  g_signal_connect_swapped (entry, "changed", changed, self);
  return entry;
}

static void
unsoot_booking_service_init (UnsootBookingService *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->services = unsoot_form_choice (self->form, _ ("Service"), 2);
  g_signal_connect_swapped (self->services, "notify::selected", G_CALLBACK (service_cb), self);
  self->complaint
      = add_entry (self, _ ("Complaint, in the customer's words"), 2, G_CALLBACK (texts_cb));
  self->order = add_entry (self, _ ("Purchase order"), 1, G_CALLBACK (texts_cb));
  self->fuel_dose = add_entry (self, _ ("Fuel side, other than the rule"), 1, G_CALLBACK (dose_cb));
  self->intake_dose
      = add_entry (self, _ ("Intake side, other than the rule"), 1, G_CALLBACK (dose_cb));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->fuel_dose), _ ("1.5 L"));
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->intake_dose), _ ("3 L"));
  self->note = unsoot_form_note (self->form);
}

void
unsoot_booking_service_begin (UnsootBookingService *self, UnsootBookingTalk *talk)
{
  self->talk = g_object_ref (talk);
}

static void
set_dose (GtkWidget *entry, gint64 ml)
{
  g_autofree char *text = ml > 0 ? unsoot_format_litres (ml) : NULL;

  unsoot_form_set_text (entry, text);
}

void
unsoot_booking_service_show_plan (UnsootBookingService *self, const UnsootBookingPlan *plan)
{
  self->filling = TRUE;
  unsoot_form_set_text (self->complaint, plan->complaint);
  unsoot_form_set_text (self->order, plan->po_number);
  set_dose (self->fuel_dose, plan->fuel_ml);
  set_dose (self->intake_dose, plan->intake_ml);
  self->filling = FALSE;
}

static const UnsootServiceRow *
chosen_service (const UnsootBookingFile *file)
{
  for (guint i = 0; i < file->services->len; i++)
    {
      const UnsootServiceRow *service = g_ptr_array_index (file->services, i);
      if (service->id == file->plan->service_id)
        return service;
    }
  return NULL;
}

static void
fill_services (UnsootBookingService *self, const UnsootBookingFile *file)
{
  GListModel *model = G_LIST_MODEL (gtk_drop_down_get_model (GTK_DROP_DOWN (self->services)));
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  if (g_list_model_get_n_items (model) != file->services->len)
    {
      for (guint i = 0; i < file->services->len; i++)
        g_ptr_array_add (words,
                         ((const UnsootServiceRow *) g_ptr_array_index (file->services, i))->name);
      g_ptr_array_add (words, NULL);
      unsoot_form_set_words (self->services, (const char *const *) words->pdata);
      unsoot_form_name (self->services, _ ("Service"));
    }
  for (guint i = 0; i < file->services->len; i++)
    if (g_ptr_array_index (file->services, i) == chosen_service (file))
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->services), i);
}

/* The lead technician enters a dose where no rule gives one. */
static gboolean
may_enter_dose (UnsootBookingService *self)
{
  UnsootRole role;

  return unsoot_session_get_role (unsoot_booking_talk_get_session (self->talk), &role)
         && unsoot_role_may (role, UNSOOT_DEED_ENTER_DOSE);
}

void
unsoot_booking_service_show (UnsootBookingService *self, const UnsootBookingFile *file)
{
  const UnsootServiceRow *service = chosen_service (file);
  const gboolean open = file->job == NULL, doses = open && may_enter_dose (self);
  const char *sides = service != NULL ? service->sides : "";

  self->filling = TRUE;
  fill_services (self, file);
  if (!open)
    unsoot_form_set_text (self->complaint, file->job->complaint);
  gtk_widget_set_sensitive (self->services, open);
  gtk_widget_set_sensitive (self->complaint, open);
  gtk_widget_set_visible (self->order,
                          open && file->customer != NULL && file->customer->po_required);
  gtk_widget_set_visible (self->fuel_dose, doses && !g_str_equal (sides, "intake"));
  gtk_widget_set_visible (self->intake_dose, doses && !g_str_equal (sides, "fuel"));
  self->filling = FALSE;
}
