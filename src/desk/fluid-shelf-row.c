/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-shelf-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "access.h"
#include "days-bar.h"
#include "fluid-words.h"
#include "format.h"
#include "side-mark.h"

struct _UnsootFluidShelfRow
{
  GtkListBoxRow parent_instance;

  /* template */
  GtkBox *name_cell;
  GtkLabel *name;
  GtkLabel *detail;
  GtkLabel *on_hand;
  GtkLabel *promised;
  GtkLabel *unpromised;
  GtkLabel *on_order;
  GtkBox *lasts_cell;
  UnsootDaysBar *bar;
  GtkLabel *days;
  GtkLabel *expiry;
  GtkBox *state_cell;
};

G_DEFINE_FINAL_TYPE (UnsootFluidShelfRow, unsoot_fluid_shelf_row, GTK_TYPE_LIST_BOX_ROW)

static void
unsoot_fluid_shelf_row_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_fluid_shelf_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FLUID_SHELF_ROW);
}

static void
unsoot_fluid_shelf_row_class_init (UnsootFluidShelfRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_fluid_shelf_row_dispose;
  g_type_ensure (UNSOOT_TYPE_DAYS_BAR);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/fluid-shelf-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, name_cell);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, name);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, detail);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, on_hand);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, promised);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, unpromised);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, on_order);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, lasts_cell);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, bar);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, days);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, expiry);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidShelfRow, state_cell);
}

static void
unsoot_fluid_shelf_row_init (UnsootFluidShelfRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

static void
set_volume (GtkLabel *label, gint64 ml)
{
  g_autofree char *markup = unsoot_volume_markup (ml);

  gtk_label_set_markup (label, markup);
  if (ml < 0)
    gtk_widget_add_css_class (GTK_WIDGET (label), "error");
}

static void
show_name (UnsootFluidShelfRow *self, const UnsootFluidSupply *supply)
{
  UnsootSide side = UNSOOT_SIDE_NONE;

  if (unsoot_side_from_slug (supply->fluid->side, &side) && side != UNSOOT_SIDE_NONE)
    gtk_box_prepend (self->name_cell, unsoot_side_mark_new_plain (side));
  gtk_label_set_text (self->name, supply->fluid->name);
  if (supply->stock->unusable_ml > 0)
    {
      g_autofree char *volume = unsoot_format_litres (supply->stock->unusable_ml);
      /* Translators: a volume that is expired or stopped */
      g_autofree char *words = g_strdup_printf (_ ("%s not to be used"), volume);
      gtk_label_set_text (self->detail, words);
      gtk_widget_set_visible (GTK_WIDGET (self->detail), TRUE);
    }
}

static void
show_lasts (UnsootFluidShelfRow *self, const UnsootFluidSupply *supply)
{
  const double days = supply->stock->days_left;
  g_autofree char *number = isnan (days) ? NULL : unsoot_format_number (floor (days), 0);
  g_autofree char *markup
      = number != NULL ? unsoot_format_with_unit (number, _ ("days")) : g_strdup ("–");

  unsoot_days_bar_set (self->bar, days, supply->has_point ? supply->reorder.lead : 0);
  gtk_label_set_markup (self->days, markup);
}

/* The day of the first on hover; what is late stands out. */
static void
show_on_order (UnsootFluidShelfRow *self, const UnsootFluidSupply *supply, const char *today)
{
  const UnsootSupplyOrder *first = supply->orders->len > 0 ? supply->orders->pdata[0] : NULL;
  g_autofree char *day = NULL, *words = NULL;

  if (first == NULL)
    {
      gtk_label_set_text (self->on_order, "–");
      return;
    }
  set_volume (self->on_order, supply->stock->on_order_ml);
  if (first->expected_on == NULL)
    return;
  day = unsoot_format_day (first->expected_on, today);
  /* Translators: a day */
  words = g_strdup_printf (_ ("expected %s"), day);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->on_order), words);
  if (g_strcmp0 (first->expected_on, today) < 0)
    gtk_widget_add_css_class (GTK_WIDGET (self->on_order), "warning");
}

static void
name_row (UnsootFluidShelfRow *self, const UnsootFluidSupply *supply)
{
  g_autofree char *on_hand = unsoot_format_litres (supply->stock->on_hand_ml);
  g_autofree char *unpromised = unsoot_format_litres (supply->stock->free_ml);
  /* Translators: a fluid, what there is of it, what of that is free, and short, low or fine */
  g_autofree char *name
      = g_strdup_printf (_ ("%s: %s on hand, %s free, %s"), supply->fluid->name, on_hand,
                         unpromised, unsoot_supply_words (supply->state));

  unsoot_access_name (GTK_WIDGET (self), name);
}

GtkWidget *
unsoot_fluid_shelf_row_new (const UnsootFluidSupply *supply, UnsootSession *session,
                            GtkSizeGroup *const *groups)
{
  UnsootFluidShelfRow *self = g_object_new (UNSOOT_TYPE_FLUID_SHELF_ROW, NULL);
  GtkWidget *const cells[UNSOOT_SHELF_COLUMNS]
      = { GTK_WIDGET (self->name_cell), GTK_WIDGET (self->on_hand),
          GTK_WIDGET (self->promised),  GTK_WIDGET (self->unpromised),
          GTK_WIDGET (self->on_order),  GTK_WIDGET (self->lasts_cell),
          GTK_WIDGET (self->expiry),    GTK_WIDGET (self->state_cell) };
  g_autofree char *today = unsoot_session_today (session);
  g_autofree char *expiry = unsoot_format_day (supply->stock->next_expiry, today);
  g_autofree char *exact = unsoot_format_exact_day (supply->stock->next_expiry);

  /* The name takes what the others leave, which is the same in every row. */
  for (gsize i = 1; i < G_N_ELEMENTS (cells); i++)
    gtk_size_group_add_widget (groups[i], cells[i]);
  show_name (self, supply);
  set_volume (self->on_hand, supply->stock->on_hand_ml);
  set_volume (self->promised, supply->stock->promised_ml);
  set_volume (self->unpromised, supply->stock->free_ml);
  show_on_order (self, supply, today);
  show_lasts (self, supply);
  gtk_label_set_text (self->expiry, expiry);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->expiry), exact);
  gtk_box_append (self->state_cell, unsoot_supply_mark_new (supply->state));
  gtk_actionable_set_action_target (GTK_ACTIONABLE (self), "(sx)", "fluid", supply->fluid->id);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (self), "win.open");
  name_row (self, supply);
  return GTK_WIDGET (self);
}

GtkWidget *
unsoot_fluid_shelf_heads_new (GtkSizeGroup *const *groups)
{
  static const char *const heads[UNSOOT_SHELF_COLUMNS]
      = { N_ ("Fluid"),    N_ ("On hand"), N_ ("Promised"),    N_ ("Free"),
          N_ ("On order"), N_ ("Lasts"),   N_ ("Next expiry"), N_ ("State") };
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);

  for (gsize i = 0; i < G_N_ELEMENTS (heads); i++)
    {
      GtkWidget *label = gtk_label_new (_ (heads[i]));
      gtk_label_set_xalign (GTK_LABEL (label), i >= 1 && i <= 4 ? 1 : 0);
      gtk_widget_set_hexpand (label, i == 0);
      gtk_widget_add_css_class (label, "caption-heading");
      gtk_widget_add_css_class (label, "dim-label");
      if (i > 0)
        gtk_size_group_add_widget (groups[i], label);
      gtk_box_append (GTK_BOX (box), label);
    }
  gtk_widget_add_css_class (box, "shelf-heads");
  return box;
}
