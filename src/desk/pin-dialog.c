/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pin-dialog.h"

#include <glib/gi18n-lib.h>

#include "staff.h"
#include "store-call.h"
#include "window.h"

struct _UnsootPinDialog
{
  AdwWindow parent_instance;

  /* template */
  GtkLabel *about;
  GtkPasswordEntry *pin;
  GtkPasswordEntry *again;
  GtkLabel *trouble;
  GtkButton *set;

  /* owned */
  UnsootSession *session;
  char *name;
  UnsootStoreSlot slot;

  gint64 staff_id;
};

G_DEFINE_FINAL_TYPE (UnsootPinDialog, unsoot_pin_dialog, ADW_TYPE_WINDOW)

static void
say_trouble (UnsootPinDialog *self, const char *sentence)
{
  gtk_label_set_text (self->trouble, sentence != NULL ? sentence : "");
  gtk_widget_set_visible (GTK_WIDGET (self->trouble), sentence != NULL);
}

typedef struct
{
  UnsootActing who;
  gint64 staff_id;
  char *pin;
} Order;

static void
order_free (gpointer data)
{
  Order *order = data;

  g_free (order->pin);
  g_free (order);
}

static gpointer
set_pin (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const Order *order = data;

  unsoot_staff_set_pin (db, &order->who, order->staff_id, order->pin, error);
  return NULL;
}

static void
pin_set (gpointer owner, gpointer result, const GError *error)
{
  UnsootPinDialog *self = owner;
  GtkWindow *over = gtk_window_get_transient_for (GTK_WINDOW (self));

  gtk_widget_set_sensitive (GTK_WIDGET (self->set), TRUE);
  if (error != NULL)
    {
      say_trouble (self, error->message);
      return;
    }
  if (UNSOOT_IS_WINDOW (over))
    {
      g_autofree char *text = g_strdup_printf (_ ("%s has a new PIN"), self->name);
      unsoot_window_toast (UNSOOT_WINDOW (over), text);
    }
  gtk_window_close (GTK_WINDOW (self));
}

static void
set_cb (UnsootPinDialog *self)
{
  const char *pin = gtk_editable_get_text (GTK_EDITABLE (self->pin));
  Order *order;

  if (g_strcmp0 (pin, gtk_editable_get_text (GTK_EDITABLE (self->again))) != 0)
    {
      say_trouble (self, _ ("The two are not the same. Type it again."));
      gtk_editable_set_text (GTK_EDITABLE (self->again), "");
      gtk_widget_grab_focus (GTK_WIDGET (self->again));
      return;
    }
  order = g_new0 (Order, 1);
  order->who = unsoot_session_acting (self->session);
  order->staff_id = self->staff_id;
  order->pin = g_strdup (pin);
  gtk_widget_set_sensitive (GTK_WIDGET (self->set), FALSE);
  say_trouble (self, NULL);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), set_pin, order,
                          order_free, NULL, pin_set, self);
}

static void
unsoot_pin_dialog_dispose (GObject *object)
{
  UnsootPinDialog *self = UNSOOT_PIN_DIALOG (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  g_clear_pointer (&self->name, g_free);
  G_OBJECT_CLASS (unsoot_pin_dialog_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PIN_DIALOG);
}

static void
unsoot_pin_dialog_class_init (UnsootPinDialogClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_pin_dialog_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/pin-dialog.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPinDialog, about);
  gtk_widget_class_bind_template_child (widget_class, UnsootPinDialog, pin);
  gtk_widget_class_bind_template_child (widget_class, UnsootPinDialog, again);
  gtk_widget_class_bind_template_child (widget_class, UnsootPinDialog, trouble);
  gtk_widget_class_bind_template_child (widget_class, UnsootPinDialog, set);
  gtk_widget_class_bind_template_callback (widget_class, set_cb);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
unsoot_pin_dialog_init (UnsootPinDialog *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

void
unsoot_pin_dialog_open (GtkWidget *over, UnsootSession *session, gint64 staff_id, const char *name)
{
  UnsootPinDialog *self = g_object_new (UNSOOT_TYPE_PIN_DIALOG, "transient-for",
                                        GTK_WINDOW (gtk_widget_get_root (over)), NULL);

  self->session = g_object_ref (session);
  self->staff_id = staff_id;
  self->name = g_strdup (name);
  gtk_label_set_text (self->about, name);
  gtk_window_present (GTK_WINDOW (self));
  gtk_widget_grab_focus (GTK_WIDGET (self->pin));
}
