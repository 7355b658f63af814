/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "party-box.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "find-row.h"
#include "find.h"
#include "store-call.h"

enum
{
  MOST_OF_A_KIND = 4
};

struct _UnsootPartyBox
{
  GtkBox parent_instance;

  /* borrowed children */
  GtkWidget *entry;
  GtkListBox *results;
  GtkWidget *fresh; /* the button for somebody new */

  /* owned */
  UnsootSession *session;
  UnsootStoreSlot slot;
};

enum
{
  CUSTOMER,
  VEHICLE,
  SOMEBODY_NEW,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootPartyBox, unsoot_party_box, GTK_TYPE_BOX)

static void
clear_results (UnsootPartyBox *self)
{
  GtkListBoxRow *row;

  while ((row = gtk_list_box_get_row_at_index (self->results, 0)) != NULL)
    gtk_list_box_remove (self->results, GTK_WIDGET (row));
  gtk_widget_set_visible (GTK_WIDGET (self->results), FALSE);
}

static void
take (UnsootPartyBox *self, GtkListBoxRow *row)
{
  UnsootFindRow *chosen = UNSOOT_FIND_ROW (row);
  const gboolean vehicle = unsoot_find_row_get_kind (chosen) == UNSOOT_FOUND_VEHICLE;
  const gint64 record = unsoot_find_row_get_record (chosen);

  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  g_signal_emit (self, signals[vehicle ? VEHICLE : CUSTOMER], 0, record);
}

static void
row_activated_cb (GtkListBox *results, GtkListBoxRow *row, UnsootPartyBox *self)
{
  take (self, row);
}

static void
fresh_cb (GtkButton *button, UnsootPartyBox *self)
{
  g_autofree char *typed
      = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry))));

  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  g_signal_emit (self, signals[SOMEBODY_NEW], 0, *typed != '\0' ? typed : NULL);
}

static void
activate_cb (GtkEntry *entry, UnsootPartyBox *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (self->results);

  if (row != NULL)
    take (self, row);
  else if (!unsoot_store_slot_busy (&self->slot))
    fresh_cb (NULL, self);
}

static void
found_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootPartyBox *self = owner;
  g_autoptr (GPtrArray) hits = result;

  clear_results (self);
  for (guint i = 0; hits != NULL && i < hits->len; i++)
    {
      const UnsootFound *hit = g_ptr_array_index (hits, i);
      if (hit->kind == UNSOOT_FOUND_CUSTOMER || hit->kind == UNSOOT_FOUND_VEHICLE)
        gtk_list_box_append (self->results, unsoot_find_row_new (hit));
    }
  gtk_list_box_select_row (self->results, gtk_list_box_get_row_at_index (self->results, 0));
  gtk_widget_set_visible (GTK_WIDGET (self->results),
                          gtk_list_box_get_row_at_index (self->results, 0) != NULL);
}

static gpointer
find (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_find (db, data, MOST_OF_A_KIND, error);
}

static void
changed_cb (GtkEditable *editable, UnsootPartyBox *self)
{
  g_autofree char *typed = g_strstrip (g_strdup (gtk_editable_get_text (editable)));
  g_autofree char *label
      = *typed != '\0'
            /* Translators: a button: begin with somebody who is not known yet; what was typed */
            ? g_strdup_printf (_ ("New customer “%s”"), typed)
            : g_strdup (_ ("New customer"));

  gtk_button_set_label (GTK_BUTTON (self->fresh), label);
  unsoot_access_name (self->fresh, label);
  if (*typed == '\0')
    {
      unsoot_store_slot_clear (&self->slot);
      clear_results (self);
      return;
    }
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), find,
                          g_steal_pointer (&typed), g_free, (GDestroyNotify) g_ptr_array_unref,
                          found_done, self);
}

static gboolean
key_pressed_cb (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state,
                UnsootPartyBox *self)
{
  const int step = key == GDK_KEY_Down || key == GDK_KEY_KP_Down ? 1
                   : key == GDK_KEY_Up || key == GDK_KEY_KP_Up   ? -1
                                                                 : 0;
  GtkListBoxRow *chosen = gtk_list_box_get_selected_row (self->results);
  GtkListBoxRow *row;

  if (step == 0 || chosen == NULL)
    return GDK_EVENT_PROPAGATE;
  row = gtk_list_box_get_row_at_index (self->results,
                                       MAX (gtk_list_box_row_get_index (chosen) + step, 0));
  if (row != NULL)
    gtk_list_box_select_row (self->results, row);
  return GDK_EVENT_STOP;
}

static void
unsoot_party_box_dispose (GObject *object)
{
  UnsootPartyBox *self = UNSOOT_PARTY_BOX (object);

  unsoot_store_slot_clear (&self->slot);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (unsoot_party_box_parent_class)->dispose (object);
}

static void
unsoot_party_box_class_init (UnsootPartyBoxClass *klass)
{
  const GType type = G_TYPE_FROM_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_party_box_dispose;
  signals[CUSTOMER] = g_signal_new ("customer", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                    G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[VEHICLE] = g_signal_new ("vehicle", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                   G_TYPE_NONE, 1, G_TYPE_INT64);
  signals[SOMEBODY_NEW] = g_signal_new ("somebody-new", type, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 1, G_TYPE_STRING);
}

static void
build_entry (UnsootPartyBox *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->entry = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry),
                                  _ ("Part of a name, phone, plate, unit or VIN"));
  gtk_entry_set_icon_from_icon_name (GTK_ENTRY (self->entry), GTK_ENTRY_ICON_PRIMARY,
                                     "system-search-symbolic");
  unsoot_access_name (self->entry, _ ("Who is calling"));
  unsoot_access_name_inside (self->entry, _ ("Who is calling"));
  g_signal_connect (self->entry, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect (self->entry, "activate", G_CALLBACK (activate_cb), self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  gtk_widget_add_controller (self->entry, keys);
  gtk_box_append (GTK_BOX (self), self->entry);
}

static void
unsoot_party_box_init (UnsootPartyBox *self)
{
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self), GTK_ORIENTATION_VERTICAL);
  gtk_box_set_spacing (GTK_BOX (self), 6);
  build_entry (self);
  self->results = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_list_box_set_selection_mode (self->results, GTK_SELECTION_BROWSE);
  gtk_widget_add_css_class (GTK_WIDGET (self->results), "find-results");
  gtk_widget_set_can_focus (GTK_WIDGET (self->results), FALSE);
  unsoot_access_name (GTK_WIDGET (self->results), _ ("Who that could be"));
  g_signal_connect (self->results, "row-activated", G_CALLBACK (row_activated_cb), self);
  gtk_widget_set_visible (GTK_WIDGET (self->results), FALSE);
  gtk_box_append (GTK_BOX (self), GTK_WIDGET (self->results));
  self->fresh = gtk_button_new_with_label (_ ("New customer"));
  gtk_widget_set_halign (self->fresh, GTK_ALIGN_START);
  unsoot_access_name (self->fresh, _ ("New customer"));
  g_signal_connect (self->fresh, "clicked", G_CALLBACK (fresh_cb), self);
  gtk_box_append (GTK_BOX (self), self->fresh);
}

GtkWidget *
unsoot_party_box_new (UnsootSession *session)
{
  UnsootPartyBox *self = g_object_new (UNSOOT_TYPE_PARTY_BOX, NULL);

  self->session = g_object_ref (session);
  return GTK_WIDGET (self);
}

void
unsoot_party_box_focus (UnsootPartyBox *self)
{
  gtk_widget_grab_focus (self->entry);
}
