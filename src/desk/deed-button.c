/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "deed-button.h"

#include "access.h"

static const char SESSION[] = "deed-session", DEED[] = "deed", BARRED[] = "deed-barred";

static void
refresh (GtkWidget *button)
{
  UnsootSession *session = g_object_get_data (G_OBJECT (button), SESSION);
  const UnsootDeed deed = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), DEED));
  const char *barred = g_object_get_data (G_OBJECT (button), BARRED);
  g_autofree char *refusal = NULL;
  UnsootRole role;

  if (unsoot_session_get_role (session, &role))
    refusal = unsoot_role_refusal (role, deed);
  if (refusal == NULL)
    refusal = g_strdup (barred);
  gtk_widget_set_sensitive (button, refusal == NULL);
  gtk_widget_set_tooltip_text (button, refusal);
  unsoot_access_describe (button, refusal != NULL ? refusal : "");
}

GtkWidget *
unsoot_deed_button_new (UnsootSession *session, UnsootDeed deed, const char *label,
                        const char *about)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  g_autofree char *name
      = about != NULL ? g_strdup_printf ("%s: %s", label, about) : g_strdup (label);

  g_object_set_data (G_OBJECT (button), DEED, GUINT_TO_POINTER (deed));
  g_object_set_data_full (G_OBJECT (button), SESSION, g_object_ref (session), g_object_unref);
  g_signal_connect_object (session, "notify::person", G_CALLBACK (refresh), button,
                           G_CONNECT_SWAPPED);
  gtk_widget_set_valign (button, GTK_ALIGN_CENTER);
  unsoot_access_name (button, name);
  refresh (button);
  return button;
}

void
unsoot_deed_button_draw (GtkWidget *button, const char *icon, const char *label)
{
  gtk_button_set_icon_name (GTK_BUTTON (button), icon);
  gtk_widget_add_css_class (button, "flat");
  unsoot_access_name_inside (button, label);
  if (gtk_widget_get_sensitive (button))
    gtk_widget_set_tooltip_text (button, label);
}

void
unsoot_deed_button_suggest (GtkWidget *button, gboolean suggest)
{
  if (suggest && gtk_widget_get_sensitive (button))
    gtk_widget_add_css_class (button, "suggested-action");
  else
    gtk_widget_remove_css_class (button, "suggested-action");
}

void
unsoot_deed_button_bar (GtkWidget *button, const char *reason)
{
  g_object_set_data_full (G_OBJECT (button), BARRED, g_strdup (reason), g_free);
  refresh (button);
}
