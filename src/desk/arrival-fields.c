/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "arrival-fields.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "form-dialog.h"
#include "entry-form.h"
#include "format.h"
#include "jobs.h"
#include "store-call.h"
#include "trouble-code.h"
#include "unit-text.h"

struct _UnsootArrivalFields
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *odometer, *unit, *hours, *new_meter, *meter_note;
  GtkWidget *complaint, *codes, *codes_note, *altered;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;

  UnsootFormDialog *dialog; /* borrowed: it owns these fields */
  gint64 job_id;
};

G_DEFINE_FINAL_TYPE (UnsootArrivalFields, unsoot_arrival_fields, GTK_TYPE_BOX)

static const char *const units[] = { "mi", "km" };

/* An arrival on its way to the store, with what it borrows. */
typedef struct
{
  UnsootActing who;
  gint64 job_id;
  UnsootArrival arrival;
  char *complaint;
  char *codes;
  char *altered;
} Deed;

static void
deed_free (gpointer data)
{
  Deed *deed = data;

  g_free (deed->complaint);
  g_free (deed->codes);
  g_free (deed->altered);
  g_free (deed);
}

static gpointer
carry_out (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Deed *deed = data;

  unsoot_job_arrive (db, &deed->who, deed->job_id, &deed->arrival, error);
  return NULL;
}

static void
arrived (gpointer owner, gpointer result, const GError *error)
{
  UnsootArrivalFields *self = owner;

  if (error != NULL)
    unsoot_form_dialog_say (self->dialog, error->message);
  else
    unsoot_form_dialog_done (self->dialog,
                             _ ("The vehicle is here. Look at it before the engine starts."));
}

static gboolean
read_meter (GtkWidget *entry, double *number, GError **error)
{
  g_autofree char *text = unsoot_form_dup_text (entry);

  *number = (double) NAN;
  return text == NULL || unsoot_meter_parse (text, number, error);
}

static void
apply_cb (UnsootArrivalFields *self)
{
  g_autoptr (GError) error = NULL;
  const guint unit = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->unit));
  Deed *deed = g_new0 (Deed, 1);

  deed->who = unsoot_session_acting (self->session);
  deed->job_id = self->job_id;
  deed->complaint = unsoot_form_dup_text (self->complaint);
  deed->codes = unsoot_form_dup_text (self->codes);
  deed->altered = unsoot_form_dup_text (self->altered);
  deed->arrival.odometer_unit = units[MIN (unit, G_N_ELEMENTS (units) - 1)];
  deed->arrival.new_meter = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->new_meter));
  deed->arrival.complaint = deed->complaint;
  deed->arrival.codes = deed->codes;
  deed->arrival.altered = deed->altered;
  if (!read_meter (self->odometer, &deed->arrival.odometer, &error)
      || !read_meter (self->hours, &deed->arrival.hours, &error))
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      deed_free (deed);
      return;
    }
  unsoot_form_dialog_set_busy (self->dialog, TRUE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), carry_out, deed,
                          deed_free, NULL, arrived, self);
}

/* The form of the codes is looked at where they are typed. */
static void
codes_cb (UnsootArrivalFields *self)
{
  g_autofree char *typed = unsoot_form_dup_text (self->codes);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) codes = typed != NULL ? unsoot_trouble_codes_parse (typed, &error) : NULL;

  unsoot_form_say (self->codes_note, error != NULL ? error->message : NULL, TRUE);
}

static void
unsoot_arrival_fields_dispose (GObject *object)
{
  UnsootArrivalFields *self = UNSOOT_ARRIVAL_FIELDS (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_arrival_fields_parent_class)->dispose (object);
}

static void
unsoot_arrival_fields_class_init (UnsootArrivalFieldsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_arrival_fields_dispose;
}

