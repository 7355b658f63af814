/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-cards.h"

#include <adwaita.h>
#include <glib/gi18n-lib.h>

#include "fluid-edits.h"
#include "fluid-row.h"
#include "prefs-edit.h"
#include "side.h"

static const char *
side_words (const UnsootFluidRow *fluid)
{
  UnsootSide side = UNSOOT_SIDE_FUEL;

  unsoot_side_from_slug (fluid->side, &side);
  return unsoot_side_label (side);
}

/* A row with the forms of the fluid's own page. */
static GtkWidget *
row_new (const UnsootFluidRow *fluid, const GPtrArray *suppliers, UnsootSession *session)
{
  g_autofree char *price = unsoot_session_money (session, fluid->price_minor);
  /* Translators: a price for a litre */
  g_autofree char *value = g_strdup_printf (_ ("%s a litre"), price);
  GtkWidget *row
      = unsoot_prefs_row_new (session, NULL, fluid->name,
                              fluid->active ? side_words (fluid) : _ ("not in use"), value, NULL);
  GtkWidget *buttons[] = { unsoot_fluid_change_new (session, _ ("Change…"), fluid, suppliers),
                           unsoot_fluid_figures_new (session, _ ("Figures…"), fluid) };

  for (gsize i = 0; i < G_N_ELEMENTS (buttons); i++)
    {
      gtk_widget_set_valign (buttons[i], GTK_ALIGN_CENTER);
      gtk_widget_add_css_class (buttons[i], "flat");
      adw_action_row_add_suffix (ADW_ACTION_ROW (row), buttons[i]);
    }
  return row;
}

void
unsoot_prefs_card_fluids (UnsootCard *card, const UnsootPrefsFile *file, UnsootSession *session)
{
  GtkWidget *list = unsoot_prefs_list_new (_ ("Fluids"));
  GtkWidget *add = unsoot_fluid_change_new (session, _ ("Add a fluid…"), NULL, file->suppliers);

  for (guint i = 0; i < file->fluids->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         row_new (g_ptr_array_index (file->fluids, i), file->suppliers, session));
  unsoot_prefs_list_show (list, card, _ ("None yet. Each fluid is for one side only."));
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (card), add);
}
