/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-fields.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "form-dialog.h"
#include "entry-form.h"
#include "format.h"
#include "job-readings.h"
#include "reading-change.h"
#include "store-call.h"
#include "unit-text.h"

struct _UnsootReadingFields
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *kind, *stage, *limits;
  GtkWidget *value, *instrument;
  GtkWidget *rpm, *load, *coolant, *egr, *barometer, *ambient, *regeneration, *needs;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;
  GPtrArray *taken; /* UnsootReadingRow of this job */

  UnsootFormDialog *dialog; /* borrowed: it owns these fields */
  gint64 job_id;
};

G_DEFINE_FINAL_TYPE (UnsootReadingFields, unsoot_reading_fields, GTK_TYPE_BOX)

static const char *const stages[] = { "before", "after" };

typedef struct
{
  UnsootActing who;
  UnsootReadingRow *row;
} Deed;

static void
deed_free (gpointer data)
{
  Deed *deed = data;

  unsoot_reading_row_free (deed->row);
  g_free (deed);
}

static gpointer
carry_out (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Deed *deed = data;

  unsoot_reading_add (db, &deed->who, deed->row, error);
  return NULL;
}

static void
recorded (gpointer owner, gpointer result, const GError *error)
{
  UnsootReadingFields *self = owner;

  if (error != NULL)
    unsoot_form_dialog_say (self->dialog, error->message);
  else
    unsoot_form_dialog_done (self->dialog, _ ("The reading is recorded"));
}

static UnsootReadingKind
chosen_kind (UnsootReadingFields *self)
{
  return (UnsootReadingKind) MIN (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind)),
                                  UNSOOT_READING_KINDS - 1);
}

static gboolean
read_quantity (GtkWidget *entry, UnsootQuantity quantity, UnsootUnit assumed, double *si,
               GError **error)
{
  g_autofree char *text = unsoot_form_dup_text (entry);
  UnsootTyped typed;

  *si = (double) NAN;
  if (text == NULL)
    return TRUE;
  if (!unsoot_typed_parse (text, quantity, assumed, &typed, error))
    return FALSE;
  *si = typed.si;
  return TRUE;
}

static gboolean
read_condition (UnsootReadingFields *self, UnsootReadingRow *row, GError **error)
{
  const guint egr = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->egr));

  row->egr_state = g_strdup (unsoot_slug_of (unsoot_egr_states, (int) egr));
  row->regeneration = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->regeneration));
  return read_quantity (self->rpm, UNSOOT_QUANTITY_SPEED, UNSOOT_UNIT_RPM, &row->rpm, error)
         && read_quantity (self->load, UNSOOT_QUANTITY_PERCENT, UNSOOT_UNIT_PERCENT,
                           &row->load_percent, error)
         && read_quantity (self->coolant, UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_CELSIUS,
                           &row->coolant_c, error)
         && read_quantity (self->barometer, UNSOOT_QUANTITY_PRESSURE, UNSOOT_UNIT_KPA,
                           &row->barometer_pa, error)
         && read_quantity (self->ambient, UNSOOT_QUANTITY_TEMPERATURE, UNSOOT_UNIT_CELSIUS,
                           &row->ambient_c, error);
}

static UnsootReadingRow *
read_row (UnsootReadingFields *self, GError **error)
{
  g_autoptr (UnsootReadingRow) row = unsoot_reading_row_new ();
  const UnsootReadingKind kind = chosen_kind (self);
  const guint stage = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->stage));

  row->job_id = self->job_id;
  row->kind = g_strdup (unsoot_slug_of (unsoot_reading_kinds, (int) kind));
  row->stage = g_strdup (stages[MIN (stage, G_N_ELEMENTS (stages) - 1)]);
  row->typed = unsoot_form_dup_text (self->value);
  row->unit = g_strdup (unsoot_unit_slug (unsoot_reading_facts (kind).shown));
  row->instrument = unsoot_form_dup_text (self->instrument);
  row->value = row->tolerance = (double) NAN;
  return read_condition (self, row, error) ? g_steal_pointer (&row) : NULL;
}