static void
unsoot_arrival_fields_init (UnsootArrivalFields *self)
{
  const char *const unit_words[] = { _ ("miles"), _ ("kilometres"), NULL };
  GtkWidget *form = unsoot_form_new ();
  UnsootForm *fields = UNSOOT_FORM (form);

  self->odometer = unsoot_form_entry (fields, _ ("Odometer"), 1);
  self->unit = unsoot_form_choice (fields, _ ("It counts"), 1);
  unsoot_form_set_words (self->unit, unit_words);
  unsoot_form_name (self->unit, _ ("It counts"));
  self->hours = unsoot_form_entry (fields, _ ("Engine hours"), 1);
  self->new_meter = unsoot_form_check (fields, _ ("The meter is new"), 1);
  gtk_widget_set_valign (self->new_meter, GTK_ALIGN_END);
  self->meter_note = unsoot_form_note (fields);
  self->complaint = unsoot_form_entry (fields, _ ("Complaint, in the customer's words"), 2);
  self->codes = unsoot_form_entry (fields, _ ("Trouble codes"), 2);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->codes), _ ("P0401, P0299"));
  g_signal_connect_swapped (self->codes, "changed", G_CALLBACK (codes_cb), self);
  self->codes_note = unsoot_form_note (fields);
  self->altered = unsoot_form_entry (fields, _ ("Emission parts missing or altered"), 2);
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->altered), _ ("Empty: none seen"));
  gtk_box_append (GTK_BOX (self), form);
}

/* What the meters showed last, to type the new reading against. */
static void
say_last_meters (UnsootArrivalFields *self, const UnsootJobFile *file)
{
  const UnsootMeterReadingRow *last = NULL;
  g_autofree char *number = NULL, *day = NULL, *sentence = NULL, *today = NULL;

  if (file->meters->len == 0)
    return;
  last = g_ptr_array_index (file->meters, file->meters->len - 1);
  number = unsoot_format_number (last->typed, 1);
  today = unsoot_session_today (self->session);
  day = unsoot_format_day (last->taken_on, today);
  /* Translators: a meter's last reading, its unit, and when */
  sentence = g_strdup_printf (_ ("Last read: %s %s, %s."), number, last->unit, day);
  unsoot_form_say (self->meter_note, sentence, FALSE);
  if (g_strcmp0 (last->unit, "km") == 0)
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->unit), 1);
}

/* A machine without a road has hours only. */
static gboolean
counts_hours (const UnsootJobFile *file)
{
  const UnsootMeterReadingRow *last
      = file->meters->len > 0 ? g_ptr_array_index (file->meters, file->meters->len - 1) : NULL;

  return last != NULL && g_strcmp0 (last->kind, "hours") == 0;
}

static void
begin_draft (UnsootArrivalFields *self)
{
  UnsootFormDraft *draft = unsoot_form_dialog_get_draft (self->dialog);

  unsoot_form_draft_watch (draft, "odometer", _ ("Odometer"), self->odometer);
  unsoot_form_draft_watch (draft, "unit", _ ("It counts"), self->unit);
  unsoot_form_draft_watch (draft, "hours", _ ("Engine hours"), self->hours);
  unsoot_form_draft_watch (draft, "new-meter", _ ("The meter is new"), self->new_meter);
  unsoot_form_draft_watch (draft, "complaint", _ ("Complaint"), self->complaint);
  unsoot_form_draft_watch (draft, "codes", _ ("Trouble codes"), self->codes);
  unsoot_form_draft_watch (draft, "altered", _ ("Emission parts missing or altered"),
                           self->altered);
  unsoot_form_draft_begin (draft, self->session, "arrival", self->job_id);
}

void
unsoot_arrival_open (GtkWidget *over, UnsootSession *session, const UnsootJobFile *file)
{
  UnsootArrivalFields *self = g_object_new (UNSOOT_TYPE_ARRIVAL_FIELDS, NULL);

  self->session = g_object_ref (session);
  self->job_id = file->job->id;
  unsoot_form_set_text (self->complaint, file->job->complaint);
  unsoot_form_set_text (self->codes, file->job->codes);
  if (file->vehicle->emission_altered)
    unsoot_form_set_text (self->altered, file->vehicle->emission_note);
  say_last_meters (self, file);
  self->dialog = unsoot_form_dialog_new (over, _ ("The vehicle is here"), _ ("Record the arrival"),
                                         GTK_WIDGET (self));
  g_signal_connect_object (self->dialog, "apply", G_CALLBACK (apply_cb), self, G_CONNECT_SWAPPED);
  begin_draft (self);
  gtk_window_present (GTK_WINDOW (self->dialog));
  gtk_widget_grab_focus (counts_hours (file) ? self->hours : self->odometer);
}
