/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "empty-page.h"

enum
{
  ICON_SIZE = 72,
  SENTENCE_CHARS = 48
};

static GtkWidget *
text_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_max_width_chars (GTK_LABEL (label), SENTENCE_CHARS);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
icon_new (const char *name)
{
  GtkWidget *image = gtk_image_new_from_icon_name (name);

  gtk_image_set_pixel_size (GTK_IMAGE (image), ICON_SIZE);
  gtk_widget_add_css_class (image, "dim-label");
  gtk_accessible_update_state (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  return image;
}

GtkWidget *
unsoot_empty_page_new (const char *icon, const char *title, const char *sentence, const char *verb,
                       const char *action)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);

  gtk_widget_set_halign (box, GTK_ALIGN_CENTER);
  gtk_widget_set_valign (box, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (box, "page");
  gtk_box_append (GTK_BOX (box), icon_new (icon));
  gtk_box_append (GTK_BOX (box), text_new (title, "title-2"));
  gtk_box_append (GTK_BOX (box), text_new (sentence, "body"));
  if (verb != NULL)
    {
      GtkWidget *button = gtk_button_new_with_label (verb);
      gtk_actionable_set_detailed_action_name (GTK_ACTIONABLE (button), action);
      gtk_widget_set_halign (button, GTK_ALIGN_CENTER);
      gtk_widget_set_margin_top (button, 12);
      gtk_widget_add_css_class (button, "pill");
      gtk_widget_add_css_class (button, "suggested-action");
      gtk_box_append (GTK_BOX (box), button);
    }
  return box;
}
