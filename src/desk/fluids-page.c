/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluids-page.h"

#include <glib/gi18n-lib.h>

#include "card.h"
#include "fluid-edits.h"
#include "fluid-moves.h"
#include "fluid-shelf-row.h"
#include "fluid-supply.h"
#include "link-row.h"
#include "prefs-edit.h"
#include "short-job-row.h"
#include "shops.h"

struct _UnsootFluidsPage
{
  UnsootView parent_instance;

  /* template */
  GtkBox *acts;
  GtkBox *heads;
  GtkListBox *shelf;
  GtkWidget *table;
  GtkWidget *nothing;
  UnsootCard *shorts;
  UnsootCard *suppliers;

  /* owned */
  GtkSizeGroup *groups[UNSOOT_SHELF_COLUMNS];
};

G_DEFINE_FINAL_TYPE (UnsootFluidsPage, unsoot_fluids_page, UNSOOT_TYPE_VIEW)

typedef struct
{
  GPtrArray *supplies;  /* UnsootFluidSupply */
  GPtrArray *shorts;    /* UnsootShortJob */
  GPtrArray *suppliers; /* UnsootSupplierRow */
} Fluids;

static void
fluids_free (gpointer data)
{
  Fluids *fluids = data;

  g_clear_pointer (&fluids->supplies, g_ptr_array_unref);
  g_clear_pointer (&fluids->shorts, g_ptr_array_unref);
  g_clear_pointer (&fluids->suppliers, g_ptr_array_unref);
  g_free (fluids);
}

static gpointer
read_fluids (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootViewQuery *query = data;
  Fluids *fluids = g_new0 (Fluids, 1);

  fluids->supplies = unsoot_fluid_supply_list (db, query->now, error);
  fluids->shorts = fluids->supplies != NULL ? unsoot_short_jobs (db, 0, query->now, error) : NULL;
  fluids->suppliers = fluids->shorts != NULL ? unsoot_supplier_list (db, error) : NULL;
  if (fluids->suppliers != NULL)
    return fluids;
  fluids_free (fluids);
  return NULL;
}

static void
show_shelf (UnsootFluidsPage *self, GPtrArray *supplies)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->shelf))) != NULL)
    gtk_list_box_remove (self->shelf, row);
  for (guint i = 0; i < supplies->len; i++)
    gtk_list_box_append (self->shelf, unsoot_fluid_shelf_row_new (g_ptr_array_index (supplies, i),
                                                                  session, self->groups));
  gtk_widget_set_visible (self->table, supplies->len > 0);
  gtk_widget_set_visible (self->nothing, supplies->len == 0);
}

static void
show_shorts (UnsootFluidsPage *self, GPtrArray *shorts)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_link_list_new (_ ("What falls short"));

  unsoot_card_clear (self->shorts);
  if (shorts->len == 0)
    {
      g_object_ref_sink (list);
      g_object_unref (list);
      unsoot_card_say (self->shorts, _ ("Every booked dose is there."));
      return;
    }
  for (guint i = 0; i < shorts->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_short_job_row_new (g_ptr_array_index (shorts, i), session, TRUE));
  gtk_box_append (GTK_BOX (self->shorts), list);
}

static void
show_suppliers (UnsootFluidsPage *self, GPtrArray *suppliers)
{
  UnsootSession *session = unsoot_view_get_session (UNSOOT_VIEW (self));
  GtkWidget *list = unsoot_prefs_list_new (_ ("Who sends them"));
  GtkWidget *add = unsoot_supplier_add_new (session);
  GtkWidget *former;

  while ((former = gtk_widget_get_first_child (GTK_WIDGET (self->acts))) != NULL)
    gtk_box_remove (self->acts, former);
  gtk_box_append (self->acts,
                  unsoot_fluid_change_new (session, _ ("Add a fluid…"), NULL, suppliers));
  unsoot_card_clear (self->suppliers);
  for (guint i = 0; i < suppliers->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (list),
                         unsoot_supplier_row_widget_new (session, suppliers->pdata[i]));
  gtk_widget_set_visible (list, suppliers->len > 0);
  gtk_box_append (GTK_BOX (self->suppliers), list);
  if (suppliers->len == 0)
    unsoot_card_say (self->suppliers, _ ("Nobody is entered yet who sends fluids."));
  gtk_widget_set_halign (add, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (self->suppliers), add);
}

static void
show_fluids (UnsootView *view, gpointer result)
{
  UnsootFluidsPage *self = UNSOOT_FLUIDS_PAGE (view);
  Fluids *fluids = result;

  show_shelf (self, fluids->supplies);
  show_shorts (self, fluids->shorts);
  show_suppliers (self, fluids->suppliers);
  gtk_widget_set_visible (GTK_WIDGET (self->shorts), fluids->supplies->len > 0);
  fluids_free (fluids);
}

static void
unsoot_fluids_page_dispose (GObject *object)
{
  UnsootFluidsPage *self = UNSOOT_FLUIDS_PAGE (object);

  G_OBJECT_CLASS (unsoot_fluids_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_FLUIDS_PAGE);
  for (gsize i = 0; i < UNSOOT_SHELF_COLUMNS; i++)
    g_clear_object (&self->groups[i]);
}

static void
unsoot_fluids_page_class_init (UnsootFluidsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_fluids_page_dispose;
  view_class->read = read_fluids;
  view_class->free_result = fluids_free;
  view_class->show = show_fluids;
  g_type_ensure (UNSOOT_TYPE_CARD);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/fluids-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, acts);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, heads);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, shelf);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, table);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, nothing);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, shorts);
  gtk_widget_class_bind_template_child (widget_class, UnsootFluidsPage, suppliers);
}

static void
unsoot_fluids_page_init (UnsootFluidsPage *self)
{
  for (gsize i = 0; i < UNSOOT_SHELF_COLUMNS; i++)
    self->groups[i] = gtk_size_group_new (GTK_SIZE_GROUP_HORIZONTAL);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_box_append (self->heads, unsoot_fluid_shelf_heads_new (self->groups));
}
