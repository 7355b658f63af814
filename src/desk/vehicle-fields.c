/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-fields.h"

#include <glib/gi18n-lib.h>

#include "contact.h"
#include "families.h"
#include "entry-form.h"
#include "store-call.h"
#include "unit-text.h"
#include "vehicles.h"
#include "vin.h"

struct _UnsootVehicleFields
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *vin, *vin_note, *proposals;
  GtkWidget *plate, *plate_region, *unit_number;
  GtkWidget *year, *make, *model, *engine;
  GtkWidget *family, *gvwr, *engine_serial;
  GtkWidget *has_egr, *has_dpf, *altered, *altered_note, *note;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;
  UnsootStoreSlot families_slot;
  GArray *family_ids; /* gint64; the first is none */
  GPtrArray *proposed;

  gint64 family_id; /* wanted before the families were known */
  gboolean whole;
  gboolean setting;
};

enum
{
  EDITED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootVehicleFields, unsoot_vehicle_fields, GTK_TYPE_BOX)

static void
edited (UnsootVehicleFields *self)
{
  if (!self->setting)
    g_signal_emit (self, signals[EDITED], 0);
}

static void
clear_proposals (UnsootVehicleFields *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->proposals)) != NULL)
    gtk_box_remove (GTK_BOX (self->proposals), child);
  gtk_widget_set_visible (self->proposals, FALSE);
  g_clear_pointer (&self->proposed, g_ptr_array_unref);
}

static void
choose_family (UnsootVehicleFields *self, gint64 family_id)
{
  self->family_id = family_id;
  for (guint i = 0; i < self->family_ids->len; i++)
    if (g_array_index (self->family_ids, gint64, i) == family_id)
      gtk_drop_down_set_selected (GTK_DROP_DOWN (self->family), i);
}

static void
take_proposal (UnsootVehicleFields *self, const UnsootVehicleProposal *proposal)
{
  unsoot_form_set_text (self->make, proposal->make);
  unsoot_form_set_text (self->model, proposal->model);
  unsoot_form_set_text (self->engine, proposal->engine);
  choose_family (self, proposal->family_id);
  if (proposal->gvwr_lb > 0)
    {
      g_autofree char *gvwr = g_strdup_printf ("%d", (int) proposal->gvwr_lb);
      unsoot_form_set_text (self->gvwr, gvwr);
    }
}

static void
proposal_cb (GtkButton *button, UnsootVehicleFields *self)
{
  const guint index = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));

  take_proposal (self, g_ptr_array_index (self->proposed, index));
  clear_proposals (self);
  gtk_widget_grab_focus (self->plate);
}

static GtkWidget *
proposal_button_new (UnsootVehicleFields *self, const UnsootVehicleProposal *proposal, guint index)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  g_autofree char *name = NULL;
  GtkWidget *button;

  if (proposal->make != NULL)
    g_ptr_array_add (words, proposal->make);
  if (proposal->model != NULL)
    g_ptr_array_add (words, proposal->model);
  if (proposal->engine != NULL)
    g_ptr_array_add (words, proposal->engine);
  g_ptr_array_add (words, NULL);
  name = g_strjoinv (" ", (char **) words->pdata);
  button = gtk_button_new_with_label (name);
  gtk_widget_add_css_class (button, "pill-choice");
  unsoot_form_name (button, name);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  g_signal_connect (button, "clicked", G_CALLBACK (proposal_cb), self);
  return button;
}

static gboolean
knows_make (UnsootVehicleFields *self)
{
  return *gtk_editable_get_text (GTK_EDITABLE (self->make)) != '\0'
         || *gtk_editable_get_text (GTK_EDITABLE (self->model)) != '\0';
}

static void
proposed_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootVehicleFields *self = owner;

  clear_proposals (self);
  self->proposed = result;
  if (result == NULL || knows_make (self))
    return;
  for (guint i = 0; i < self->proposed->len; i++)
    gtk_box_append (GTK_BOX (self->proposals),
                    proposal_button_new (self, g_ptr_array_index (self->proposed, i), i));
  gtk_widget_set_visible (self->proposals, self->proposed->len > 0);
}

static gpointer
propose (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_vehicle_proposals (db, data, error);
}

static void
say_vin (UnsootVehicleFields *self)
{
  g_autofree char *typed = unsoot_form_dup_text (self->vin);
  g_autoptr (UnsootVinCheck) check = typed != NULL ? unsoot_vin_check (typed) : NULL;

  if (check == NULL)
    unsoot_form_say (self->vin_note, NULL, FALSE);
  else if (check->sentence != NULL)
    unsoot_form_say (self->vin_note, check->sentence, TRUE);
  else
    unsoot_form_say (self->vin_note, _ ("The check digit fits the other sixteen characters."),
                     FALSE);
}

