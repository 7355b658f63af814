/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-vehicle.h"

#include <adwaita.h>

#include "booking-past.h"
#include "entry-form.h"
#include "vehicle-fields.h"
#include "vehicles.h"

enum
{
  MOST_IN_SIGHT = 3 /* beyond this only the chosen one is shown */
};

struct _UnsootBookingVehicle
{
  GtkBox parent_instance;

  /* template */
  GtkLabel *hint;
  GtkBox *chosen;
  GtkLabel *chosen_title;
  GtkButton *other;
  GtkWidget *scroller;
  GtkWidget *choices;
  AdwBin *past;
  AdwBin *fresh;
  GtkButton *another;

  /* borrowed child */
  GtkWidget *fields;

  /* owned */
  UnsootBookingTalk *talk;

  gboolean filling;
  gboolean unfolded; /* all are wanted to choose from */
};

G_DEFINE_FINAL_TYPE (UnsootBookingVehicle, unsoot_booking_vehicle, GTK_TYPE_BOX)

static void
choice_cb (GtkCheckButton *choice, UnsootBookingVehicle *self)
{
  const gint64 *id = g_object_get_data (G_OBJECT (choice), "id");

  if (self->filling || !gtk_check_button_get_active (choice))
    return;
  self->unfolded = FALSE;
  unsoot_booking_plan_change_vehicle (unsoot_booking_talk_get_plan (self->talk), *id);
  unsoot_booking_talk_changed (self->talk);
}

static void
another_cb (UnsootBookingVehicle *self)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);
  const UnsootBookingFile *file = unsoot_booking_talk_get_file (self->talk);

  unsoot_booking_plan_new_vehicle (plan, NULL);
  plan->customer_id = file != NULL ? file->plan->customer_id : 0;
  unsoot_booking_talk_go_on (self->talk);
}

static void
unfold_cb (UnsootBookingVehicle *self)
{
  self->unfolded = TRUE;
  gtk_widget_set_visible (GTK_WIDGET (self->chosen), FALSE);
  gtk_widget_set_visible (self->scroller, TRUE);
  gtk_widget_child_focus (self->choices, GTK_DIR_TAB_FORWARD);
}

static void
edited_cb (UnsootBookingVehicle *self)
{
  UnsootBookingPlan *plan = unsoot_booking_talk_get_plan (self->talk);

  if (plan == NULL || plan->vehicle == NULL)
    return;
  unsoot_vehicle_fields_read (UNSOOT_VEHICLE_FIELDS (self->fields), plan->vehicle, NULL);
  unsoot_booking_talk_changing (self->talk);
}

static void
unsoot_booking_vehicle_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_BOOKING_VEHICLE (object)->talk);
  G_OBJECT_CLASS (unsoot_booking_vehicle_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_BOOKING_VEHICLE);
}

static void
unsoot_booking_vehicle_class_init (UnsootBookingVehicleClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_booking_vehicle_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/booking-vehicle.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, hint);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, chosen);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, chosen_title);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, other);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, scroller);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, choices);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, past);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, fresh);
  gtk_widget_class_bind_template_child (widget_class, UnsootBookingVehicle, another);
  gtk_widget_class_bind_template_callback (widget_class, another_cb);
  gtk_widget_class_bind_template_callback (widget_class, unfold_cb);
}

