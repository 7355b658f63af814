/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "link-row.h"

#include <adwaita.h>

#include "access.h"

GtkWidget *
unsoot_link_row_new (const char *slug, gint64 record, const char *title, const char *subtitle)
{
  GtkWidget *row = adw_action_row_new ();
  /* Both are markup to the row. */
  g_autofree char *head = g_markup_escape_text (title != NULL ? title : "", -1);
  g_autofree char *foot = g_markup_escape_text (subtitle != NULL ? subtitle : "", -1);
  g_autofree char *name = subtitle != NULL && *subtitle != '\0'
                              ? g_strdup_printf ("%s, %s", title, subtitle)
                              : g_strdup (title);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), head);
  adw_action_row_set_subtitle (ADW_ACTION_ROW (row), foot);
  adw_action_row_set_title_lines (ADW_ACTION_ROW (row), 2);
  adw_action_row_set_subtitle_lines (ADW_ACTION_ROW (row), 2);
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (row), TRUE);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (row), "(sx)", slug, record);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (row), "win.open");
  unsoot_access_name_row (row, name);
  return row;
}

void
unsoot_link_row_add (GtkWidget *row, GtkWidget *widget)
{
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), widget);
}

void
unsoot_link_row_add_text (GtkWidget *row, const char *text)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_widget_add_css_class (label, "figures");
  unsoot_link_row_add (row, label);
}

GtkWidget *
unsoot_link_list_new (const char *name)
{
  GtkWidget *list = gtk_list_box_new ();

  gtk_list_box_set_selection_mode (GTK_LIST_BOX (list), GTK_SELECTION_NONE);
  gtk_widget_add_css_class (list, "links");
  unsoot_access_name (list, name);
  return list;
}