static void
ask_proposals (UnsootVehicleFields *self)
{
  g_autofree char *typed = unsoot_form_dup_text (self->vin);
  g_autofree char *leading = typed != NULL ? unsoot_vin_leading (typed, UNSOOT_VIN_MAKER) : NULL;

  clear_proposals (self);
  if (leading != NULL && !knows_make (self))
    unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), propose,
                            g_steal_pointer (&typed), g_free, (GDestroyNotify) g_ptr_array_unref,
                            proposed_done, self);
}

static void
vin_changed_cb (GtkEditable *editable, UnsootVehicleFields *self)
{
  say_vin (self);
  if (!self->setting)
    ask_proposals (self);
  edited (self);
}

static void
altered_cb (GtkCheckButton *button, UnsootVehicleFields *self)
{
  gtk_widget_set_visible (self->altered_note, gtk_check_button_get_active (button));
  edited (self);
}

static void
unsoot_vehicle_fields_dispose (GObject *object)
{
  UnsootVehicleFields *self = UNSOOT_VEHICLE_FIELDS (object);

  unsoot_store_slot_clear (&self->slot);
  unsoot_store_slot_clear (&self->families_slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->family_ids, g_array_unref);
  g_clear_pointer (&self->proposed, g_ptr_array_unref);
  G_OBJECT_CLASS (unsoot_vehicle_fields_parent_class)->dispose (object);
}