static void
unsoot_booking_vehicle_init (UnsootBookingVehicle *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_booking_vehicle_begin (UnsootBookingVehicle *self, UnsootBookingTalk *talk)
{
  self->talk = g_object_ref (talk);
  self->fields = unsoot_vehicle_fields_new (unsoot_booking_talk_get_session (talk), FALSE);
  g_signal_connect_swapped (self->fields, "edited", G_CALLBACK (edited_cb), self);
  adw_bin_set_child (self->fresh, self->fields);
}

static GtkWidget *
choice_new (UnsootBookingVehicle *self, const UnsootVehicleRow *vehicle)
{
  g_autofree char *title = unsoot_vehicle_title (vehicle);
  GtkWidget *choice = gtk_check_button_new_with_label (title);

  g_object_set_data_full (G_OBJECT (choice), "id", g_memdup2 (&vehicle->id, sizeof vehicle->id),
                          g_free);
  unsoot_form_name (choice, title);
  g_signal_connect (choice, "toggled", G_CALLBACK (choice_cb), self);
  return choice;
}

static gboolean
is_listed (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  GtkWidget *choice = gtk_widget_get_first_child (self->choices);
  guint i = 0;

  for (; choice != NULL && i < file->vehicles->len; choice = gtk_widget_get_next_sibling (choice))
    {
      const gint64 *id = g_object_get_data (G_OBJECT (choice), "id");
      if (((const UnsootVehicleRow *) g_ptr_array_index (file->vehicles, i++))->id != *id)
        return FALSE;
    }
  return choice == NULL && i == file->vehicles->len;
}

/* Made anew only where they are others, so that the keyboard's place is kept. */
static void
list_vehicles (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  GtkCheckButton *group = NULL;
  GtkWidget *choice;

  if (is_listed (self, file))
    return;
  while ((choice = gtk_widget_get_first_child (self->choices)) != NULL)
    gtk_box_remove (GTK_BOX (self->choices), choice);
  for (guint i = 0; i < file->vehicles->len; i++)
    {
      choice = choice_new (self, g_ptr_array_index (file->vehicles, i));
      if (group == NULL)
        group = GTK_CHECK_BUTTON (choice);
      else
        gtk_check_button_set_group (GTK_CHECK_BUTTON (choice), group);
      gtk_box_append (GTK_BOX (self->choices), choice);
    }
}

static void
mark_chosen (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  for (GtkWidget *choice = gtk_widget_get_first_child (self->choices); choice != NULL;
       choice = gtk_widget_get_next_sibling (choice))
    {
      const gint64 *id = g_object_get_data (G_OBJECT (choice), "id");
      gtk_check_button_set_active (GTK_CHECK_BUTTON (choice), *id == file->plan->vehicle_id);
    }
}

/* Whether the chosen one alone is shown. */
static gboolean
folds (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  return file->plan->vehicle == NULL && file->vehicle != NULL
         && (file->job != NULL || (!self->unfolded && file->vehicles->len > MOST_IN_SIGHT));
}

static void
show_chosen (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  const gboolean folded = folds (self, file);

  if (folded)
    {
      g_autofree char *title = unsoot_vehicle_title (file->vehicle);
      gtk_label_set_text (self->chosen_title, title);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->chosen), folded);
  gtk_widget_set_visible (GTK_WIDGET (self->other), file->job == NULL);
  gtk_widget_set_visible (self->scroller,
                          !folded && file->vehicles != NULL && file->vehicles->len > 0);
}

static void
show_past (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  GtkWidget *past = unsoot_booking_past_new (file, unsoot_booking_talk_get_session (self->talk));

  adw_bin_set_child (self->past, past);
  gtk_widget_set_visible (GTK_WIDGET (self->past), past != NULL);
}

void
unsoot_booking_vehicle_show (UnsootBookingVehicle *self, const UnsootBookingFile *file)
{
  const gboolean fresh = file->plan->vehicle != NULL;
  const gboolean somebody = file->customer != NULL || file->plan->customer != NULL;

  self->filling = TRUE;
  if (file->vehicles != NULL)
    {
      list_vehicles (self, file);
      mark_chosen (self, file);
    }
  unsoot_vehicle_fields_set_families (UNSOOT_VEHICLE_FIELDS (self->fields), file->families);
  if (fresh && !gtk_widget_get_visible (GTK_WIDGET (self->fresh)))
    unsoot_vehicle_fields_set (UNSOOT_VEHICLE_FIELDS (self->fields), file->plan->vehicle);
  gtk_widget_set_visible (GTK_WIDGET (self->fresh), fresh);
  show_chosen (self, file);
  show_past (self, file);
  gtk_widget_set_visible (GTK_WIDGET (self->hint), !somebody && !fresh);
  gtk_widget_set_visible (GTK_WIDGET (self->another), !fresh && file->job == NULL);
  self->filling = FALSE;
}

void
unsoot_booking_vehicle_focus (UnsootBookingVehicle *self)
{
  if (gtk_widget_get_visible (GTK_WIDGET (self->fresh)))
    gtk_widget_child_focus (self->fields, GTK_DIR_TAB_FORWARD);
  else if (gtk_widget_get_visible (self->scroller))
    gtk_widget_child_focus (self->choices, GTK_DIR_TAB_FORWARD);
  else
    gtk_widget_grab_focus (GTK_WIDGET (self->another));
}
