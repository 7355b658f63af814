/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "portrait.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>

#include "picture.h"

enum
{
  FRAMES_UNTIL_STILL = 4
};

typedef struct
{
  UnsootWindow *window; /* borrowed: it owns the tick */
  const UnsootPortrait *portrait;
  int *status;
  guint frames;
} Sitting;

static void
draw_picture (Sitting *sitting)
{
  g_autoptr (GError) error = NULL;

  if (unsoot_picture_save (GTK_WINDOW (sitting->window), sitting->portrait->picture, &error))
    return;
  g_printerr ("%s\n", error->message);
  *sitting->status = EXIT_FAILURE;
}

static void
painted_cb (GdkFrameClock *clock, Sitting *sitting)
{
  g_signal_handlers_disconnect_by_func (clock, painted_cb, sitting);
  g_print ("%" G_GINT64_FORMAT "\n", g_get_monotonic_time ());
  gtk_window_close (GTK_WINDOW (sitting->window));
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer user_data)
{
  Sitting *sitting = user_data;
  UnsootView *view = unsoot_window_get_view (sitting->window);

  gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_PAINT);
  if (view == NULL || !unsoot_view_is_settled (view))
    return G_SOURCE_CONTINUE;
  if (sitting->portrait->first_frame)
    {
      g_signal_connect (clock, "after-paint", G_CALLBACK (painted_cb), sitting);
      return G_SOURCE_REMOVE;
    }
  if (++sitting->frames < FRAMES_UNTIL_STILL)
    return G_SOURCE_CONTINUE;
  draw_picture (sitting);
  gtk_window_close (GTK_WINDOW (widget));
  return G_SOURCE_REMOVE;
}

void
unsoot_portrait_begin (UnsootWindow *window, const UnsootPortrait *portrait, int *status)
{
  Sitting *sitting = g_new0 (Sitting, 1);

  sitting->window = window;
  sitting->portrait = portrait;
  sitting->status = status;
  if (portrait->picture != NULL)
    unsoot_picture_prepare (GTK_WINDOW (window));
  if (portrait->place != NULL && !unsoot_window_open (window, portrait->place, portrait->record))
    {
      g_printerr (_ ("There is no place called “%s”.\n"), portrait->place);
      *status = EXIT_FAILURE;
    }
  g_object_set_data_full (G_OBJECT (window), "sitting", sitting, g_free);
  gtk_widget_add_tick_callback (GTK_WIDGET (window), tick_cb, sitting, NULL);
}
