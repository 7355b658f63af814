/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-cautions.h"

#include "bay-line.h"
#include "caution-sheet.h"

enum
{
  COLUMNS = 3,
  WIDTH = 20 /* characters */
};

static GtkWidget *
caution_new (UnsootCaution caution)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *icon = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
  GtkWidget *text = unsoot_bay_line_new (unsoot_caution_text (caution), "text-body");

  gtk_image_set_pixel_size (GTK_IMAGE (icon), 24);
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_accessible_update_state (GTK_ACCESSIBLE (icon), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), unsoot_bay_line_new (unsoot_caution_title (caution), "heading"));
  gtk_box_append (GTK_BOX (words), unsoot_bay_line_narrow (text, WIDTH));
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), words);
  gtk_widget_add_css_class (box, "caution");
  return box;
}

GtkWidget *
unsoot_bay_cautions_new (guint cautions)
{
  GtkWidget *grid = gtk_grid_new ();
  int n = 0;

  gtk_grid_set_column_homogeneous (GTK_GRID (grid), TRUE);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (grid), 18);
  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if ((cautions & (1u << i)) != 0)
      {
        gtk_grid_attach (GTK_GRID (grid), caution_new ((UnsootCaution) (1u << i)), n % COLUMNS,
                         n / COLUMNS, 1, 1);
        n++;
      }
  return grid;
}
