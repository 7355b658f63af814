/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "access.h"

void
unsoot_access_name (GtkWidget *widget, const char *name)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
unsoot_access_name_row (GtkWidget *row, const char *name)
{
  gtk_accessible_reset_relation (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_RELATION_LABELLED_BY);
  unsoot_access_name (row, name);
}

void
unsoot_access_describe (GtkWidget *widget, const char *description)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  description, -1);
}

/* What a drop-down shows of its choice: it takes the keyboard, and is called after its class. */
static gboolean
is_choice_shown (GtkWidget *widget)
{
  return g_str_equal (G_OBJECT_TYPE_NAME (widget), "GtkListItemWidget");
}

static gboolean
is_stopped_at (GtkWidget *widget)
{
  return is_choice_shown (widget) || GTK_IS_IMAGE (widget) || GTK_IS_BUTTON (widget)
         || GTK_IS_LIST_VIEW (widget) || GTK_IS_TEXT (widget) || GTK_IS_LIST_BOX_ROW (widget)
         || GTK_IS_SEARCH_ENTRY (widget) || GTK_IS_MENU_BUTTON (widget)
         || gtk_accessible_get_accessible_role (GTK_ACCESSIBLE (widget))
                == GTK_ACCESSIBLE_ROLE_LIST_ITEM;
}

void
unsoot_access_name_inside (GtkWidget *row, const char *name)
{
  for (GtkWidget *child = gtk_widget_get_first_child (row); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      if (is_stopped_at (child)
          && !gtk_test_accessible_has_property (GTK_ACCESSIBLE (child),
                                                GTK_ACCESSIBLE_PROPERTY_LABEL))
        unsoot_access_name (child, name);
      unsoot_access_name_inside (child, name);
    }
}

static void
visible_child_cb (GtkStack *stack, GParamSpec *pspec, gpointer user_data)
{
  GtkWidget *seen = gtk_stack_get_visible_child (stack);

  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (stack)); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    gtk_accessible_update_state (GTK_ACCESSIBLE (child), GTK_ACCESSIBLE_STATE_HIDDEN, child != seen,
                                 -1);
}

void
unsoot_access_stack (GtkStack *stack)
{
  g_signal_connect (stack, "notify::visible-child", G_CALLBACK (visible_child_cb), NULL);
  visible_child_cb (stack, NULL, NULL);
}
