/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "form-draft.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "draft-file.h"
#include "draft-text.h"
#include "format.h"

enum
{
  KEEP_AFTER_MS = 600
};

typedef struct
{
  const char *name;
  char *label;
  GtkWidget *field; /* borrowed: it stands in the same form */
  const UnsootFieldWays *ways;
  gboolean always;
  char *first; /* what the record has */
  char *base;  /* what it had when typing began */
} Field;

struct _UnsootFormDraft
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *says;
  GtkWidget *button;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;
  GPtrArray *fields; /* Field */
  char *place;
  char *dropped; /* what the button puts back; NULL: it drops */

  gint64 record;
  gint64 staff_id; /* whose it is, whoever is here by then */
  guint keep_id;
  gboolean setting;
  gboolean stored; /* something is kept in the store */
};

enum
{
  HANDS_CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootFormDraft, unsoot_form_draft, GTK_TYPE_BOX)

static void
field_free (gpointer data)
{
  Field *field = data;

  g_free (field->label);
  g_free (field->first);
  g_free (field->base);
  g_free (field);
}

static char *
field_text (const Field *field)
{
  return field->ways->dup_text (field->field);
}

static gboolean
field_typed (const Field *field)
{
  g_autofree char *text = field_text (field);

  return g_strcmp0 (text, field->first) != 0;
}

static char *
entry_text (GtkWidget *field)
{
  return g_strdup (gtk_editable_get_text (GTK_EDITABLE (field)));
}

static void
entry_set (GtkWidget *field, const char *text)
{
  gtk_editable_set_text (GTK_EDITABLE (field), text);
  gtk_editable_set_position (GTK_EDITABLE (field), -1);
}

/* By its words: the same choice may stand at another place by then. */
static char *
choice_text (GtkWidget *field)
{
  gpointer item = gtk_drop_down_get_selected_item (GTK_DROP_DOWN (field));

  return g_strdup (item != NULL ? gtk_string_object_get_string (item) : "");
}

static void
choice_set (GtkWidget *field, const char *text)
{
  GListModel *model = gtk_drop_down_get_model (GTK_DROP_DOWN (field));

  for (guint i = 0; i < g_list_model_get_n_items (model); i++)
    {
      g_autoptr (GtkStringObject) item = g_list_model_get_item (model, i);
      if (g_str_equal (gtk_string_object_get_string (item), text))
        gtk_drop_down_set_selected (GTK_DROP_DOWN (field), i);
    }
}

static char *
check_text (GtkWidget *field)
{
  return g_strdup (gtk_check_button_get_active (GTK_CHECK_BUTTON (field)) ? "1" : "0");
}

static void
check_set (GtkWidget *field, const char *text)
{
  gtk_check_button_set_active (GTK_CHECK_BUTTON (field), g_str_equal (text, "1"));
}

static const UnsootFieldWays entry_ways = { "changed", entry_text, entry_set, TRUE };
static const UnsootFieldWays choice_ways = { "notify::selected", choice_text, choice_set, TRUE };
static const UnsootFieldWays check_ways = { "toggled", check_text, check_set, FALSE };

/* Whether what is typed there is not for other eyes. */
static gboolean
is_secret (GtkWidget *field)
{
  return GTK_IS_PASSWORD_ENTRY (field)
         || (GTK_IS_ENTRY (field) && !gtk_entry_get_visibility (GTK_ENTRY (field)));
}

/* What was typed, NULL where that is nothing. */
static char *
typed_text (UnsootFormDraft *self)
{
  g_autoptr (UnsootDraftText) text = unsoot_draft_text_new ();
  gboolean typed = FALSE;

  for (guint i = 0; i < self->fields->len; i++)
    {
      const Field *field = g_ptr_array_index (self->fields, i);
      g_autofree char *now = field_text (field);

      if (g_strcmp0 (now, field->first) != 0)
        typed = TRUE;
      else if (!field->always)
        continue;
      unsoot_draft_text_add (text, field->name, field->base, now);
    }
  return typed ? unsoot_draft_text_to_json (text) : NULL;
}

void
unsoot_form_draft_keep (UnsootFormDraft *self)
{
  char *text;

  if (self->keep_id == 0)
    return;
  g_clear_handle_id (&self->keep_id, g_source_remove);
  text = typed_text (self);
  if (text == NULL && !self->stored)
    return;
  self->stored = text != NULL;
  unsoot_draft_file_put (self->session, self->staff_id, self->place, self->record, text);
}

static gboolean
keep_cb (gpointer user_data)
{
  unsoot_form_draft_keep (user_data);
  return G_SOURCE_REMOVE;
}

static void
changed_cb (UnsootFormDraft *self)
{
  if (self->place != NULL && self->staff_id != 0 && !self->setting && self->keep_id == 0)
    self->keep_id = g_timeout_add (KEEP_AFTER_MS, keep_cb, self);
}

static void
say (UnsootFormDraft *self, const char *sentence, const char *verb, const char *name)
{
  gtk_label_set_text (GTK_LABEL (self->says), sentence);
  gtk_button_set_label (GTK_BUTTON (self->button), verb);
  unsoot_access_name (self->button, name);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
}

