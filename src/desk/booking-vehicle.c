/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "booking-vehicle.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "entry-form.h"
#include "vehicle-fields.h"
#include "vehicles.h"

enum
{
  MOST_IN_SIGHT = 3, /* beyond this only the chosen one is shown */
  MOST_WITHOUT_SCROLLING = 6,
  ROW_HEIGHT = 32
};

struct _UnsootBookingVehicle
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *hint;
  GtkWidget *chosen;
  GtkWidget *chosen_title;
  GtkWidget *scroller;
  GtkWidget *choices;
  GtkWidget *another;
  GtkWidget *fields;

  gboolean filling;
  gboolean unfolded; /* all are wanted to choose from */
};

enum
{
  VEHICLE,
  NEW_VEHICLE,
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBookingVehicle, unsoot_booking_vehicle, GTK_TYPE_BOX)

static void
choice_cb (GtkCheckButton *choice, UnsootBookingVehicle *self)
{
  const gint64 *id = g_object_get_data (G_OBJECT (choice), "id");

  if (self->filling || !gtk_check_button_get_active (choice))
    return;
  self->unfolded = FALSE;
  g_signal_emit (self, signals[VEHICLE], 0, *id);
}

static void
another_cb (UnsootBookingVehicle *self)
{
  g_signal_emit (self, signals[NEW_VEHICLE], 0);
}

static void
unfold_cb (UnsootBookingVehicle *self)
{
  self->unfolded = TRUE;
  gtk_widget_set_visible (self->chosen, FALSE);
  gtk_widget_set_visible (self->scroller, TRUE);
  gtk_widget_child_focus (self->choices, GTK_DIR_TAB_FORWARD);
}

static void
edited_cb (UnsootBookingVehicle *self)
{
  g_signal_emit (self, signals[EDITED], 0);
}

static void
unsoot_booking_vehicle_class_init (UnsootBookingVehicleClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  signals[VEHICLE] = g_signal_new ("vehicle", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[NEW_VEHICLE]
      = g_signal_new ("new-vehicle", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[EDITED]
      = g_signal_new ("edited", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_booking_vehicle_init (UnsootBookingVehicle *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
}

static void
build_chosen (UnsootBookingVehicle *self)
{
  GtkWidget *other = gtk_button_new_with_label (_ ("Another of theirs"));

  self->chosen = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  self->chosen_title = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->chosen_title), 0);
  gtk_label_set_wrap (GTK_LABEL (self->chosen_title), TRUE);
  gtk_widget_set_hexpand (self->chosen_title, TRUE);
  gtk_widget_add_css_class (self->chosen_title, "heading");
  gtk_widget_add_css_class (other, "flat");
  unsoot_access_name (other, _ ("Another of theirs"));
  g_signal_connect_swapped (other, "clicked", G_CALLBACK (unfold_cb), self);
  gtk_box_append (GTK_BOX (self->chosen), self->chosen_title);
  gtk_box_append (GTK_BOX (self->chosen), other);
  gtk_box_append (GTK_BOX (self), self->chosen);
}

GtkWidget *
unsoot_booking_vehicle_new (UnsootSession *session)
{
  UnsootBookingVehicle *self = g_object_new (UNSOOT_TYPE_BOOKING_VEHICLE, NULL);

  self->hint = gtk_label_new (_ ("Say first who is calling."));
  gtk_label_set_xalign (GTK_LABEL (self->hint), 0);
  gtk_widget_add_css_class (self->hint, "dim-label");
  self->choices = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  self->scroller = gtk_scrolled_window_new ();
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (self->scroller), GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (self->scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (self->scroller),
                                              MOST_WITHOUT_SCROLLING * ROW_HEIGHT);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->scroller), self->choices);
  self->another = gtk_button_new_with_label (_ ("New vehicle"));
  gtk_widget_set_halign (self->another, GTK_ALIGN_START);
  unsoot_access_name (self->another, _ ("New vehicle"));
  g_signal_connect_swapped (self->another, "clicked", G_CALLBACK (another_cb), self);
  self->fields = unsoot_vehicle_fields_new (session, FALSE);
  gtk_widget_set_visible (self->fields, FALSE);
  g_signal_connect_swapped (self->fields, "edited", G_CALLBACK (edited_cb), self);
  gtk_box_append (GTK_BOX (self), self->hint);
  build_chosen (self);
  gtk_box_append (GTK_BOX (self), self->scroller);
  gtk_box_append (GTK_BOX (self), self->fields);
  gtk_box_append (GTK_BOX (self), self->another);
  return GTK_WIDGET (self);
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
  if (fresh && !gtk_widget_get_visible (self->fields))
    unsoot_vehicle_fields_set (UNSOOT_VEHICLE_FIELDS (self->fields), file->plan->vehicle);
  gtk_widget_set_visible (self->fields, fresh);
  if (folds (self, file))
    {
      g_autofree char *title = unsoot_vehicle_title (file->vehicle);
      gtk_label_set_text (GTK_LABEL (self->chosen_title), title);
    }
  gtk_widget_set_visible (self->chosen, folds (self, file));
  gtk_widget_set_visible (gtk_widget_get_last_child (self->chosen), file->job == NULL);
  gtk_widget_set_visible (self->scroller,
                          !folds (self, file) && file->vehicles != NULL && file->vehicles->len > 0);
  gtk_widget_set_visible (self->hint, !somebody && !fresh);
  gtk_widget_set_visible (self->another, !fresh && file->job == NULL);
  self->filling = FALSE;
}

void
unsoot_booking_vehicle_read (UnsootBookingVehicle *self, UnsootBookingPlan *plan)
{
  if (plan->vehicle != NULL)
    unsoot_vehicle_fields_read (UNSOOT_VEHICLE_FIELDS (self->fields), plan->vehicle, NULL);
}

void
unsoot_booking_vehicle_focus (UnsootBookingVehicle *self)
{
  if (gtk_widget_get_visible (self->fields))
    gtk_widget_child_focus (self->fields, GTK_DIR_TAB_FORWARD);
  else if (gtk_widget_get_visible (self->scroller))
    gtk_widget_child_focus (self->choices, GTK_DIR_TAB_FORWARD);
  else
    gtk_widget_grab_focus (self->another);
}
