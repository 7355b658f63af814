/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "order-why.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "deed-button.h"
#include "facts.h"
#include "format.h"

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
  g_autofree char *each = NULL;

  if (!supply->has_order)
    return NULL;
  each = unsoot_format_litres (supply->order.ml / supply->order.count);
  if (supply->order.count == 1)
    return g_steal_pointer (&each);
  return g_strdup_printf ("%d × %s", (int) supply->order.count, each);
}

static char *
headline (const UnsootFluidSupply *supply, UnsootSession *session)
{
  g_autofree char *packs = unsoot_order_packs (supply);
  g_autofree char *cost = NULL;

  if (!supply->has_point)
    return g_strdup (_ ("Without the supplier's lead time there is no reorder point. The owner "
                        "enters it with the supplier."));
  if (supply->suggestion.wanted_ml <= 0)
    return g_strdup (_ ("Nothing to order: what is free is above the reorder point."));
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
  /* Translators: wanted volume − free volume = what to order */
  g_autofree char *wanted_text
      = g_strdup_printf (_ ("%s less %s free = %s"), target, unpromised, wanted);

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
}

static void
copy_cb (GtkWidget *button, const char *text)
{
  gdk_clipboard_set_text (gtk_widget_get_clipboard (button), text);
  gtk_button_set_label (GTK_BUTTON (button), _ ("Copied"));
}

/* The order goes by the shop's own mail or telephone: its words are ready to be pasted. */
static GtkWidget *
copy_button_new (const UnsootFluidSupply *supply, UnsootSession *session)
{
  g_autofree char *packs = unsoot_order_packs (supply);
  GtkWidget *button = unsoot_deed_button_new (session, UNSOOT_DEED_ORDER, _ ("Copy the order"),
                                              supply->fluid->name);
  /* Translators: “2 × 5 L” and the name of a fluid; the shop's name */
  char *text = g_strdup_printf (_ ("%s of %s, please, for %s."), packs, supply->fluid->name,
                                unsoot_session_get_shop (session)->name);

  g_signal_connect_data (button, "clicked", G_CALLBACK (copy_cb), text,
                         (GClosureNotify) (void (*) (void)) g_free, 0);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  unsoot_deed_button_suggest (button, TRUE);
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
unsoot_order_why_new (const UnsootFluidSupply *supply, UnsootSession *session)
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
  if (supply->has_order)
    gtk_box_append (GTK_BOX (box), copy_button_new (supply, session));
  add_supplier (facts, supply);
  if (supply->has_point)
    add_reckoning (facts, supply);
  gtk_box_append (GTK_BOX (box), facts);
  return box;
}
