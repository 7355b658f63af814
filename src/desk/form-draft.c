/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "form-draft.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "draft-file.h"
#include "format.h"

enum
{
  KEEP_AFTER_MS = 600
};

struct _UnsootFormDraft
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *says;
  GtkWidget *button;

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;
  UnsootDraftFields *fields;
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

void
unsoot_form_draft_keep (UnsootFormDraft *self)
{
  char *text;

  if (self->keep_id == 0)
    return;
  g_clear_handle_id (&self->keep_id, g_source_remove);
  text = unsoot_draft_fields_dup_typed (self->fields);
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

static gboolean
restore (UnsootFormDraft *self, const char *json, gint64 at)
{
  g_autoptr (GString) theirs = g_string_new (NULL);
  g_autofree char *when = NULL, *sentence = NULL;
  gboolean any;

  self->setting = TRUE;
  any = unsoot_draft_fields_put_back (self->fields, json, theirs);
  self->setting = FALSE;
  if (!any)
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
  typed = unsoot_draft_fields_dup_typed (self->fields);
  if (typed != NULL)
    return;
  /* The record has it by now, or it can't be read: there is nothing to keep. */
  self->stored = FALSE;
  unsoot_draft_file_put (self->session, self->staff_id, self->place, self->record, NULL);
}

static void
drop (UnsootFormDraft *self)
{
  self->dropped = unsoot_draft_fields_dup_typed (self->fields);
  self->setting = TRUE;
  unsoot_draft_fields_reset (self->fields);
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

  unsoot_draft_fields_free (self->fields);
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
  self->fields = unsoot_draft_fields_new ();
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
                            GtkWidget *field, const UnsootFieldWays *ways)
{
  g_return_if_fail (UNSOOT_IS_FORM_DRAFT (self));
  unsoot_draft_fields_add (self->fields, name, label, field, ways, G_CALLBACK (changed_cb), self);
}

void
unsoot_form_draft_watch (UnsootFormDraft *self, const char *name, const char *label,
                         GtkWidget *field)
{
  unsoot_form_draft_watch_as (self, name, label, field, NULL);
}

void
unsoot_form_draft_watch_always (UnsootFormDraft *self, const char *name)
{
  unsoot_draft_fields_keep_always (self->fields, name);
}

void
unsoot_form_draft_settle (UnsootFormDraft *self)
{
  unsoot_draft_fields_settle (self->fields);
  changed_cb (self);
}

static void
listen (UnsootFormDraft *self)
{
  g_signal_connect_object (self->session, "notify::person", G_CALLBACK (person_changed_cb), self,
                           G_CONNECT_SWAPPED);
  /* This line itself is mapped only while it says something. */
  g_signal_connect_object (gtk_widget_get_parent (GTK_WIDGET (self)), "unmap",
                           G_CALLBACK (unsoot_form_draft_keep), self, G_CONNECT_SWAPPED);
}

void
unsoot_form_draft_begin (UnsootFormDraft *self, UnsootSession *session, const char *place,
                         gint64 record)
{
  const UnsootStaffRow *person = unsoot_session_get_person (session);

  const gboolean anew = self->session != NULL;

  g_return_if_fail (UNSOOT_IS_FORM_DRAFT (self) && self->place == NULL);
  unsoot_form_draft_settle (self);
  g_set_object (&self->session, session);
  self->place = g_strdup (place);
  self->record = record;
  self->staff_id = person != NULL ? person->id : 0;
  /* Of nobody nothing is kept: nobody carries anything out either. */
  if (person == NULL)
    return;
  if (!anew)
    listen (self);
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

void
unsoot_form_draft_leave (UnsootFormDraft *self)
{
  if (self->place == NULL)
    return;
  unsoot_form_draft_keep (self);
  unsoot_store_slot_clear (&self->slot);
  g_clear_pointer (&self->place, g_free);
  g_clear_pointer (&self->dropped, g_free);
  self->stored = FALSE;
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
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