static void
unsoot_vehicle_fields_class_init (UnsootVehicleFieldsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_vehicle_fields_dispose;
  signals[EDITED] = g_signal_new ("edited", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                  NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_vehicle_fields_init (UnsootVehicleFields *self)
{
  const gint64 none = 0;

  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  self->family_ids = g_array_new (FALSE, FALSE, sizeof (gint64));
  g_array_append_val (self->family_ids, none);
}

static GtkWidget *
add_entry (UnsootVehicleFields *self, GtkWidget *form, const char *label, int columns)
{
  GtkWidget *entry = unsoot_form_entry (UNSOOT_FORM (form), label, columns);

  g_signal_connect_swapped (entry, "changed", G_CALLBACK (edited), self);
  return entry;
}

static void
build_marks (UnsootVehicleFields *self)
{
  GtkWidget *form = unsoot_form_new ();

  self->vin = unsoot_form_entry (UNSOOT_FORM (form), _ ("VIN"), 2);
  gtk_widget_add_css_class (self->vin, "figures");
  g_signal_connect (self->vin, "changed", G_CALLBACK (vin_changed_cb), self);
  self->vin_note = unsoot_form_note (UNSOOT_FORM (form));
  gtk_box_append (GTK_BOX (self), form);
  self->proposals = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  gtk_widget_set_visible (self->proposals, FALSE);
  gtk_box_append (GTK_BOX (self), self->proposals);
}

static void
build_rest (UnsootVehicleFields *self)
{
  GtkWidget *form = unsoot_form_new ();
  UnsootForm *fields = UNSOOT_FORM (form);

  self->plate = add_entry (self, form, _ ("Plate"), 1);
  self->unit_number = add_entry (self, form, _ ("Unit number"), 1);
  self->year = add_entry (self, form, _ ("Model year"), 1);
  self->make = add_entry (self, form, _ ("Make"), 1);
  self->model = add_entry (self, form, _ ("Model"), 1);
  self->engine = add_entry (self, form, _ ("Engine"), 1);
  self->family = unsoot_form_choice (fields, _ ("Engine family"), 1);
  unsoot_form_set_words (self->family, (const char *const[]){ _ ("not settled yet"), NULL });
  g_signal_connect_swapped (self->family, "notify::selected", G_CALLBACK (edited), self);
  self->gvwr = add_entry (self, form, _ ("Rated weight in lb"), 1);
  self->plate_region = add_entry (self, form, _ ("Where the plate is from"), 1);
  self->engine_serial = add_entry (self, form, _ ("Engine serial"), 1);
  self->has_egr = unsoot_form_check (fields, _ ("Has an EGR"), 1);
  self->has_dpf = unsoot_form_check (fields, _ ("Has a particle filter"), 1);
  self->altered = unsoot_form_check (fields, _ ("Emission parts are missing or altered"), 2);
  self->altered_note = add_entry (self, form, _ ("Which ones"), 2);
  self->note = add_entry (self, form, _ ("Note"), 2);
  g_signal_connect_swapped (self->has_egr, "toggled", G_CALLBACK (edited), self);
  g_signal_connect_swapped (self->has_dpf, "toggled", G_CALLBACK (edited), self);
  g_signal_connect (self->altered, "toggled", G_CALLBACK (altered_cb), self);
  gtk_widget_set_visible (self->altered_note, FALSE);
  gtk_widget_set_visible (self->plate_region, self->whole);
  gtk_widget_set_visible (self->engine_serial, self->whole);
  gtk_widget_set_visible (self->note, self->whole);
  gtk_widget_set_visible (self->altered, self->whole);
  gtk_box_append (GTK_BOX (self), form);
}

static gpointer
read_families (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_family_list (db, error);
}

static void
families_read (gpointer owner, gpointer result, const GError *error)
{
  g_autoptr (GPtrArray) families = result;

  if (families != NULL)
    unsoot_vehicle_fields_set_families (owner, families);
}

GtkWidget *
unsoot_vehicle_fields_new (UnsootSession *session, gboolean whole)
{
  UnsootVehicleFields *self = g_object_new (UNSOOT_TYPE_VEHICLE_FIELDS, NULL);

  self->session = g_object_ref (session);
  self->whole = whole;
  build_marks (self);
  build_rest (self);
  if (whole)
    unsoot_store_slot_call (&self->families_slot, unsoot_session_get_store (session), read_families,
                            NULL, NULL, (GDestroyNotify) g_ptr_array_unref, families_read, self);
  return GTK_WIDGET (self);
}

void
unsoot_vehicle_fields_set_families (UnsootVehicleFields *self, const GPtrArray *families)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  const gint64 wanted = self->family_id;

  if (self->family_ids->len == families->len + 1)
    return;
  g_array_set_size (self->family_ids, 1);
  g_ptr_array_add (words, (gpointer) _ ("not settled yet"));
  for (guint i = 0; i < families->len; i++)
    {
      const UnsootFamilyRow *family = g_ptr_array_index (families, i);
      g_array_append_val (self->family_ids, family->id);
      g_ptr_array_add (words, family->name);
    }
  g_ptr_array_add (words, NULL);
  self->setting = TRUE;
  unsoot_form_set_words (self->family, (const char *const *) words->pdata);
  choose_family (self, wanted);
  unsoot_form_name (self->family, _ ("Engine family"));
  self->setting = FALSE;
}

static void
set_number (GtkWidget *entry, gint64 number)
{
  g_autofree char *text = number > 0 ? g_strdup_printf ("%d", (int) number) : NULL;

  unsoot_form_set_text (entry, text);
}

void
unsoot_vehicle_fields_set (UnsootVehicleFields *self, const UnsootVehicleRow *vehicle)
{
  self->setting = TRUE;
  unsoot_form_set_text (self->vin, vehicle->vin);
  unsoot_form_set_text (self->plate, vehicle->plate);
  unsoot_form_set_text (self->plate_region, vehicle->plate_region);
  unsoot_form_set_text (self->unit_number, vehicle->unit_number);
  set_number (self->year, vehicle->year);
  unsoot_form_set_text (self->make, vehicle->make);
  unsoot_form_set_text (self->model, vehicle->model);
  unsoot_form_set_text (self->engine, vehicle->engine);
  unsoot_form_set_text (self->engine_serial, vehicle->engine_serial);
  set_number (self->gvwr, vehicle->gvwr_lb);
  choose_family (self, vehicle->family_id);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->has_egr), vehicle->has_egr);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->has_dpf), vehicle->has_dpf);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->altered), vehicle->emission_altered);
  unsoot_form_set_text (self->altered_note, vehicle->emission_note);
  unsoot_form_set_text (self->note, vehicle->note);
  say_vin (self);
  self->setting = FALSE;
  /* A VIN that came with the call was not typed here. */
  ask_proposals (self);
}

static gboolean
read_number (GtkWidget *entry, gint64 *number, GError **error)
{
  g_autofree char *text = unsoot_form_dup_text (entry);
  double value = 0;

  if (text != NULL && !unsoot_number_parse (text, &value, error))
    return FALSE;
  *number = (gint64) value;
  return TRUE;
}

static void
read_text (GtkWidget *entry, char **text)
{
  g_free (*text);
  *text = unsoot_form_dup_text (entry);
}