/* What the record has by now in a field that was typed into before it had that. */
static void
add_theirs (GString *theirs, const Field *field)
{
  g_string_append_printf (theirs, "%s%s", theirs->len > 0 ? "; " : "", field->label);
  if (field->ways->spoken)
    g_string_append_printf (theirs, ": %s", *field->first != '\0' ? field->first : "–");
}

/* Puts what was kept over what nobody has touched yet; what differs from it in @theirs. */
static gboolean
put_back (UnsootFormDraft *self, const UnsootDraftText *kept, GString *theirs)
{
  g_autoptr (GPtrArray) free_fields = g_ptr_array_new ();
  gboolean any = FALSE;

  /* Before the first is filled, because one field may fill another. */
  for (guint i = 0; i < self->fields->len; i++)
    if (!field_typed (g_ptr_array_index (self->fields, i)))
      g_ptr_array_add (free_fields, g_ptr_array_index (self->fields, i));
  self->setting = TRUE;
  for (guint i = 0; i < free_fields->len; i++)
    {
      Field *field = g_ptr_array_index (free_fields, i);
      const char *base, *typed;

      if (!unsoot_draft_text_find (kept, field->name, &base, &typed))
        continue;
      field->ways->set_text (field->field, typed);
      if (g_str_equal (typed, field->first))
        continue;
      any = TRUE;
      if (g_str_equal (base, field->first))
        continue;
      add_theirs (theirs, field);
      g_free (field->base);
      field->base = g_strdup (base);
    }
  self->setting = FALSE;
  return any;
}

static gboolean
restore (UnsootFormDraft *self, const char *json, gint64 at)
{
  g_autoptr (UnsootDraftText) kept = unsoot_draft_text_from_json (json);
  g_autoptr (GString) theirs = g_string_new (NULL);
  g_autofree char *when = NULL, *sentence = NULL;

  if (kept == NULL || !put_back (self, kept, theirs))
    return FALSE;
  when = unsoot_format_stamp (at, unsoot_session_now (self->session),
                              unsoot_session_zone (self->session));
  /* Translators: what was typed is kept from a clock time, or from a day */
  sentence = g_strdup_printf (_ ("Kept from %s"), when);
  if (theirs->len > 0)
    {
      g_autofree char *first = g_steal_pointer (&sentence);
      /* Translators: the sentence before, then fields with what someone else saved in them */
      sentence = g_strdup_printf (_ ("%s. Saved by someone else since: %s."), first, theirs->str);
    }
  say (self, sentence, _ ("Drop it"), _ ("Drop what was kept"));
  return TRUE;
}

static void
loaded_cb (gpointer owner, gpointer result, const GError *error)
{
  UnsootFormDraft *self = owner;
  g_autoptr (UnsootDraftRow) row = result;
  g_autofree char *typed = NULL;

  if (error != NULL)
    g_warning ("%s", error->message);
  if (row == NULL)
    return;
  self->stored = TRUE;
  if (restore (self, row->text, row->at))
    return;
  typed = typed_text (self);
  if (typed != NULL)
    return;
  /* The record has it by now, or it can't be read: there is nothing to keep. */
  self->stored = FALSE;
  unsoot_draft_file_put (self->session, self->staff_id, self->place, self->record, NULL);
}

static void
drop (UnsootFormDraft *self)
{
  self->dropped = typed_text (self);
  self->setting = TRUE;
  for (guint i = 0; i < self->fields->len; i++)
    {
      const Field *field = g_ptr_array_index (self->fields, i);
      field->ways->set_text (field->field, field->first);
    }
  self->setting = FALSE;
  g_clear_handle_id (&self->keep_id, g_source_remove);
  self->stored = FALSE;
  unsoot_draft_file_put (self->session, self->staff_id, self->place, self->record, NULL);
  if (self->dropped == NULL)
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  else
    say (self, _ ("Dropped"), _ ("Put it back"), _ ("Put back what was dropped"));
}

static void
button_cb (UnsootFormDraft *self)
{
  g_autofree char *dropped = g_steal_pointer (&self->dropped);

  if (dropped == NULL)
    drop (self);
  else if (restore (self, dropped, unsoot_session_now (self->session)))
    changed_cb (self);
  else
    gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

static void
person_changed_cb (UnsootFormDraft *self)
{
  const UnsootStaffRow *person = unsoot_session_get_person (self->session);

  if (person != NULL && person->id == self->staff_id)
    return;
  unsoot_form_draft_keep (self);
  g_signal_emit (self, signals[HANDS_CHANGED], 0);
}

static void
unsoot_form_draft_dispose (GObject *object)
{
  UnsootFormDraft *self = UNSOOT_FORM_DRAFT (object);

  g_clear_handle_id (&self->keep_id, g_source_remove);
  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_form_draft_parent_class)->dispose (object);
}

static void
unsoot_form_draft_finalize (GObject *object)
{
  UnsootFormDraft *self = UNSOOT_FORM_DRAFT (object);

  g_ptr_array_unref (self->fields);
  g_free (self->place);
  g_free (self->dropped);
  G_OBJECT_CLASS (unsoot_form_draft_parent_class)->finalize (object);
}

