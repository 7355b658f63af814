/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-line.h"

GtkWidget *
unsoot_bay_line_new (const char *text, const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

GtkWidget *
unsoot_bay_line_narrow (GtkWidget *line, int characters)
{
  gtk_label_set_width_chars (GTK_LABEL (line), characters);
  gtk_label_set_max_width_chars (GTK_LABEL (line), characters * 2);
  return line;
}
