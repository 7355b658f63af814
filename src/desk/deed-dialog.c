/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-dialog.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "deed-call.h"
#include "deed-entry.h"
#include "form-draft.h"

enum
{
  PICTURE_HEIGHT = 220
};

struct _UnsootDeedDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *about;
  GtkBox *fields;
  UnsootFormDraft *draft;
  GtkLabel *trouble;
  GtkButton *cancel;
  GtkButton *verb;

  /* owned */
  UnsootSession *session;
  GtkWidget *over;
  char *part; /* of the record; NULL: the whole */

  UnsootDeedEntry *entries[UNSOOT_DEED_FIELDS]; /* borrowed */
  UnsootPicture picture;                        /* owned; its jpeg may be NULL */
  const UnsootDeedForm *form;
  gint64 record;
  gint64 version;
  gboolean leaving; /* as soon as the store has answered */
};

G_DEFINE_FINAL_TYPE (UnsootDeedDialog, unsoot_deed_dialog, ADW_TYPE_WINDOW)

static char *
entry_text (GtkWidget *entry)
{
  return unsoot_deed_entry_dup_text (UNSOOT_DEED_ENTRY (entry));
}

static void
entry_set (GtkWidget *entry, const char *text)
{
  unsoot_deed_entry_set_text (UNSOOT_DEED_ENTRY (entry), text);
}

/* What is typed is what is read; of a choice there is a number. */
static const UnsootFieldWays typed_ways = { "edited", entry_text, entry_set, TRUE };
static const UnsootFieldWays chosen_ways = { "edited", entry_text, entry_set, FALSE };

static void
say_trouble (UnsootDeedDialog *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}

static void
edited_cb (UnsootDeedDialog *self)
{
  say_trouble (self, NULL);
}

static void
done_cb (GtkWidget *owner, const GError *error)
{
  UnsootDeedDialog *self = UNSOOT_DEED_DIALOG (owner);

  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), TRUE);
  if (error != NULL)
    {
      say_trouble (self, error->message);
      if (self->leaving)
        gtk_window_close (GTK_WINDOW (self));
      return;
    }
  unsoot_form_draft_done (self->draft);
  gtk_window_close (GTK_WINDOW (self));
}

static void
verb_cb (UnsootDeedDialog *self)
{
  g_autoptr (UnsootDeedOrder) order = unsoot_deed_order_new (self->record);
  const char *currency = unsoot_session_get_shop (self->session)->currency;
  UnsootDeedEntry *wrong = NULL;

  if (!gtk_widget_get_sensitive (GTK_WIDGET (self->verb)))
    return;
  order->version = self->version;
  order->picture = self->picture;
  if (order->picture.jpeg != NULL)
    g_bytes_ref (order->picture.jpeg);
  for (gsize i = 0; i < self->form->n_fields; i++)
    if (!unsoot_deed_entry_read (self->entries[i], currency, &order->values[i]) && wrong == NULL)
      wrong = self->entries[i];
  if (wrong != NULL)
    {
      unsoot_deed_entry_focus (wrong);
      return;
    }
  say_trouble (self, NULL);
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), FALSE);
  unsoot_deed_call (self->over, self->session, self->form, g_steal_pointer (&order), done_cb,
                    GTK_WIDGET (self));
}

/* What is under way is waited for: only its answer tells whether the draft is kept. */
static gboolean
unsoot_deed_dialog_close_request (GtkWindow *window)
{
  return !gtk_widget_get_sensitive (GTK_WIDGET (UNSOOT_DEED_DIALOG (window)->verb))
         || GTK_WINDOW_CLASS (unsoot_deed_dialog_parent_class)->close_request (window);
}

static void
hands_changed_cb (UnsootDeedDialog *self)
{
  self->leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
unsoot_deed_dialog_dispose (GObject *object)
{
  UnsootDeedDialog *self = UNSOOT_DEED_DIALOG (object);

  g_clear_object (&self->session);
  g_clear_object (&self->over);
  g_clear_pointer (&self->part, g_free);
  unsoot_picture_clear (&self->picture);
  G_OBJECT_CLASS (unsoot_deed_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_DEED_DIALOG);
}

static void
unsoot_deed_dialog_class_init (UnsootDeedDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_deed_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = unsoot_deed_dialog_close_request;
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/deed-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, about);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, fields);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, draft);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, cancel);
  gtk_widget_class_bind_template_child (widget_class, UnsootDeedDialog, verb);
  gtk_widget_class_bind_template_callback (widget_class, verb_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  unsoot_form_draft_add_hands (widget_class);
}

