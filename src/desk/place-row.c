/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "place-row.h"

#include <glib/gi18n-lib.h>

#include "access.h"

struct _UnsootPlaceRow
{
  GtkListBoxRow parent_instance;

  /* template */
  GtkImage *icon;
  GtkLabel *title;
  GtkLabel *badge;

  const UnsootDeskPlace *place;
};

G_DEFINE_FINAL_TYPE (UnsootPlaceRow, unsoot_place_row, GTK_TYPE_LIST_BOX_ROW)

static void
unsoot_place_row_dispose (GObject *object)
{
  G_OBJECT_CLASS (unsoot_place_row_parent_class)->dispose (object);
  gtk_widget_dispose_template (GTK_WIDGET (object), UNSOOT_TYPE_PLACE_ROW);
}

static void
unsoot_place_row_class_init (UnsootPlaceRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_place_row_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/unsoot/Unsoot/ui/place-row.ui");
  gtk_widget_class_bind_template_child (widget_class, UnsootPlaceRow, icon);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlaceRow, title);
  gtk_widget_class_bind_template_child (widget_class, UnsootPlaceRow, badge);
}

static void
unsoot_place_row_init (UnsootPlaceRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
}

GtkWidget *
unsoot_place_row_new (const UnsootDeskPlace *place)
{
  UnsootPlaceRow *self = g_object_new (UNSOOT_TYPE_PLACE_ROW, NULL);

  self->place = place;
  gtk_image_set_from_icon_name (self->icon, place->icon);
  gtk_label_set_text (self->title, _ (place->title));
  unsoot_place_row_set_count (self, 0);
  return GTK_WIDGET (self);
}

const UnsootDeskPlace *
unsoot_place_row_get_place (UnsootPlaceRow *self)
{
  return self->place;
}

void
unsoot_place_row_set_count (UnsootPlaceRow *self, guint count)
{
  g_autofree char *text = g_strdup_printf ("%u", count);
  g_autofree char *name = NULL;

  gtk_label_set_text (self->badge, text);
  gtk_widget_set_visible (GTK_WIDGET (self->badge), count > 0);
  if (count == 0)
    {
      unsoot_access_name (GTK_WIDGET (self), _ (self->place->title));
      return;
    }
  /* Translators: a place and how many things there need a hand: “Today, 4 need a hand” */
  name = g_strdup_printf (ngettext ("%s, %u needs a hand", "%s, %u need a hand", count),
                          _ (self->place->title), count);
  unsoot_access_name (GTK_WIDGET (self), name);
}
