/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-page.h"

#include <glib/gi18n-lib.h>

#include "card.h"
#include "columns.h"
#include "first-record.h"
#include "fluid-deeds.h"
#include "fluid-edits.h"
#include "fluid-file.h"
#include "fluid-words.h"
#include "format.h"
#include "hazard-facts.h"
#include "link-row.h"
#include "lot-link.h"
#include "moves-table.h"
#include "order-why.h"
#include "prefs-edit.h"
#include "short-job-row.h"
#include "side.h"
#include "stock-picture.h"
#include "supply-deeds.h"
#include "supply-row.h"
#include "title-block.h"

enum
{
  MOVES_SHOWN = 12
};

struct _UnsootFluidPage
{
  UnsootView parent_instance;

  /* template */
  UnsootTitleBlock *head;
  GtkBox *deeds;
  GtkBox *state;
  UnsootStockPicture *picture;
  UnsootCard *coming;
  UnsootCard *order;
  UnsootCard *bought;
  UnsootCard *lots;
  UnsootCard *shorts;
  UnsootCard *uses;
  UnsootCard *moves;
  UnsootCard *hazards;

  UnsootFluidFile *file; /* owned; NULL until there is data */
};

G_DEFINE_FINAL_TYPE (UnsootFluidPage, unsoot_fluid_page, UNSOOT_TYPE_VIEW)

static gpointer
read_fluid (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  g_autofree char *today = unsoot_first_record_today (db, query->now, error);

  return today != NULL ? unsoot_fluid_file_load (db, query->record, today, query->now, error)
                       : NULL;
}

static void
deed_cb (GtkWidget *button, UnsootFluidPage *self)
{
  const UnsootFluidDeed deed
      = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "fluid-deed"));
  g_autofree char *packs = NULL;

  if (self->file == NULL)
    return;
  if (deed == UNSOOT_FLUID_RECEIVE && self->file->supply->orders->len > 0)
    {
      unsoot_supply_receive_open (GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                                  self->file->supply, 0);
      return;
    }
  packs = unsoot_order_packs (self->file->supply);
  unsoot_fluid_deed_open (deed, GTK_WIDGET (self), unsoot_view_get_session (UNSOOT_VIEW (self)),
                          self->file->supply->fluid, self->file->lots, 0, packs);
}

static void
add_deeds (UnsootFluidPage *self)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  if (gtk_widget_get_first_child (GTK_WIDGET (self->deeds)) != NULL)
    return;
  for (guint i = 0; i < UNSOOT_FLUID_DEEDS; i++)
    {
      GtkWidget *button = unsoot_fluid_deed_button_new ((UnsootFluidDeed) i, session);
      g_object_set_data (G_OBJECT (button), "fluid-deed", GUINT_TO_POINTER (i));
      g_signal_connect (button, "clicked", G_CALLBACK (deed_cb), self);
      gtk_box_append (self->deeds, button);
    }
}

static void
show_head (UnsootFluidPage *self, const UnsootFluidSupply *supply)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *price = unsoot_session_money (session, supply->fluid->price_minor);
  g_autofree char *on_hand = unsoot_format_litres (supply->stock->on_hand_ml);
  g_autofree char *unpromised = unsoot_format_litres (supply->stock->free_ml);
  UnsootSide side = UNSOOT_SIDE_NONE;
  g_autofree char *detail = NULL;
  GtkWidget *mark;

  unsoot_side_from_slug (supply->fluid->side, &side);
  /* Translators: a side of the engine, what there is of a fluid, what of that is free, and its
   * price for a litre */
  detail = g_strdup_printf (_ ("%s · %s on hand, %s free · sold at %s a litre"),
                            unsoot_side_label (side), on_hand, unpromised, price);
  unsoot_view_set_title (UNSOOT_VIEW (self), supply->fluid->name);
  unsoot_title_block_show (self->head, supply->fluid->name, detail);
  while ((mark = gtk_widget_get_first_child (GTK_WIDGET (self->state))) != NULL)
    gtk_box_remove (self->state, mark);
  gtk_box_append (self->state, unsoot_supply_mark_new (supply->state));
}

