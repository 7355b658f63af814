/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicle-readings.h"

#include <glib/gi18n-lib.h>

#include "access.h"
#include "drawing-view.h"
#include "reading-history.h"

enum
{
  WIDTH = 280,
  HEIGHT = 132,
  GAP = 12,
  MOST_IN_A_ROW = 4
};

/* One picture's data; the rows stay as long as one of the pictures needs them. */
typedef struct
{
  GPtrArray *rows;
  GPtrArray *histories;
  const UnsootReadingHistory *history; /* of those */
  GTimeZone *zone;
} Small;

static void
small_free (gpointer data)
{
  Small *small = data;

  g_ptr_array_unref (small->histories);
  g_ptr_array_unref (small->rows);
  g_time_zone_unref (small->zone);
  g_free (small);
}

static UnsootDrawing *
make (gconstpointer data, double width, double height)
{
  const Small *small = data;

  return unsoot_reading_history_draw (small->history, small->zone, width, height);
}

static GtkWidget *
small_new (UnsootVehicleFile *file, GPtrArray *histories, guint which, GTimeZone *zone)
{
  Small *small = g_new (Small, 1);

  small->rows = g_ptr_array_ref (file->readings);
  small->histories = g_ptr_array_ref (histories);
  small->history = g_ptr_array_index (histories, which);
  small->zone = g_time_zone_ref (zone);
  return unsoot_drawing_view_new (
      unsoot_slug_words (unsoot_reading_kinds, (int) small->history->kind), WIDTH, HEIGHT, make,
      small, small_free);
}

GtkWidget *
unsoot_vehicle_readings_new (UnsootVehicleFile *file, UnsootSession *session)
{
  g_autoptr (GPtrArray) histories = unsoot_reading_histories (file->readings);
  GtkWidget *flow;

  if (histories->len == 0)
    return NULL;
  flow = gtk_flow_box_new ();
  unsoot_access_name (flow, _ ("Readings before and after"));
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (flow), TRUE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (flow), MOST_IN_A_ROW);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (flow), GAP);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (flow), GAP);
  for (guint i = 0; i < histories->len; i++)
    {
      GtkWidget *child = gtk_flow_box_child_new ();
      const UnsootReadingHistory *history = g_ptr_array_index (histories, i);

      gtk_widget_set_focusable (child, FALSE);
      unsoot_access_name (child, unsoot_slug_words (unsoot_reading_kinds, (int) history->kind));
      gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child),
                                    small_new (file, histories, i, unsoot_session_zone (session)));
      gtk_flow_box_append (GTK_FLOW_BOX (flow), child);
    }
  return flow;
}
