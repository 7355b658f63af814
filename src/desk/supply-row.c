/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply-row.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "deed-button.h"
#include "format.h"
#include "paper-view.h"
#include "supply-deeds.h"

/* What a row's buttons are for; all borrowed from the page's data but the session. */
typedef struct
{
  UnsootSession *session;
  const UnsootFluidSupply *supply;
  const UnsootSupplyOrder *order;
} Row;

static void
row_free (gpointer data)
{
  Row *row = data;

  g_object_unref (row->session);
  g_free (row);
}

static void
receive_cb (GtkWidget *button, Row *row)
{
  unsoot_supply_receive_open (button, row->session, row->supply, row->order->order->id);
}

static void
expect_cb (GtkWidget *button, Row *row)
{
  unsoot_supply_expect_open (button, row->session, row->order);
}

static void
cancel_cb (GtkWidget *button, Row *row)
{
  unsoot_supply_cancel_open (button, row->session, row->order);
}

/* The order goes by the shop's own mail or telephone: its words are ready to be pasted. */
static void
copy_cb (GtkWidget *button, Row *row)
{
  const UnsootSupplyOrderRow *order = row->order->order;
  g_autofree char *packs = unsoot_supply_packs_words (order->packs, order->pack_ml);
  /* Translators: the shop's name, number of an order, “2 × 5 L” and the name of a fluid */
  g_autofree char *text = g_strdup_printf (_ ("%s, order %d: %s of %s, please."),
                                           unsoot_session_get_shop (row->session)->name,
                                           (int) order->number, packs, row->order->fluid);

  gdk_clipboard_set_text (gtk_widget_get_clipboard (button), text);
  unsoot_deed_button_draw (button, "object-select-symbolic", _ ("Copied"));
}

static void
paper_cb (GtkWidget *button, Row *row)
{
  unsoot_paper_view_open_order (button, row->session, row->order->order->id);
}

static GtkWidget *
label_new (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "figures");
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  return label;
}

static GtkWidget *
button_new (Row *row, UnsootDeed deed, const char *label, GCallback callback)
{
  g_autofree char *about = g_strdup_printf (_ ("order %d"), (int) row->order->order->number);
  GtkWidget *button = unsoot_deed_button_new (row->session, deed, label, about);

  g_signal_connect (button, "clicked", callback, row);
  return button;
}

/* What leads away from the next deed is quieter. */
static GtkWidget *
quiet_new (Row *row, const char *label, GCallback callback)
{
  GtkWidget *button = button_new (row, UNSOOT_DEED_ORDER, label, callback);

  gtk_widget_add_css_class (button, "flat");
  return button;
}

static GtkWidget *
icon_new (Row *row, const char *label, const char *icon, GCallback callback)
{
  GtkWidget *button = button_new (row, UNSOOT_DEED_ORDER, label, callback);

  unsoot_deed_button_draw (button, icon, label);
  return button;
}

static gboolean
is_late (const UnsootSupplyOrder *order, const char *today)
{
  return order->expected_on != NULL && g_strcmp0 (order->expected_on, today) < 0;
}

/* "expected in 3 days · $85.00 each · 5 L of it received" */
static char *
detail_words (const UnsootSupplyOrder *order, UnsootSession *session)
{
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *day = unsoot_format_day (order->expected_on, today);
  g_autoptr (GString) text = g_string_new (NULL);

  if (order->expected_on == NULL)
    g_string_append (text, _ ("no day was named"));
  else
    /* Translators: a day */
    g_string_append_printf (
        text, is_late (order, today) ? _ ("was expected %s") : _ ("expected %s"), day);
  if (order->order->pack_cost_minor > 0)
    {
      g_autofree char *price = unsoot_session_money (session, order->order->pack_cost_minor);
      g_string_append (text, " · ");
      g_string_append_printf (text, _ ("%s a pack"), price);
    }
  if (order->received_ml > 0)
    {
      g_autofree char *here = unsoot_format_litres (order->received_ml);
      g_autofree char *open = unsoot_format_litres (order->open_ml);
      g_string_append (text, " · ");
      /* Translators: two volumes */
      g_string_append_printf (text, _ ("%s received, %s to come"), here, open);
    }
  if (order->order->note != NULL)
    g_string_append_printf (text, " · %s", order->order->note);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

GtkWidget *
unsoot_supply_row_new (const UnsootFluidSupply *supply, const UnsootSupplyOrder *order,
                       UnsootSession *session)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *buttons = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *title = unsoot_supply_order_words (order);
  g_autofree char *detail = detail_words (order, session);
  Row *row = g_new0 (Row, 1);

  row->session = g_object_ref (session);
  row->supply = supply;
  row->order = order;
  g_object_set_data_full (G_OBJECT (box), "supply-row", row, row_free);
  gtk_box_append (GTK_BOX (box), label_new (title, "heading"));
  gtk_box_append (GTK_BOX (box),
                  label_new (detail, is_late (order, today) ? "warning" : "dim-label"));
  gtk_widget_add_css_class (buttons, "row-deeds");
  gtk_box_append (GTK_BOX (buttons), button_new (row, UNSOOT_DEED_RECEIVE_DELIVERY, _ ("Receive…"),
                                                 G_CALLBACK (receive_cb)));
  gtk_box_append (GTK_BOX (buttons), quiet_new (row, _ ("Other day…"), G_CALLBACK (expect_cb)));
  gtk_box_append (GTK_BOX (buttons), quiet_new (row, _ ("Cancel…"), G_CALLBACK (cancel_cb)));
  gtk_box_append (GTK_BOX (buttons),
                  icon_new (row, _ ("Paper"), "unsoot-papers-symbolic", G_CALLBACK (paper_cb)));
  gtk_box_append (GTK_BOX (buttons),
                  icon_new (row, _ ("Copy its words"), "edit-copy-symbolic", G_CALLBACK (copy_cb)));
  gtk_box_append (GTK_BOX (box), buttons);
  unsoot_access_name (box, title);
  return box;
}

GtkWidget *
unsoot_supply_past_new (const UnsootSupplyOrder *order, UnsootSession *session)
{
  g_autofree char *title = unsoot_supply_order_words (order);
  g_autofree char *when = unsoot_format_stamp (order->order->at, unsoot_session_now (session),
                                               unsoot_session_zone (session));
  g_autofree char *words
      = order->cancelled != NULL
            /* Translators: an order in words, when it was placed, why it was cancelled */
            ? g_strdup_printf (_ ("%s, %s · cancelled: %s"), title, when, order->cancelled)
            /* Translators: an order in words, when it was placed */
            : g_strdup_printf (_ ("%s, %s · all here"), title, when);

  return label_new (words, "dim-label");
}