static void
show_lots (UnsootFluidPage *self, const UnsootFluidFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("Lots"));
  guint n = 0;

  unsoot_card_clear (self->lots);
  for (guint i = 0; i < file->lots->len; i++)
    {
      const UnsootLotStock *stock = g_ptr_array_index (file->lots, i);
      if (stock->on_hand_ml <= 0)
        continue;
      gtk_list_box_append (GTK_LIST_BOX (list),
                           unsoot_lot_link_new (stock, file->containers, session));
      n++;
    }
  gtk_box_append (GTK_BOX (self->lots), list);
  gtk_widget_set_visible (list, n > 0);
  if (n == 0)
    unsoot_card_say (self->lots, _ ("Nothing on the shelf. A delivery begins a lot."));
}

/* What is to come, each order with its deeds; below, what became of those before. */
static void
show_coming (UnsootFluidPage *self, const UnsootFluidFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const GPtrArray *open = file->supply->orders;

  unsoot_card_clear (self->coming);
  if (open->len == 0)
    unsoot_card_say (self->coming, _ ("Nothing is on order."));
  for (guint i = 0; i < open->len; i++)
    gtk_box_append (GTK_BOX (self->coming),
                    unsoot_supply_row_new (file->supply, open->pdata[i], session));
  for (guint i = 0; i < file->past->len; i++)
    {
      const UnsootSupplyOrder *order = file->past->pdata[i];
      if (order->open_ml <= 0)
        gtk_box_append (GTK_BOX (self->coming), unsoot_supply_past_new (order, session));
    }
}

/* Buttons one beside the other, and below where there is no room. */
static GtkWidget *
row_of (GtkWidget *first, GtkWidget *second)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_widget_add_css_class (row, "card-deeds");
  gtk_box_append (GTK_BOX (row), first);
  gtk_box_append (GTK_BOX (row), second);
  return row;
}

/* In which packs, and the fluid's own form. */
static void
show_bought (UnsootFluidPage *self, const UnsootFluidFile *file)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  const UnsootFluidRow *fluid = file->supply->fluid;
  const GPtrArray *packs = file->supply->packs;
  GtkWidget *list = unsoot_prefs_list_new (_ ("Packs"));

  unsoot_card_clear (self->bought);
  for (guint i = 0; i < packs->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_pack_row_widget_new (session, fluid, packs->pdata[i]));
  gtk_widget_set_visible (list, packs->len > 0);
  gtk_box_append (GTK_BOX (self->bought), list);
  if (packs->len == 0)
    unsoot_card_say (self->bought, _ ("In which packs it comes is not entered."));
  gtk_box_append (
      GTK_BOX (self->bought),
      row_of (unsoot_pack_add_new (session, fluid),
              unsoot_fluid_change_new (session, _ ("Change the fluid…"), fluid, file->suppliers)));
}

static void
show_hazards (UnsootFluidPage *self, const UnsootFluidRow *fluid)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  g_autofree char *today = unsoot_session_today (session);

  unsoot_card_clear (self->hazards);
  gtk_box_append (GTK_BOX (self->hazards), unsoot_hazard_facts_new (fluid, today));
  gtk_box_append (GTK_BOX (self->hazards),
                  row_of (unsoot_fluid_hazards_new (session, fluid),
                          unsoot_fluid_figures_new (session, _ ("Change the figures…"), fluid)));
}

static void
show_shorts (UnsootFluidPage *self, GPtrArray *shorts)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("What falls short"));

  unsoot_card_clear (self->shorts);
  gtk_widget_set_visible (GTK_WIDGET (self->shorts), shorts->len > 0);
  for (guint i = 0; i < shorts->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_short_job_row_new (g_ptr_array_index (shorts, i), session, FALSE));
  gtk_box_append (GTK_BOX (self->shorts), list);
}