static void
unsoot_form_draft_class_init (UnsootFormDraftClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_form_draft_dispose;
  G_OBJECT_CLASS (klass)->finalize = unsoot_form_draft_finalize;
  signals[HANDS_CHANGED] = g_signal_new ("hands-changed", G_TYPE_FROM_CLASS (klass),
                                         G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_form_draft_init (UnsootFormDraft *self)
{
  self->fields = g_ptr_array_new_with_free_func (field_free);
  self->says = gtk_label_new (NULL);
  self->button = gtk_button_new ();
  gtk_box_set_spacing (GTK_BOX (self), 12);
  gtk_label_set_wrap (GTK_LABEL (self->says), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->says), 0);
  gtk_widget_set_hexpand (self->says, TRUE);
  gtk_widget_add_css_class (self->says, "caption");
  gtk_widget_add_css_class (self->says, "accent");
  gtk_widget_add_css_class (self->button, "flat");
  gtk_widget_add_css_class (self->button, "caption");
  gtk_widget_set_valign (self->button, GTK_ALIGN_CENTER);
  g_signal_connect_swapped (self->button, "clicked", G_CALLBACK (button_cb), self);
  gtk_box_append (GTK_BOX (self), self->says);
  gtk_box_append (GTK_BOX (self), self->button);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
unsoot_form_draft_new (void)
{
  return g_object_new (UNSOOT_TYPE_FORM_DRAFT, NULL);
}

void
unsoot_form_draft_watch_as (UnsootFormDraft *self, const char *name, const char *label,
                            GtkWidget *widget, const UnsootFieldWays *ways)
{
  Field *field;

  g_return_if_fail (UNSOOT_IS_FORM_DRAFT (self));
  g_return_if_fail (!is_secret (widget));
  field = g_new0 (Field, 1);
  field->name = name;
  field->label = g_strdup (label);
  field->field = widget;
  field->ways = ways;
  g_ptr_array_add (self->fields, field);
  g_signal_connect_object (widget, ways->signal, G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
}

void
unsoot_form_draft_watch (UnsootFormDraft *self, const char *name, const char *label,
                         GtkWidget *field)
{
  unsoot_form_draft_watch_as (self, name, label, field,
                              GTK_IS_DROP_DOWN (field)      ? &choice_ways
                              : GTK_IS_CHECK_BUTTON (field) ? &check_ways
                                                            : &entry_ways);
}

void
unsoot_form_draft_watch_always (UnsootFormDraft *self, const char *name)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      Field *field = g_ptr_array_index (self->fields, i);
      field->always |= g_str_equal (field->name, name);
    }
}

void
unsoot_form_draft_settle (UnsootFormDraft *self)
{
  for (guint i = 0; i < self->fields->len; i++)
    {
      Field *field = g_ptr_array_index (self->fields, i);

      g_free (field->first);
      g_free (field->base);
      field->first = field_text (field);
      field->base = g_strdup (field->first);
    }
  changed_cb (self);
}

void
unsoot_form_draft_begin (UnsootFormDraft *self, UnsootSession *session, const char *place,
                         gint64 record)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);

  g_return_if_fail (UNSOOT_IS_FORM_DRAFT (self) && self->place == NULL);
  unsoot_form_draft_settle (self);
  self->session = g_object_ref (session);
  self->place = g_strdup (place);
  self->record = record;
  self->staff_id = person != NULL ? person->id : 0;
  /* Of nobody nothing is kept: nobody carries anything out either. */
  if (person == NULL)
    return;
  g_signal_connect_object (session, "notify::person", G_CALLBACK (person_changed_cb), self,
                           G_CONNECT_SWAPPED);
  /* This line itself is mapped only while it says something. */
  g_signal_connect_object (gtk_widget_get_parent (GTK_WIDGET (self)), "unmap",
                           G_CALLBACK (unsoot_form_draft_keep), self, G_CONNECT_SWAPPED);
  unsoot_draft_file_load (&self->slot, session, self->staff_id, place, record, loaded_cb, self);
}

void
unsoot_form_draft_done (UnsootFormDraft *self)
{
  g_clear_handle_id (&self->keep_id, g_source_remove);
  unsoot_store_slot_clear (&self->slot);
  if (self->place == NULL || self->staff_id == 0)
    return;
  self->stored = FALSE;
  unsoot_draft_file_put (self->session, self->staff_id, self->place, self->record, NULL);
}

static void
hands_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkWindow *below = gtk_window_get_transient_for (GTK_WINDOW (widget));

  gtk_window_close (GTK_WINDOW (widget));
  if (below != NULL)
    gtk_widget_activate_action (GTK_WIDGET (below), "win.hands", NULL);
}

void
unsoot_form_draft_add_hands (GtkWidgetClass *window_class)
{
  gtk_widget_class_install_action (window_class, "form.hands", NULL, hands_action);
  gtk_widget_class_add_binding_action (window_class, GDK_KEY_l, GDK_CONTROL_MASK, "form.hands",
                                       NULL);
}
