/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scan-keys.h"

#include "scan-burst.h"

typedef struct
{
  GtkWidget *widget; /* borrowed: it owns the controller that owns this */
  UnsootScanFunc func;
  gpointer user_data;

  UnsootScanBurst burst;
  GtkEditable *field; /* weak; where the burst is typed into */
  char *before;       /* what stood there when it began */
} ScanKeys;

static void
scan_keys_free (gpointer data)
{
  ScanKeys *self = data;

  g_clear_weak_pointer (&self->field);
  g_free (self->before);
  g_free (self);
}

static void
note_field (ScanKeys *self)
{
  GtkRoot *root = gtk_widget_get_root (self->widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  g_clear_pointer (&self->before, g_free);
  g_set_weak_pointer (&self->field, GTK_IS_EDITABLE (focus) ? GTK_EDITABLE (focus) : NULL);
  self->burst.no_field = self->field == NULL;
  if (self->field != NULL)
    self->before = g_strdup (gtk_editable_get_text (self->field));
}

static void
restore_field (ScanKeys *self)
{
  if (self->field != NULL)
    gtk_editable_set_text (self->field, self->before);
  g_clear_weak_pointer (&self->field);
}

static gboolean
take_return (ScanKeys *self, guint32 when)
{
  g_autofree char *code = unsoot_scan_burst_return (&self->burst, when);

  if (code == NULL)
    return GDK_EVENT_PROPAGATE;
  restore_field (self);
  self->func (code, self->user_data);
  return GDK_EVENT_STOP;
}

static gboolean
key_cb (GtkEventControllerKey *keys, guint keyval, guint keycode, GdkModifierType modifiers,
        ScanKeys *self)
{
  const guint32 when = gtk_event_controller_get_current_event_time (GTK_EVENT_CONTROLLER (keys));
  const gunichar letter = gdk_keyval_to_unicode (keyval);

  if (keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter || keyval == GDK_KEY_Linefeed)
    return take_return (self, when);
  if (letter != 0 && g_unichar_isgraph (letter)
      && (modifiers & (GDK_CONTROL_MASK | GDK_ALT_MASK)) == 0)
    {
      if (unsoot_scan_burst_is_idle (&self->burst, when))
        note_field (self);
      unsoot_scan_burst_letter (&self->burst, letter, when);
    }
  return GDK_EVENT_PROPAGATE;
}

void
unsoot_scan_keys_listen (GtkWidget *widget, UnsootScanFunc func, gpointer user_data)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  ScanKeys *self = g_new0 (ScanKeys, 1);

  self->widget = widget;
  self->func = func;
  self->user_data = user_data;
  g_object_set_data_full (G_OBJECT (keys), "scan-keys", self, scan_keys_free);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  gtk_widget_add_controller (widget, keys);
}