static void
unsoot_deed_dialog_init (UnsootDeedDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->draft, "hands-changed", G_CALLBACK (hands_changed_cb), self);
}

static void
add_field (UnsootDeedDialog *self, gsize i)
{
  const UnsootDeedField *field = &self->form->fields[i];
  GtkWidget *entry = unsoot_deed_entry_new (field);

  self->entries[i] = UNSOOT_DEED_ENTRY (entry);
  gtk_box_append (self->fields, entry);
  g_signal_connect_swapped (entry, "edited", G_CALLBACK (edited_cb), self);
  /* Return never does what can't be undone at once. */
  if (!self->form->destroys)
    g_signal_connect_swapped (entry, "activate", G_CALLBACK (verb_cb), self);
  unsoot_form_draft_watch_as (self->draft, field->label, _ (field->label), entry,
                              field->kind == UNSOOT_ASK_CHOICE ? &chosen_ways : &typed_ways);
}

static void
begin_draft (UnsootDeedDialog *self)
{
  g_autofree char *place = self->part != NULL
                               ? g_strdup_printf ("%s %s", self->form->slug, self->part)
                               : g_strdup (self->form->slug);

  unsoot_form_draft_begin (self->draft, self->session, place, self->record);
}

UnsootDeedDialog *
unsoot_deed_dialog_new (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form,
                        gint64 record)
{
  UnsootDeedDialog *self
      = g_object_new (UNSOOT_TYPE_DEED_DIALOG, "transient-for",
                      GTK_WINDOW (gtk_widget_get_root (over)), "title", _ (form->title), NULL);

  self->session = g_object_ref (session);
  /* Pages are made anew while one types; what holds them stays. */
  self->over = g_object_ref (gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY));
  self->form = form;
  self->record = record;
  gtk_button_set_label (self->verb, _ (form->verb));
  gtk_widget_add_css_class (GTK_WIDGET (self->verb),
                            form->destroys ? "destructive-action" : "suggested-action");
  for (gsize i = 0; i < form->n_fields; i++)
    add_field (self, i);
  return self;
}

void
unsoot_deed_dialog_say (UnsootDeedDialog *self, const char *sentence)
{
  const char *title = gtk_window_get_title (GTK_WINDOW (self));

  gtk_label_set_text (self->about, sentence);
  gtk_widget_set_visible (GTK_WIDGET (self->about), g_strcmp0 (sentence, title) != 0);
}

void
unsoot_deed_dialog_set_text (UnsootDeedDialog *self, gsize field, const char *text)
{
  unsoot_deed_entry_set_text (self->entries[field], text != NULL ? text : "");
}

void
unsoot_deed_dialog_add_choice (UnsootDeedDialog *self, gsize field, gint64 number,
                               const char *words)
{
  unsoot_deed_entry_add_choice (self->entries[field], number, words);
}

void
unsoot_deed_dialog_set_choice (UnsootDeedDialog *self, gsize field, gint64 number)
{
  unsoot_deed_entry_set_choice (self->entries[field], number);
}

void
unsoot_deed_dialog_set_version (UnsootDeedDialog *self, gint64 version)
{
  self->version = version;
}

void
unsoot_deed_dialog_set_part (UnsootDeedDialog *self, const char *part)
{
  g_free (self->part);
  self->part = g_strdup (part);
}

void
unsoot_deed_dialog_attach (UnsootDeedDialog *self, const UnsootPicture *picture)
{
  g_autoptr (GdkTexture) texture = gdk_texture_new_from_bytes (picture->jpeg, NULL);
  GtkWidget *shown = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));

  self->picture = *picture;
  g_bytes_ref (self->picture.jpeg);
  gtk_widget_set_size_request (shown, -1, PICTURE_HEIGHT);
  unsoot_access_name (shown, _ ("The picture"));
  gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (GTK_WIDGET (self->fields))), shown,
                              GTK_WIDGET (self->about));
}

void
unsoot_deed_dialog_open (UnsootDeedDialog *self)
{
  if (self->form->n_fields > 0)
    begin_draft (self);
  gtk_window_present (GTK_WINDOW (self));
  if (self->form->n_fields > 0)
    unsoot_deed_entry_focus (self->entries[0]);
}

void
unsoot_deed_do (GtkWidget *over, UnsootSession *session, const UnsootDeedForm *form, gint64 record)
{
  unsoot_deed_call (over, session, form, unsoot_deed_order_new (record), NULL, NULL);
}
