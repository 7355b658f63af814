/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "form-dialog.h"

#include "access.h"

struct _UnsootFormDialog
{
  AdwWindow parent_instance;

  /* template */
  UnsootFormDraft *draft;
  AdwBin *holder;
  GtkLabel *trouble;
  GtkButton *verb;

  /* owned */
  GtkWidget *toasts; /* of the window below; may be NULL */

  gboolean leaving; /* as soon as the store has answered */
};

enum
{
  APPLY,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootFormDialog, unsoot_form_dialog, ADW_TYPE_WINDOW)

static gboolean
is_busy (UnsootFormDialog *self)
{
  return !gtk_widget_get_sensitive (GTK_WIDGET (self->verb));
}

static void
apply_cb (UnsootFormDialog *self)
{
  if (!is_busy (self))
    g_signal_emit (self, signals[APPLY], 0);
}

static void
apply_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  apply_cb (UNSOOT_FORM_DIALOG (widget));
}

/* What is under way is waited for: only its answer tells whether the draft is kept. */
static gboolean
unsoot_form_dialog_close_request (GtkWindow *window)
{
  return is_busy (UNSOOT_FORM_DIALOG (window))
         || GTK_WINDOW_CLASS (unsoot_form_dialog_parent_class)->close_request (window);
}

static void
hands_changed_cb (UnsootFormDialog *self)
{
  self->leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
unsoot_form_dialog_dispose (GObject *object)
{
  g_clear_object (&UNSOOT_FORM_DIALOG (object)->toasts);
  G_OBJECT_CLASS (unsoot_form_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FORM_DIALOG);
}

static void
unsoot_form_dialog_class_init (UnsootFormDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_form_dialog_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = unsoot_form_dialog_close_request;
  signals[APPLY] = g_signal_new ("apply", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                 NULL, NULL, G_TYPE_NONE, 0);
  g_type_ensure (UNSOOT_TYPE_FORM_DRAFT);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/form-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFormDialog, draft);
  gtk_widget_class_bind_template_child (widget_class, UnsootFormDialog, holder);
  gtk_widget_class_bind_template_child (widget_class, UnsootFormDialog, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootFormDialog, verb);
  gtk_widget_class_bind_template_callback (widget_class, apply_cb);
  gtk_widget_class_install_action (widget_class, "form.apply", NULL, apply_action);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Return, GDK_CONTROL_MASK, "form.apply",
                                       NULL);
  unsoot_form_draft_add_hands (widget_class);
}

static void
unsoot_form_dialog_init (UnsootFormDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->draft, "hands-changed", G_CALLBACK (hands_changed_cb), self);
}

UnsootFormDialog *
unsoot_form_dialog_new (GtkWidget *over, const char *title, const char *verb, GtkWidget *content)
{
  UnsootFormDialog *self
      = g_object_new (UNSOOT_TYPE_FORM_DIALOG, "transient-for",
                      GTK_WINDOW (gtk_widget_get_root (over)), "title", title, NULL);

  /* Pages are made anew while one types; what holds them stays. */
  self->toasts = gtk_widget_get_ancestor (over, ADW_TYPE_TOAST_OVERLAY);
  if (self->toasts != NULL)
    g_object_ref (self->toasts);
  adw_bin_set_child (self->holder, content);
  gtk_button_set_label (self->verb, verb);
  unsoot_access_name (GTK_WIDGET (self->verb), verb);
  return self;
}

UnsootFormDraft *
unsoot_form_dialog_get_draft (UnsootFormDialog *self)
{
  return self->draft;
}

void
unsoot_form_dialog_say (UnsootFormDialog *self, const char *trouble)
{
  gtk_label_set_text (self->trouble, trouble != NULL ? trouble : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), trouble != NULL);
  unsoot_form_dialog_set_busy (self, FALSE);
}

static gboolean
close_cb (gpointer user_data)
{
  gtk_window_close (user_data);
  return G_SOURCE_REMOVE;
}

void
unsoot_form_dialog_set_busy (UnsootFormDialog *self, gboolean busy)
{
  /* What was wrong before may be right now. */
  if (busy)
    gtk_widget_set_visible (GTK_WIDGET (self->trouble), FALSE);
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), !busy);
  /* Not while whoever tells the answer is still at it. */
  if (!busy && self->leaving)
    g_idle_add_full (G_PRIORITY_DEFAULT, close_cb, g_object_ref (self), g_object_unref);
}

void
unsoot_form_dialog_done (UnsootFormDialog *self, const char *said)
{
  g_autofree char *title = g_markup_escape_text (said, -1);

  unsoot_form_draft_done (self->draft);
  if (self->toasts != NULL)
    adw_toast_overlay_add_toast (ADW_TOAST_OVERLAY (self->toasts), adw_toast_new (title));
  gtk_widget_set_sensitive (GTK_WIDGET (self->verb), TRUE);
  gtk_window_close (GTK_WINDOW (self));
}