static void
apply_cb (UnsootReadingFields *self)
{
  g_autoptr (GError) error = NULL;
  UnsootReadingRow *row = read_row (self, &error);
  Deed *deed;

  if (row == NULL)
    {
      unsoot_form_dialog_say (self->dialog, error->message);
      return;
    }
  deed = g_new0 (Deed, 1);
  deed->who = unsoot_session_acting (self->session);
  deed->row = row;
  unsoot_form_dialog_set_busy (self->dialog, TRUE);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), carry_out, deed,
                          deed_free, NULL, recorded, self);
}

/* What has to be noted so that before and after may be set against each other. */
static char *
needs_text (guint needs)
{
  static const struct
  {
    UnsootDepends depends;
    const char *words;
  } all[] = { { UNSOOT_DEPENDS_RPM, N_ ("engine speed") },
              { UNSOOT_DEPENDS_LOAD, N_ ("load") },
              { UNSOOT_DEPENDS_COOLANT, N_ ("coolant") },
              { UNSOOT_DEPENDS_EGR, N_ ("EGR valve") },
              { UNSOOT_DEPENDS_REGENERATION, N_ ("regeneration") },
              { UNSOOT_DEPENDS_BAROMETER, N_ ("air pressure") },
              { UNSOOT_DEPENDS_AMBIENT, N_ ("outside temperature") } };
  g_autoptr (GString) list = g_string_new (NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if ((needs & all[i].depends) != 0)
      g_string_append_printf (list, "%s%s", list->len > 0 ? ", " : "", _ (all[i].words));
  if (list->len == 0)
    return NULL;
  /* Translators: conditions that before and after have to share, in a list */
  return g_strdup_printf (_ ("Before and after must be alike in: %s."), list->str);
}

/* Puts in what another reading had, unless a person typed something else: only a field that is
 * empty, or still as it was filled, is filled. */
static void
fill_text (GtkWidget *entry, const char *text)
{
  const char *now = gtk_editable_get_text (GTK_EDITABLE (entry));
  const char *filled = g_object_get_data (G_OBJECT (entry), "filled");

  if (*now != '\0' && g_strcmp0 (now, filled) != 0)
    return;
  g_object_set_data_full (G_OBJECT (entry), "filled", g_strdup (text), g_free);
  unsoot_form_set_text (entry, text);
}

static void
fill_number (GtkWidget *entry, double value, int decimals)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE] = "";

  if (!isnan (value))
    g_ascii_formatd (text, sizeof text, decimals == 0 ? "%.0f" : "%.1f", value);
  fill_text (entry, text);
}

static void
fill_egr (UnsootReadingFields *self, const char *state)
{
  GtkDropDown *egr = GTK_DROP_DOWN (self->egr);
  const guint now = gtk_drop_down_get_selected (egr);
  const guint filled = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (egr), "filled"));
  int known = UNSOOT_EGR_UNKNOWN;

  if (now != UNSOOT_EGR_UNKNOWN && now != filled)
    return;
  if (state != NULL)
    unsoot_slug_find (unsoot_egr_states, state, &known);
  g_object_set_data (G_OBJECT (egr), "filled", GUINT_TO_POINTER ((guint) known));
  gtk_drop_down_set_selected (egr, (guint) known);
}

static void
fill_check (GtkWidget *check, gboolean on)
{
  GtkCheckButton *button = GTK_CHECK_BUTTON (check);
  const gboolean filled = g_object_get_data (G_OBJECT (check), "filled") != NULL;

  if (gtk_check_button_get_active (button) != filled)
    return;
  g_object_set_data (G_OBJECT (check), "filled", on ? check : NULL);
  gtk_check_button_set_active (button, on);
}

