/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machines-page.h"

#include "columns.h"
#include "machine-card.h"
#include "machine-file.h"

struct _UnsootMachinesPage
{
  UnsootView parent_instance;

  /* template */
  UnsootColumns *cards;
  GtkWidget *nothing;
};

G_DEFINE_FINAL_TYPE (UnsootMachinesPage, unsoot_machines_page, UNSOOT_TYPE_VIEW)

static gpointer
read_machines (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return unsoot_machine_files (db, error);
}

static void
show_machines (UnsootView *view, gpointer result)
{
  UnsootMachinesPage *self = UNSOOT_MACHINES_PAGE (view);
  g_autoptr (GPtrArray) files = result;
  g_autofree char *today = unsoot_session_today (unsoot_view_get_session (view));
  GtkWidget *card;

  while ((card = gtk_widget_get_first_child (GTK_WIDGET (self->cards))) != NULL)
    gtk_widget_unparent (card);
  for (guint i = 0; i < files->len; i++)
    gtk_widget_set_parent (unsoot_machine_card_new (g_ptr_array_index (files, i), today),
                           GTK_WIDGET (self->cards));
  gtk_widget_set_visible (GTK_WIDGET (self->cards), files->len > 0);
  gtk_widget_set_visible (self->nothing, files->len == 0);
}

static void
unsoot_machines_page_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_machines_page_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_MACHINES_PAGE);
}

static void
unsoot_machines_page_class_init (UnsootMachinesPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);
  UnsootViewClass *view_class = UNSOOT_VIEW_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_machines_page_dispose;
  view_class->read = read_machines;
  view_class->free_result = (GDestroyNotify) g_ptr_array_unref;
  view_class->show = show_machines;
  g_type_ensure (UNSOOT_TYPE_COLUMNS);
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/unsoot/Unsoot/ui/machines-page.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinesPage, cards);
  gtk_widget_class_bind_template_child (widget_class, UnsootMachinesPage, nothing);
}

static void
unsoot_machines_page_init (UnsootMachinesPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}