gboolean
unsoot_vehicle_fields_read (UnsootVehicleFields *self, UnsootVehicleRow *vehicle, GError **error)
{
  const guint family = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->family));

  read_text (self->vin, &vehicle->vin);
  read_text (self->plate, &vehicle->plate);
  if (vehicle->plate != NULL)
    {
      char *tidy = unsoot_plate_normalise (vehicle->plate);
      g_free (vehicle->plate);
      vehicle->plate = tidy;
    }
  read_text (self->plate_region, &vehicle->plate_region);
  read_text (self->unit_number, &vehicle->unit_number);
  read_text (self->make, &vehicle->make);
  read_text (self->model, &vehicle->model);
  read_text (self->engine, &vehicle->engine);
  read_text (self->engine_serial, &vehicle->engine_serial);
  read_text (self->note, &vehicle->note);
  if (family < self->family_ids->len)
    vehicle->family_id = g_array_index (self->family_ids, gint64, family);
  vehicle->has_egr = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->has_egr));
  vehicle->has_dpf = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->has_dpf));
  vehicle->emission_altered = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->altered));
  g_clear_pointer (&vehicle->emission_note, g_free);
  if (vehicle->emission_altered)
    vehicle->emission_note = unsoot_form_dup_text (self->altered_note);
  return read_number (self->year, &vehicle->year, error)
         && read_number (self->gvwr, &vehicle->gvwr_lb, error);
}

/* The families may still be on their way: then the one that is wanted is the chosen one. */
static char *
family_text (GtkWidget *field)
{
  UnsootVehicleFields *self
      = UNSOOT_VEHICLE_FIELDS (gtk_widget_get_ancestor (field, UNSOOT_TYPE_VEHICLE_FIELDS));
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (field));
  const gboolean read = self->family_ids->len > 1 && chosen < self->family_ids->len;

  return g_strdup_printf ("%" G_GINT64_FORMAT,
                          read ? g_array_index (self->family_ids, gint64, chosen)
                               : self->family_id);
}

static void
family_set (GtkWidget *field, const char *text)
{
  choose_family (
      UNSOOT_VEHICLE_FIELDS (gtk_widget_get_ancestor (field, UNSOOT_TYPE_VEHICLE_FIELDS)),
      g_ascii_strtoll (text, NULL, 10));
}

void
unsoot_vehicle_fields_watch (UnsootVehicleFields *self, UnsootFormDraft *draft)
{
  static const UnsootFieldWays family_ways = { "notify::selected", family_text, family_set, FALSE };

  unsoot_form_draft_watch (draft, "vin", _ ("VIN"), self->vin);
  unsoot_form_draft_watch (draft, "plate", _ ("Plate"), self->plate);
  unsoot_form_draft_watch (draft, "unit", _ ("Unit number"), self->unit_number);
  unsoot_form_draft_watch (draft, "year", _ ("Model year"), self->year);
  unsoot_form_draft_watch (draft, "make", _ ("Make"), self->make);
  unsoot_form_draft_watch (draft, "model", _ ("Model"), self->model);
  unsoot_form_draft_watch (draft, "engine", _ ("Engine"), self->engine);
  unsoot_form_draft_watch_as (draft, "family", _ ("Engine family"), self->family, &family_ways);
  unsoot_form_draft_watch (draft, "gvwr", _ ("Rated weight in lb"), self->gvwr);
  unsoot_form_draft_watch (draft, "plate-region", _ ("Where the plate is from"),
                           self->plate_region);
  unsoot_form_draft_watch (draft, "engine-serial", _ ("Engine serial"), self->engine_serial);
  unsoot_form_draft_watch (draft, "egr", _ ("Has an EGR"), self->has_egr);
  unsoot_form_draft_watch (draft, "dpf", _ ("Has a particle filter"), self->has_dpf);
  unsoot_form_draft_watch (draft, "altered", _ ("Emission parts are missing or altered"),
                           self->altered);
  unsoot_form_draft_watch (draft, "altered-note", _ ("Which ones"), self->altered_note);
  unsoot_form_draft_watch (draft, "note", _ ("Note"), self->note);
}

const char *
unsoot_vehicle_fields_family_name (UnsootVehicleFields *self, gint64 family_id)
{
  GtkStringList *names = GTK_STRING_LIST (gtk_drop_down_get_model (GTK_DROP_DOWN (self->family)));

  for (guint i = 1; i < self->family_ids->len; i++)
    if (g_array_index (self->family_ids, gint64, i) == family_id)
      return gtk_string_list_get_string (names, i);
  return NULL;
}