/* Most of a condition is the same for the next reading, all of it for its other half. */
static void
remember (UnsootReadingFields *self, const UnsootReadingRow *last)
{
  fill_text (self->instrument, last->instrument != NULL ? last->instrument : "");
  fill_number (self->rpm, last->rpm, 0);
  fill_number (self->load, last->load_percent, 1);
  fill_number (self->coolant, last->coolant_c, 1);
  fill_number (self->barometer, last->barometer_pa / 1000.0, 1);
  fill_number (self->ambient, last->ambient_c, 1);
  fill_egr (self, last->egr_state);
  fill_check (self->regeneration, last->regeneration);
}

/* The other half where there is one, else the newest of all; NULL: none yet. */
static const UnsootReadingRow *
nearest_reading (UnsootReadingFields *self)
{
  const char *kind = unsoot_slug_of (unsoot_reading_kinds, (int) chosen_kind (self));
  const UnsootReadingRow *last = NULL;

  for (guint i = 0; i < self->taken->len; i++)
    {
      const UnsootReadingRow *row = g_ptr_array_index (self->taken, i);
      if (g_strcmp0 (row->kind, kind) == 0)
        return row;
      if (last == NULL || row->id > last->id)
        last = row;
    }
  return last;
}

static void
kind_cb (UnsootReadingFields *self)
{
  const UnsootReadingFacts facts = unsoot_reading_facts (chosen_kind (self));
  g_autofree char *needs = needs_text (facts.needs);

  gtk_entry_set_placeholder_text (GTK_ENTRY (self->value), unsoot_unit_symbol (facts.shown));
  unsoot_form_say (self->limits, facts.limits, FALSE);
  unsoot_form_say (self->needs, needs, FALSE);
  if (self->taken != NULL && nearest_reading (self) != NULL)
    remember (self, nearest_reading (self));
}

static void
unsoot_reading_fields_dispose (GObject *object)
{
  UnsootReadingFields *self = UNSOOT_READING_FIELDS (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->taken, g_ptr_array_unref);
  G_OBJECT_CLASS (unsoot_reading_fields_parent_class)->dispose (object);
}

static void
unsoot_reading_fields_class_init (UnsootReadingFieldsClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_reading_fields_dispose;
}

static GtkWidget *
choice_of_slugs (UnsootForm *fields, const char *label, const UnsootSlug *slugs)
{
  GtkWidget *choice = unsoot_form_choice (fields, label, 1);
  g_autoptr (GPtrArray) words = g_ptr_array_new ();

  for (int i = 0; unsoot_slug_words (slugs, i) != NULL; i++)
    g_ptr_array_add (words, (gpointer) unsoot_slug_words (slugs, i));
  g_ptr_array_add (words, NULL);
  unsoot_form_set_words (choice, (const char *const *) words->pdata);
  unsoot_form_name (choice, label);
  return choice;
}

static void
build_condition (UnsootReadingFields *self, UnsootForm *fields)
{
  self->needs = unsoot_form_note (fields);
  self->rpm = unsoot_form_entry (fields, _ ("Engine speed in rpm"), 1);
  self->load = unsoot_form_entry (fields, _ ("Load in %"), 1);
  self->coolant = unsoot_form_entry (fields, _ ("Coolant in °C"), 1);
  self->egr = choice_of_slugs (fields, _ ("EGR valve"), unsoot_egr_states);
  self->barometer = unsoot_form_entry (fields, _ ("Air pressure in kPa"), 1);
  self->ambient = unsoot_form_entry (fields, _ ("Outside in °C"), 1);
  self->regeneration = unsoot_form_check (fields, _ ("The particle filter was regenerating"), 2);
}

