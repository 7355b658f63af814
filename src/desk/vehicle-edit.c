/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-edit.h"

#include <glib/gi18n-lib.h>

#include "booking-plan.h"
#include "conflict-box.h"
#include "form-dialog.h"
#include "store-call.h"
#include "vehicle-fields.h"
#include "vehicles.h"

struct _UnsootVehicleEdit
{
  GtkBox parent_instance;

  /* borrowed children */
  UnsootVehicleFields *fields;
  UnsootConflictBox *conflict;

  /* owned */
  UnsootSession *session;
  UnsootVehicleRow *row;
  UnsootVehicleRow *theirs;
  UnsootStoreSlot load_slot;
  UnsootStoreSlot slot;

  UnsootFormDialog *dialog; /* borrowed: it owns these fields */
};

G_DEFINE_FINAL_TYPE (UnsootVehicleEdit, unsoot_vehicle_edit, GTK_TYPE_BOX)

static const UnsootFieldLabel labels[] = { { "vin", N_ ("VIN") },
                                           { "plate", N_ ("Plate") },
                                           { "plate_region", N_ ("Where the plate is from") },
                                           { "unit_number", N_ ("Unit number") },
                                           { "year", N_ ("Model year") },
                                           { "make", N_ ("Make") },
                                           { "model", N_ ("Model") },
                                           { "engine", N_ ("Engine") },
                                           { "engine_serial", N_ ("Engine serial") },
                                           { "gvwr_lb", N_ ("Rated weight in lb") },
                                           { "family_id", N_ ("Engine family") },
                                           { "has_egr", N_ ("Has an EGR") },
                                           { "has_dpf", N_ ("Has a particle filter") },
                                           { "emission_altered", N_ ("Parts are altered") },
                                           { "emission_note", N_ ("Altered parts") },
                                           { "note", N_ ("Note") },
                                           { NULL, NULL } };

/* What is saved, and what came of it. */
typedef struct
{
  UnsootActing who;
  UnsootVehicleRow *row;
  UnsootVehicleRow *theirs; /* where someone was quicker */
  char *warning;
} Saving;

static void
saving_free (gpointer data)
{
  Saving *saving = data;

  unsoot_vehicle_row_free (saving->row);
  unsoot_vehicle_row_free (saving->theirs);
  g_free (saving->warning);
  g_free (saving);
}

static gpointer
save (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Saving *asked = data;
  g_autoptr (GError) failed = NULL;
  Saving *saved = g_new0 (Saving, 1);

  if (unsoot_vehicle_save (db, &asked->who, asked->row, &saved->warning, &failed))
    return saved;
  if (g_error_matches (failed, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CONFLICT))
    saved->theirs = unsoot_vehicle_load (db, asked->row->id, error);
  else
    g_propagate_error (error, g_steal_pointer (&failed));
  if (saved->theirs != NULL)
    return saved;
  saving_free (saved);
  return NULL;
}

static char *
field_words (gpointer owner, const char *field, gconstpointer record)
{
  UnsootVehicleEdit *self = owner;
  const UnsootVehicleRow *vehicle = record;

  if (g_str_equal (field, "family_id"))
    return g_strdup (unsoot_vehicle_fields_family_name (self->fields, vehicle->family_id));
  return NULL;
}

static void mine_cb (UnsootVehicleEdit *self);

/* Takes @theirs. */
static void
show_conflict (UnsootVehicleEdit *self, UnsootVehicleRow *theirs)
{
  g_clear_pointer (&self->theirs, unsoot_vehicle_row_free);
  self->theirs = theirs;
  /* Where both wrote the same there is nothing to choose. */
  if (!unsoot_conflict_box_show (self->conflict, &unsoot_vehicle_row_type, self->row, theirs,
                                 labels, field_words, self))
    mine_cb (self);
}

static void
saved_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootVehicleEdit *self = owner;
  Saving *saved = result;

  if (error != NULL)
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  unsoot_form_dialog_say (self->dialog, NULL);
  if (saved->theirs == NULL)
    unsoot_form_dialog_done (self->dialog,
                             saved->warning != NULL ? saved->warning : _ ("The vehicle is saved"));
  else
    show_conflict (self, g_steal_pointer (&saved->theirs));
  saving_free (saved);
}

