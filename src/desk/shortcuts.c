/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shortcuts.h"

#include <glib/gi18n-lib.h>

#include "access.h"

GtkWidget *
unsoot_shortcuts_new (GtkWindow *over)
{
  g_autoptr (GtkBuilder) builder
      = gtk_builder_new_from_resource ("/org/unsoot/Unsoot/ui/shortcuts.ui");
  GtkWidget *window = GTK_WIDGET (gtk_builder_get_object (builder, "shortcuts"));

  gtk_window_set_transient_for (GTK_WINDOW (window), over);
  /* The toolkit makes what is in it, and leaves it nameless. */
  unsoot_access_name (window, _ ("Keyboard shortcuts"));
  unsoot_access_name_inside (window, _ ("Keyboard shortcuts"));
  return window;
}