static void
unsoot_reading_fields_init (UnsootReadingFields *self)
{
  const char *const stage_words[] = { _ ("before the work"), _ ("after the work"), NULL };
  GtkWidget *form = unsoot_form_new ();
  UnsootForm *fields = UNSOOT_FORM (form);

  self->kind = choice_of_slugs (fields, _ ("What is read"), unsoot_reading_kinds);
  self->stage = unsoot_form_choice (fields, _ ("When"), 1);
  unsoot_form_set_words (self->stage, stage_words);
  unsoot_form_name (self->stage, _ ("When"));
  self->limits = unsoot_form_note (fields);
  self->value = unsoot_form_entry (fields, _ ("Value, with its unit if another"), 1);
  self->instrument = unsoot_form_entry (fields, _ ("Read with"), 1);
  build_condition (self, fields);
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (kind_cb), self);
  gtk_box_append (GTK_BOX (self), form);
}

/* Of those that have no such stage yet, the first: a before that still lacks its after. */
static guint
next_kind (const UnsootJobFile *file, const char *stage)
{
  for (guint i = 0; i < file->readings->len; i++)
    {
      const UnsootReadingRow *row = g_ptr_array_index (file->readings, i);
      gboolean has = FALSE;
      int kind;

      for (guint k = 0; k < file->readings->len; k++)
        {
          const UnsootReadingRow *other = g_ptr_array_index (file->readings, k);
          has = has
                || (g_strcmp0 (other->kind, row->kind) == 0
                    && g_strcmp0 (other->stage, stage) == 0);
        }
      if (!has && unsoot_slug_find (unsoot_reading_kinds, row->kind, &kind))
        return (guint) kind;
    }
  return 0;
}

/* Which reading it is, is kept with whatever was typed of it. */
static void
begin_draft (UnsootReadingFields *self, const char *stage)
{
  UnsootFormDraft *draft = unsoot_form_dialog_get_draft (self->dialog);
  g_autofree char *place = g_strdup_printf ("reading %s", stage);

  unsoot_form_draft_watch (draft, "kind", _ ("What is read"), self->kind);
  unsoot_form_draft_watch (draft, "stage", _ ("When"), self->stage);
  unsoot_form_draft_watch (draft, "value", _ ("Value"), self->value);
  unsoot_form_draft_watch (draft, "instrument", _ ("Read with"), self->instrument);
  unsoot_form_draft_watch (draft, "rpm", _ ("Engine speed in rpm"), self->rpm);
  unsoot_form_draft_watch (draft, "load", _ ("Load in %"), self->load);
  unsoot_form_draft_watch (draft, "coolant", _ ("Coolant in °C"), self->coolant);
  unsoot_form_draft_watch (draft, "egr", _ ("EGR valve"), self->egr);
  unsoot_form_draft_watch (draft, "barometer", _ ("Air pressure in kPa"), self->barometer);
  unsoot_form_draft_watch (draft, "ambient", _ ("Outside in °C"), self->ambient);
  unsoot_form_draft_watch (draft, "regeneration", _ ("The particle filter was regenerating"),
                           self->regeneration);
  unsoot_form_draft_watch_always (draft, "kind");
  unsoot_form_draft_begin (draft, self->session, place, self->job_id);
}

void
unsoot_reading_open (GtkWidget *over, UnsootSession *session, const UnsootJobFile *file,
                     const char *stage)
{
  UnsootReadingFields *self = g_object_new (UNSOOT_TYPE_READING_FIELDS, NULL);

  self->session = g_object_ref (session);
  self->job_id = file->job->id;
  self->taken = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_reading_row_free);
  for (guint i = 0; i < file->readings->len; i++)
    g_ptr_array_add (self->taken, unsoot_record_copy (&unsoot_reading_row_type,
                                                      g_ptr_array_index (file->readings, i)));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->stage), g_str_equal (stage, "after") ? 1 : 0);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->kind), next_kind (file, stage));
  kind_cb (self);
  self->dialog = unsoot_form_dialog_new (over, _ ("A reading"), _ ("Record"), GTK_WIDGET (self));
  g_signal_connect_object (self->dialog, "apply", G_CALLBACK (apply_cb), self, G_CONNECT_SWAPPED);
  begin_draft (self, stage);
  gtk_window_present (GTK_WINDOW (self->dialog));
  gtk_widget_grab_focus (self->value);
}