static void
apply_cb (UnsootVehicleEdit *self)
{
  g_autoptr (GError) error = NULL;
  Saving *saving;

  if (self->row == NULL)
    return;
  if (!unsoot_vehicle_fields_read (self->fields, self->row, &error))
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  saving = g_new0 (Saving, 1);
  saving->who = unsoot_session_acting (self->session);
  saving->row = unsoot_record_copy (&unsoot_vehicle_row_type, self->row);
  unsoot_form_dialog_set_busy (self->dialog, TRUE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), save, saving,
                          saving_free, saving_free, saved_cb, self);
}

/* What was typed stands over their version, which the log of changes keeps. */
static void
mine_cb (UnsootVehicleEdit *self)
{
  self->row->version = self->theirs->version;
  gtk_widget_set_visible (GTK_WIDGET (self->conflict), FALSE);
  apply_cb (self);
}

static void
theirs_cb (UnsootVehicleEdit *self)
{
  unsoot_vehicle_row_free (self->row);
  self->row = g_steal_pointer (&self->theirs);
  unsoot_vehicle_fields_set (self->fields, self->row);
  unsoot_form_draft_settle (unsoot_form_dialog_get_draft (self->dialog));
  gtk_widget_set_visible (GTK_WIDGET (self->conflict), FALSE);
}

static void
unsoot_vehicle_edit_dispose (GObject *object)
{
  UnsootVehicleEdit *self = UNSOOT_VEHICLE_EDIT (object);

  unsoot_store_slot_clear (&self->load_slot);
  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->row, unsoot_vehicle_row_free);
  g_clear_pointer (&self->theirs, unsoot_vehicle_row_free);
  G_OBJECT_CLASS (unsoot_vehicle_edit_parent_class)->dispose (object);
}

static void
unsoot_vehicle_edit_class_init (UnsootVehicleEditClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_vehicle_edit_dispose;
}

static void
unsoot_vehicle_edit_init (UnsootVehicleEdit *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 12);
  self->conflict = UNSOOT_CONFLICT_BOX (unsoot_conflict_box_new ());
  g_signal_connect_swapped (self->conflict, "mine", G_CALLBACK (mine_cb), self);
  g_signal_connect_swapped (self->conflict, "theirs", G_CALLBACK (theirs_cb), self);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->conflict));
}

static gpointer
load (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_vehicle_load (db, *(gint64 *) data, error);
}

/* Of a new one the record is whose it is. */
static void
begin_draft (UnsootVehicleEdit *self)
{
  UnsootFormDraft *draft = unsoot_form_dialog_get_draft (self->dialog);
  const gboolean is_new = self->row->id == 0;

  unsoot_vehicle_fields_watch (self->fields, draft);
  unsoot_form_draft_begin (draft, self->session, is_new ? "new-vehicle" : "vehicle",
                           is_new ? self->row->customer_id : self->row->id);
}

static void
loaded_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootVehicleEdit *self = owner;

  self->row = result;
  if (error != NULL)
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  unsoot_vehicle_fields_set (self->fields, self->row);
  begin_draft (self);
}

static void
begin_new (UnsootVehicleEdit *self, gint64 customer_id)
{
  g_autoptr (UnsootBookingPlan) plan = unsoot_booking_plan_new ();

  plan->customer_id = customer_id;
  unsoot_booking_plan_new_vehicle (plan, NULL);
  self->row = g_steal_pointer (&plan->vehicle);
  unsoot_vehicle_fields_set (self->fields, self->row);
  begin_draft (self);
}

void
unsoot_vehicle_edit_open (GtkWidget *over, UnsootSession *session, gint64 vehicle_id,
                          gint64 customer_id)
{
  UnsootVehicleEdit *self = g_object_new (UNSOOT_TYPE_VEHICLE_EDIT, NULL);

  self->session = g_object_ref (session);
  self->fields = UNSOOT_VEHICLE_FIELDS (unsoot_vehicle_fields_new (session, TRUE));
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->fields));
  self->dialog = unsoot_form_dialog_new (
      over, vehicle_id != 0 ? _ ("The vehicle") : _ ("New vehicle"), _ ("Save"), GTK_WIDGET (self));
  g_signal_connect_object (self->dialog, "apply", G_CALLBACK (apply_cb), self, G_CONNECT_SWAPPED);
  if (vehicle_id != 0)
    unsoot_store_slot_call (&self->load_slot, unsoot_session_get_store (session), load,
                            g_memdup2 (&vehicle_id, sizeof vehicle_id), g_free,
                            (GDestroyNotify) unsoot_vehicle_row_free, loaded_cb, self);
  else
    begin_new (self, customer_id);
  gtk_window_present (GTK_WINDOW (self->dialog));
}
