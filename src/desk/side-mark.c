/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "side-mark.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "format.h"

struct _UnsootSideMark
{
  GtkWidget parent_instance;
};

G_DEFINE_FINAL_TYPE (UnsootSideMark, unsoot_side_mark, GTK_TYPE_WIDGET)

static void
unsoot_side_mark_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (unsoot_side_mark_parent_class)->dispose (object);
}

static void
unsoot_side_mark_class_init (UnsootSideMarkClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = unsoot_side_mark_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "sidemark");
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (klass), GTK_ACCESSIBLE_ROLE_IMG);
}

static void
unsoot_side_mark_init (UnsootSideMark *self)
{
  gtk_widget_set_valign (GTK_WIDGET (self), GTK_ALIGN_CENTER);
}

static const char *
side_icon (UnsootSide side)
{
  return side == UNSOOT_SIDE_FUEL ? "unsoot-fuel-side-symbolic" : "unsoot-intake-side-symbolic";
}

GtkWidget *
unsoot_side_mark_new_plain (UnsootSide side)
{
  GtkWidget *self = g_object_new (UNSOOT_TYPE_SIDE_MARK, NULL);
  GtkWidget *image = gtk_image_new_from_icon_name (side_icon (side));

  gtk_accessible_update_state (GTK_ACCESSIBLE (image), GTK_ACCESSIBLE_STATE_HIDDEN, TRUE, -1);
  gtk_widget_set_parent (image, self);
  gtk_widget_add_css_class (self, side == UNSOOT_SIDE_FUEL ? "fuel-side" : "intake-side");
  gtk_widget_set_tooltip_text (self, unsoot_side_label (side));
  unsoot_access_name (self, unsoot_side_label (side));
  return self;
}

GtkWidget *
unsoot_side_mark_new (UnsootSide side, gint64 ml)
{
  GtkWidget *self = unsoot_side_mark_new_plain (side);
  g_autofree char *amount = ml > 0 ? unsoot_format_litres (ml) : NULL;
  g_autofree char *name = NULL;

  gtk_widget_add_css_class (self, "ground");
  if (amount == NULL)
    return self;
  gtk_widget_insert_after (gtk_label_new (amount), self, gtk_widget_get_first_child (self));
  name = g_strdup_printf ("%s: %s", unsoot_side_label (side), amount);
  unsoot_access_name (self, name);
  return self;
}

void
unsoot_side_marks_append (GtkBox *box, const char *sides)
{
  const gboolean both = g_strcmp0 (sides, "both") == 0;

  if (both || g_strcmp0 (sides, "fuel") == 0)
    gtk_box_append (box, unsoot_side_mark_new_plain (UNSOOT_SIDE_FUEL));
  if (both || g_strcmp0 (sides, "intake") == 0)
    gtk_box_append (box, unsoot_side_mark_new_plain (UNSOOT_SIDE_INTAKE));
}

const char *
unsoot_sides_words (const char *sides)
{
  UnsootSide side;

  if (g_strcmp0 (sides, "both") == 0)
    return _ ("Both sides");
  return unsoot_side_from_slug (sides, &side) ? unsoot_side_label (side) : "";
}
