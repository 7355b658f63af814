/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "order-why.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "deed-button.h"
#include "facts.h"
#include "format.h"
#include "supply-deeds.h"

/* Litres to two places: the arithmetic is read, not poured. */
static char *
litres (double ml)
{
  g_autofree char *number = unsoot_format_number (ml / 1000.0, 2);

  return g_strconcat (number, " L", NULL);
}

char *
unsoot_order_packs (const UnsootFluidSupply *supply)
{
  return supply->has_order ? unsoot_supply_packs_words (supply->order.count,
                                                        supply->order.ml / supply->order.count)
                           : NULL;
}

static char *
headline (const UnsootFluidSupply *supply, UnsootSession *session)
{
  g_autofree char *packs = unsoot_order_packs (supply);
  g_autofree char *cost = NULL;

  if (!supply->has_point)
    return g_strdup (_ ("Without the supplier's lead time there is no reorder point. It is "
                        "entered with the supplier."));
  if (supply->suggestion.wanted_ml <= 0)
    return supply->stock->on_order_ml > 0
               ? g_strdup (_ ("Nothing more to order: with what is on order it is above the "
                              "reorder point."))
               : g_strdup (_ ("Nothing to order: what is free is above the reorder point."));
  if (packs == NULL)
    {
      g_autofree char *wanted = litres ((double) supply->suggestion.wanted_ml);
      /* Translators: a volume */
      return g_strdup_printf (_ ("Order %s. In which packs it comes is not entered."), wanted);
    }
  cost = unsoot_session_money (session, supply->order.cost_minor);
  /* Translators: “2 × 5 L” and an amount of money */
  return g_strdup_printf (_ ("Order %s for %s."), packs, cost);
}

static void
add_reckoning (GtkWidget *facts, const UnsootFluidSupply *supply)
{
  const UnsootReorder *from = &supply->reorder;
  g_autofree char *use = litres (from->demand), *use_sd = litres (from->demand_sd);
  g_autofree char *lead = unsoot_format_number (from->lead, 1);
  g_autofree char *lead_sd = unsoot_format_number (from->lead_sd, 1);
  g_autofree char *safety = litres (supply->suggestion.safety);
  g_autofree char *point = litres (supply->suggestion.point);
  g_autofree char *target = litres (supply->suggestion.target);
  g_autofree char *unpromised = litres ((double) supply->stock->free_ml);
  g_autofree char *wanted = litres ((double) supply->suggestion.wanted_ml);
  g_autofree char *service = unsoot_format_number (from->service * 100, 1);
  /* Translators: use a day and its standard deviation, over twelve weeks */
  g_autofree char *use_text = g_strdup_printf (_ ("%s a day, ± %s (12 weeks)"), use, use_sd);
  /* Translators: days and their standard deviation, a supplier */
  g_autofree char *lead_text
      = g_strdup_printf (_ ("%s days, ± %s (%s)"), lead, lead_sd, supply->supplier->name);
  /* Translators: a volume, and how often it is to be enough, in percent */
  g_autofree char *safety_text
      = g_strdup_printf (_ ("%s, so that %s %% of orders come in time"), safety, service);
  /* Translators: lead time × use + safety stock = reorder point */
  g_autofree char *point_text = g_strdup_printf (_ ("%s × %s + %s = %s"), lead, use, safety, point);
  /* Translators: reorder point + days × use = volume */
  g_autofree char *target_text
      = g_strdup_printf (_ ("%s + %d × %s = %s"), point, UNSOOT_SUPPLY_COVER_DAYS, use, target);
  g_autofree char *coming = litres ((double) supply->stock->on_order_ml);
  g_autofree char *wanted_text
      = supply->stock->on_order_ml > 0
            /* Translators: wanted volume − free volume − volume on order = what to order */
            ? g_strdup_printf (_ ("%s less %s free less %s on order = %s"), target, unpromised,
                               coming, wanted)
            /* Translators: wanted volume − free volume = what to order */
            : g_strdup_printf (_ ("%s less %s free = %s"), target, unpromised, wanted);

  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Use"), use_text);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Lead time"), lead_text);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Safety stock"), safety_text);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Reorder point"), point_text);
  if (supply->suggestion.wanted_ml > 0)
    {
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Up to"), target_text);
      unsoot_facts_add (UNSOOT_FACTS (facts), _ ("To order"), wanted_text);
    }
  else
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Free now"), unpromised);
  if (supply->suggestion.wanted_ml <= 0 && supply->stock->on_order_ml > 0)
    unsoot_facts_add (UNSOOT_FACTS (facts), _ ("On order"), coming);
}

/* What the button has to know; borrowed from the page's data but the session. */
typedef struct
{
  UnsootSession *session;
  const UnsootFluidSupply *supply;
  const GPtrArray *suppliers;
} Order;

static void
order_free (gpointer data, GClosure *closure)
{
  Order *order = data;

  g_object_unref (order->session);
  g_free (order);
}

static void
order_cb (GtkWidget *button, Order *order)
{
  unsoot_supply_place_open (button, order->session, order->supply, order->suppliers);
}

static GtkWidget *
order_button_new (const UnsootFluidSupply *supply, const GPtrArray *suppliers,
                  UnsootSession *session)
{
  GtkWidget *button
      = unsoot_deed_button_new (session, UNSOOT_DEED_ORDER, _ ("Order…"), supply->fluid->name);
  Order *order = g_new0 (Order, 1);

  order->session = g_object_ref (session);
  order->supply = supply;
  order->suppliers = suppliers;
  g_signal_connect_data (button, "clicked", G_CALLBACK (order_cb), order, order_free, 0);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  unsoot_deed_button_suggest (button, supply->has_order);
  if (suppliers->len == 0)
    unsoot_deed_button_bar (button, _ ("First enter who sends it, on the page of all fluids"));
  return button;
}

static void
add_supplier (GtkWidget *facts, const UnsootFluidSupply *supply)
{
  if (supply->supplier == NULL)
    return;
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Supplier"), supply->supplier->name);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Their phone"), supply->supplier->phone);
  unsoot_facts_add (UNSOOT_FACTS (facts), _ ("Their email"), supply->supplier->email);
}

GtkWidget *
unsoot_order_why_new (const UnsootFluidSupply *supply, const GPtrArray *suppliers,
                      UnsootSession *session)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *facts = unsoot_facts_new ();
  g_autofree char *words = headline (supply, session);
  GtkWidget *head = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (head), 0);
  gtk_label_set_wrap (GTK_LABEL (head), TRUE);
  gtk_widget_add_css_class (head, "figures");
  if (supply->has_order)
    gtk_widget_add_css_class (head, "text-title");
  gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), order_button_new (supply, suppliers, session));
  add_supplier (facts, supply);
  if (supply->has_point)
    add_reckoning (facts, supply);
  gtk_box_append (GTK_BOX (box), facts);
  return box;
}
