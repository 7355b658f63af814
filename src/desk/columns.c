/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "columns.h"

enum
{
  GAP = 12,
  MAX_COLUMNS = 2,
  MIN_WIDTH = 320
};

struct _UnsootColumns
{
  GtkWidget parent_instance;
};

static GtkBuildableIface *parent_buildable;

static void
unsoot_columns_add_child (GtkBuildable *buildable, GtkBuilder *builder, GObject *child,
                          const char *type)
{
  if (GTK_IS_WIDGET (child))
    gtk_widget_set_parent (GTK_WIDGET (child), GTK_WIDGET (buildable));
  else
    parent_buildable->add_child (buildable, builder, child, type);
}

static void
buildable_init (GtkBuildableIface *iface)
{
  parent_buildable = g_type_interface_peek_parent (iface);
  iface->add_child = unsoot_columns_add_child;
}

G_DEFINE_FINAL_TYPE_WITH_CODE (UnsootColumns, unsoot_columns, GTK_TYPE_WIDGET,
                               G_IMPLEMENT_INTERFACE (GTK_TYPE_BUILDABLE, buildable_init))

static void
unsoot_columns_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (unsoot_columns_parent_class)->dispose (object);
}

static int
widest_child (GtkWidget *widget)
{
  int widest = MIN_WIDTH;

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      int least;
      gtk_widget_measure (child, GTK_ORIENTATION_HORIZONTAL, -1, &least, NULL, NULL, NULL);
      widest = MAX (widest, least);
    }
  return widest;
}

/* Lays the children out in that width; allocates them too where asked. Returns the height. */
static int
lay_out (GtkWidget *widget, int width, gboolean allocate)
{
  const gboolean fits = MAX_COLUMNS * (widest_child (widget) + GAP) - GAP <= width;
  const int n = fits && width >= UNSOOT_COLUMNS_SPLIT ? MAX_COLUMNS : 1;
  const int column = (width - GAP * (n - 1)) / n;
  int bottoms[MAX_COLUMNS] = { 0 };

  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    {
      const int i = n == 2 && bottoms[1] < bottoms[0] ? 1 : 0;
      int height;

      if (!gtk_widget_should_layout (child))
        continue;
      gtk_widget_measure (child, GTK_ORIENTATION_VERTICAL, column, NULL, &height, NULL, NULL);
      if (allocate)
        {
          const GtkAllocation place = { i * (column + GAP), bottoms[i], column, height };
          gtk_widget_size_allocate (child, &place, -1);
        }
      bottoms[i] += height + GAP;
    }
  return MAX (MAX (bottoms[0], bottoms[1]) - GAP, 0);
}

static void
unsoot_columns_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum,
                        int *natural, int *minimum_baseline, int *natural_baseline)
{
  if (orientation == GTK_ORIENTATION_VERTICAL)
    {
      *minimum = *natural = lay_out (widget, for_size < 0 ? MIN_WIDTH : for_size, FALSE);
      return;
    }
  *minimum = widest_child (widget);
  *natural = MAX (UNSOOT_COLUMNS_SPLIT, *minimum);
}

static void
unsoot_columns_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  lay_out (widget, width, TRUE);
}

static GtkSizeRequestMode
unsoot_columns_get_request_mode (GtkWidget *widget)
{
  return GTK_SIZE_REQUEST_HEIGHT_FOR_WIDTH;
}

static void
unsoot_columns_class_init (UnsootColumnsClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = unsoot_columns_dispose;
  widget_class->measure = unsoot_columns_measure;
  widget_class->size_allocate = unsoot_columns_size_allocate;
  widget_class->get_request_mode = unsoot_columns_get_request_mode;
}

static void
unsoot_columns_init (UnsootColumns *self)
{
}
