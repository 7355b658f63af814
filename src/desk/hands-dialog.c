/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands-dialog.h"

#include <glib/gi18n-lib.h>

#include "catalogue.h"
#include "staff.h"
#include "store-call.h"

struct _UnsootHandsDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkListBox *people;
  GtkPasswordEntry *pin;
  GtkLabel *trouble;
  GtkButton *take;

  /* owned */
  UnsootSession *session;
  GPtrArray *staff; /* UnsootStaffRow, as the rows stand */
  UnsootStoreSlot list_slot;
  UnsootStoreSlot sign_in_slot;
};

G_DEFINE_FINAL_TYPE (UnsootHandsDialog, unsoot_hands_dialog, ADW_TYPE_WINDOW)

typedef struct
{
  gint64 staff_id;
  char *pin;
} Attempt;

static void
attempt_free (gpointer data)
{
  Attempt *attempt = data;

  g_free (attempt->pin);
  g_free (attempt);
}

static gpointer
sign_in (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Attempt *attempt = data;

  return unsoot_staff_sign_in (db, attempt->staff_id, attempt->pin, error);
}

static gpointer
list_staff (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_staff_list (db, error);
}

static void
show_trouble (UnsootHandsDialog *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}

static void
signed_in (gpointer owner, gpointer result, const GError *error)
{
  UnsootHandsDialog *self = owner;
  g_autoptr (UnsootStaffRow) person = result;

  gtk_widget_set_sensitive (GTK_WIDGET (self->take), TRUE);
  if (error != NULL)
    {
      show_trouble (self, error->message);
      gtk_editable_set_text (GTK_EDITABLE (self->pin), "");
      gtk_widget_grab_focus (GTK_WIDGET (self->pin));
      return;
    }
  unsoot_session_set_person (self->session, person);
  gtk_window_close (GTK_WINDOW (self));
}

static void
take_cb (GtkWidget *widget, UnsootHandsDialog *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->people);
  const UnsootStaffRow *person;
  Attempt *attempt;

  if (row == NULL)
    {
      show_trouble (self, _ ("Choose who you are, then type your PIN."));
      return;
    }
  person = g_ptr_array_index (self->staff, (guint) gtk_list_box_row_get_index (row));
  attempt = g_new0 (Attempt, 1);
  attempt->staff_id = person->id;
  attempt->pin = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->pin)));
  gtk_widget_set_sensitive (GTK_WIDGET (self->take), FALSE);
  show_trouble (self, NULL);
  unsoot_store_slot_call (&self->sign_in_slot, unsoot_session_get_store (self->session), sign_in,
                          attempt, attempt_free, (GDestroyNotify) unsoot_staff_row_free, signed_in,
                          self);
}

static void
chosen_cb (GtkListBox *people, GtkListBoxRow *row, UnsootHandsDialog *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->pin));
}

/* The PINs of the invented shop are no secret: they are how a newcomer tries the roles. */
static const char *
demo_pin (const UnsootStaffRow *person)
{
  for (gsize i = 0; i < unsoot_demo_n_staff; i++)
    if (g_strcmp0 (unsoot_demo_staff[i].name, person->name) == 0)
      return unsoot_demo_staff[i].pin;
  return NULL;
}

static GtkWidget *
person_row_new (UnsootHandsDialog *self, const UnsootStaffRow *person)
{
  GtkWidget *row = adw_action_row_new (), *avatar = adw_avatar_new (32, person->name, TRUE);
  const char *pin = unsoot_session_is_demo (self->session) ? demo_pin (person) : NULL;
  g_autofree char *name = g_markup_escape_text (person->name, -1);
  g_autofree char *detail = NULL;
  UnsootRole role;

  gtk_accessible_update_state (GTK_ACCESSIBLE (avatar), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), name);
  if (unsoot_role_find (person->role, &role))
    /* Translators: a role and, in the invented shop, its PIN: “Service advisor · PIN 2222” */
    detail = pin != NULL ? g_strdup_printf (_ ("%s · PIN %s"), unsoot_role_words (role), pin)
                         : g_strdup (unsoot_role_words (role));
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), detail != NULL ? detail : "");
  adw_action_row_add_prefix (ADW_ACTION_ROW (row), avatar);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  return row;
}

static void
staff_listed (gpointer owner, gpointer result, const GError *error)
{
  UnsootHandsDialog *self = owner;
  g_autoptr (GPtrArray) staff = result;
  const UnsootStaffRow *here = unsoot_session_get_person (self->session);
  int chosen = -1;

  if (error != NULL)
    {
      show_trouble (self, error->message);
      gtk_window_present (GTK_WINDOW (self));
      return;
    }
  g_ptr_array_set_free_func (staff, NULL);
  for (guint i = 0; i < staff->len; i++)
    {
      UnsootStaffRow *person = g_ptr_array_index (staff, i);
      if (!person->active)
        {
          unsoot_staff_row_free (person);
          continue;
        }
      g_ptr_array_add (self->staff, person);
      gtk_list_box_append (self->people, person_row_new (self, person));
      if (chosen < 0 && (here == NULL || here->id != person->id))
        chosen = (int) self->staff->len - 1;
    }
  gtk_list_box_select_row (self->people,
                           gtk_list_box_get_row_at_index (self->people, MAX (chosen, 0)));
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->pin));
}

static void
unsoot_hands_dialog_dispose (GObject *object)
{
  UnsootHandsDialog *self = UNSOOT_HANDS_DIALOG (object);

  unsoot_store_slot_clear (&self->list_slot);
  unsoot_store_slot_clear (&self->sign_in_slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->staff, g_ptr_array_unref);
  G_OBJECT_CLASS (unsoot_hands_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_HANDS_DIALOG);
}

static void
unsoot_hands_dialog_class_init (UnsootHandsDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_hands_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/hands-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootHandsDialog, people);
  gtk_widget_class_bind_template_child (widget_class, UnsootHandsDialog, pin);
  gtk_widget_class_bind_template_child (widget_class, UnsootHandsDialog, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootHandsDialog, take);
  gtk_widget_class_bind_template_callback (widget_class, take_cb);
  gtk_widget_class_bind_template_callback (widget_class, chosen_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
unsoot_hands_dialog_init (UnsootHandsDialog *self)
{
  self->staff = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_staff_row_free);
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWindow *
unsoot_hands_dialog_open (GtkWindow *over, UnsootSession *session)
{
  UnsootHandsDialog *self = g_object_new (UNSOOT_TYPE_HANDS_DIALOG, "transient-for", over, NULL);

  self->session = g_object_ref (session);
  unsoot_store_slot_call (&self->list_slot, unsoot_session_get_store (session), list_staff, NULL,
                          NULL, (GDestroyNotify) g_ptr_array_unref, staff_listed, self);
  return GTK_WINDOW (self);
}
