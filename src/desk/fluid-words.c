/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-words.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "slug.h"

static char *
litres_number (gint64 ml)
{
  return unsoot_format_number ((double) ml / 1000.0, 3);
}

char *
unsoot_volume_markup (gint64 ml)
{
  g_autofree char *number = litres_number (ml);

  return unsoot_format_with_unit (number, "L");
}

char *
unsoot_volume_change_markup (gint64 ml)
{
  g_autofree char *number = litres_number (ml);
  g_autofree char *signed_number = ml > 0 ? g_strconcat ("+", number, NULL) : g_strdup (number);

  return unsoot_format_with_unit (signed_number, "L");
}

static const char *
supply_class (UnsootSupply state)
{
  switch (state)
    {
    case UNSOOT_SUPPLY_SHORT:
      return "supply-short";
    case UNSOOT_SUPPLY_LOW:
      return "supply-low";
    case UNSOOT_SUPPLY_ON_ORDER:
      return "supply-on-order";
    case UNSOOT_SUPPLY_GOES_OFF:
      return "supply-goes-off";
    case UNSOOT_SUPPLY_FINE:
      return "supply-fine";
    }
  g_return_val_if_reached ("supply-fine");
}

GtkWidget *
unsoot_supply_mark_new (UnsootSupply state)
{
  GtkWidget *mark = gtk_label_new (unsoot_supply_words (state));

  gtk_widget_set_halign (mark, GTK_ALIGN_START);
  gtk_widget_set_valign (mark, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (mark, "status-mark");
  gtk_widget_add_css_class (mark, supply_class (state));
  return mark;
}

const char *
unsoot_move_kind_words (const char *kind)
{
  static const UnsootSlug kinds[] = {
    { 0, "delivery", N_ ("Delivery") },
    { 1, "use", N_ ("Used") },
    { 2, "count", N_ ("Count") },
    { 3, "spill", N_ ("Spilled") },
    { 4, "waste", N_ ("To waste") },
    { 5, "return", N_ ("Returned") },
    { 6, "opening", N_ ("Opening stock") },
    { 7, "correction", N_ ("Correction") },
    { 0, NULL, NULL },
  };
  int value;

  return unsoot_slug_find (kinds, kind, &value) ? unsoot_slug_words (kinds, value) : kind;
}

char *
unsoot_move_words (const UnsootMoveLine *line)
{
  g_autofree char *volume = unsoot_format_litres (line->move->ml);

  /* Translators: a kind of stock move, the code of a lot, a volume */
  return g_strdup_printf (_ ("%s, lot %s: %s"), unsoot_move_kind_words (line->move->kind),
                          line->lot, volume);
}
