/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lot-link.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "link-row.h"

static char *
detail_words (const UnsootLotStock *stock, GPtrArray *containers, const char *today)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *expires = unsoot_format_day (stock->lot->expires_on, today);

  if (stock->why_not != NULL)
    g_string_append (text, stock->why_not);
  else if (stock->lot->expires_on != NULL)
    /* Translators: when a lot expires */
    g_string_append_printf (text, _ ("expires %s"), expires);
  else
    g_string_append (text, _ ("no expiry"));
  for (guint i = 0; i < containers->len; i++)
    {
      const UnsootContainerRow *container = g_ptr_array_index (containers, i);
      g_autofree char *until = unsoot_format_day (container->use_by, today);

      if (container->lot_id == stock->lot->id)
        /* Translators: an opened container and its own last day */
        g_string_append_printf (text, _ (" · %s open until %s"), container->label, until);
    }
  return g_strdup (text->str);
}

GtkWidget *
unsoot_lot_link_new (const UnsootLotStock *stock, GPtrArray *containers, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *title = g_strdup_printf (_ ("Lot %s"), stock->lot->code);
  g_autofree char *detail = detail_words (stock, containers, today);
  g_autofree char *left = unsoot_format_litres (stock->on_hand_ml);
  g_autofree char *exact = unsoot_format_exact_day (stock->lot->expires_on);
  GtkWidget *row = unsoot_link_row_new ("lot", stock->lot->id, title, detail);

  gtk_widget_set_tooltip_text (row, exact);
  if (stock->why_not != NULL)
    {
      GtkWidget *sign = gtk_image_new_from_icon_name ("dialog-warning-symbolic");
      gtk_accessible_update_state (GTK_ACCESSIBLE (sign), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
      gtk_widget_add_css_class (sign, "warning");
      unsoot_link_row_add (row, sign);
    }
  unsoot_link_row_add_text (row, left);
  return row;
}