static GtkWidget *
use_row_new (const UnsootFluidUse *use)
{
  g_autofree char *title = g_strdup_printf (_ ("Job %d · %s"), (int) use->job_number, use->vehicle);
  g_autofree char *used = unsoot_format_litres (use->used_ml);
  g_autofree char *dose = unsoot_format_litres (use->dose_ml);
  g_autofree char *markup = unsoot_volume_change_markup (use->used_ml - use->dose_ml);
  /* Translators: what a job used of a fluid, and the dose it was to have */
  g_autofree char *detail = g_strdup_printf (_ ("%s used, dose %s"), used, dose);
  GtkWidget *row = unsoot_link_row_new ("job", use->job_id, title, detail);
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_markup (GTK_LABEL (label),
                        use->used_ml == use->dose_ml ? _ ("as planned") : markup);
  gtk_widget_add_css_class (label, "figures");
  gtk_widget_add_css_class (label, use->used_ml > use->dose_ml ? "warning" : "dim-label");
  unsoot_link_row_add (row, label);
  return row;
}

static void
show_uses (UnsootFluidPage *self, GPtrArray *uses)
{
  GtkWidget *list = unsoot_link_list_new (_ ("Used, beside the dose"));

  unsoot_card_clear (self->uses);
  for (guint i = 0; i < uses->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list), use_row_new (g_ptr_array_index (uses, i)));
  gtk_widget_set_visible (list, uses->len > 0);
  gtk_box_append (GTK_BOX (self->uses), list);
  if (uses->len == 0)
    unsoot_card_say (self->uses, _ ("No job has used it yet."));
}

static void
show_moves (UnsootFluidPage *self, GPtrArray *moves)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));

  unsoot_card_clear (self->moves);
  if (moves->len == 0)
    unsoot_card_say (self->moves, _ ("Nothing came or went in these 90 days."));
  else
    gtk_box_append (GTK_BOX (self->moves),
                    unsoot_moves_table_new (moves, MOVES_SHOWN, TRUE, session));
}

static void
show_fluid (UnsootView *view, gpointer result)
{
  UnsootFluidPage *self = UNSOOT_FLUID_PAGE (view);
  UnsootSession *session = unsoot_view_get_session (view);
  UnsootFluidFile *file = result;

  g_clear_pointer (&self->file, unsoot_fluid_file_free);
  self->file = file;
  add_deeds (self);
  show_head (self, file->supply);
  unsoot_stock_picture_show (self->picture, file->supply, file->moves, file->before_ml, session);
  unsoot_card_clear (self->order);
  gtk_box_append (GTK_BOX (self->order),
                  unsoot_order_why_new (file->supply, file->suppliers, session));
  show_bought (self, file);
  show_hazards (self, file->supply->fluid);
  show_lots (self, file);
  show_coming (self, file);
  show_shorts (self, file->shorts);
  show_uses (self, file->uses);
  show_moves (self, file->moves);
}

static void
unsoot_fluid_page_dispose (GObject *object)
{
  UnsootFluidPage *self = UNSOOT_FLUID_PAGE (object);

  g_clear_pointer (&self->file, unsoot_fluid_file_free);
  G_OBJECT_CLASS (unsoot_fluid_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FLUID_PAGE);
}

static void
unsoot_fluid_page_class_init (UnsootFluidPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_fluid_page_dispose;
  view_class->read = read_fluid;
  view_class->free_result = (GDestroyNotify) unsoot_fluid_file_free;
  view_class->show = show_fluid;
  g_type_ensure (UNSOOT_TYPE_CARD);
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  g_type_ensure (UNSOOT_TYPE_STOCK_PICTURE);
  g_type_ensure (UNSOOT_TYPE_TITLE_BLOCK);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/fluid-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, head);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, deeds);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, state);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, picture);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, coming);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, order);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, bought);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, lots);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, shorts);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, uses);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, moves);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidPage, hazards);
}

static void
unsoot_fluid_page_init (UnsootFluidPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
