/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-bell.h"

#include <glib/gi18n-lib.h>
#include <gsound.h>
#include <gtk/gtk.h>

/* Of the freedesktop.org sound naming specification. */
#define SOUND "alarm-clock-elapsed"
#define ROLE "alarm"

G_DEFINE_AUTOPTR_CLEANUP_FUNC (GSoundContext, g_object_unref)

enum
{
  SHORTEST_US = 100000 /* where nothing plays at all, the library says at once that it did */
};

typedef struct
{
  gint64 since; /* monotonic */
  GError *error;
} Ring;

static void
ring_free (gpointer data)
{
  Ring *ring = data;

  g_clear_error (&ring->error);
  g_free (ring);
}

void
unsoot_bay_bell_beep (void)
{
  GdkDisplay *display = gdk_display_get_default ();

  if (display != NULL)
    gdk_display_beep (display);
}

/* On the main loop. */
static gboolean
over_cb (gpointer user_data)
{
  GTask *task = user_data;
  const Ring *ring = g_task_get_task_data (task);
  const gboolean heard
      = g_cancellable_is_cancelled (g_task_get_cancellable (task))
        || (ring->error == NULL && g_get_monotonic_time () - ring->since >= SHORTEST_US);

  if (!heard)
    {
      g_debug ("the alarm is not played: %s",
               ring->error != NULL ? ring->error->message : "there is no sound server");
      unsoot_bay_bell_beep ();
    }
  g_task_return_int (task, heard ? UNSOOT_HEARD_SOUND : UNSOOT_HEARD_BELL);
  return G_SOURCE_REMOVE;
}

static void
is_over (GTask *task)
{
  g_main_context_invoke_full (NULL, G_PRIORITY_DEFAULT, over_cb, g_object_ref (task),
                              g_object_unref);
}

static void
played_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  Ring *ring = g_task_get_task_data (task);

  gsound_context_play_full_finish (GSOUND_CONTEXT (source), result, &ring->error);
  is_over (task);
}

/* A thread of its own: a sound server that hangs makes every call to it wait, the first one that
 * looks for it too. It is looked for at each ring, for one that came or went since the last. */
static gpointer
play (gpointer user_data)
{
  g_autoptr (GTask) task = user_data;
  Ring *ring = g_task_get_task_data (task);
  g_autoptr (GSoundContext) context = gsound_context_new (NULL, &ring->error);

  if (context == NULL)
    {
      is_over (task);
      return NULL;
    }
  ring->since = g_get_monotonic_time ();
  gsound_context_play_full (context, g_task_get_cancellable (task), played_cb, g_object_ref (task),
                            GSOUND_ATTR_EVENT_ID, SOUND, GSOUND_ATTR_MEDIA_ROLE, ROLE,
                            GSOUND_ATTR_EVENT_DESCRIPTION, _ ("The alarm of a run"), NULL);
  return NULL;
}

void
unsoot_bay_bell_ring_async (GCancellable *cancellable, GAsyncReadyCallback callback,
                            gpointer user_data)
{
  GTask *task = g_task_new (NULL, cancellable, callback, user_data);

  g_task_set_check_cancellable (task, FALSE);
  g_task_set_task_data (task, g_new0 (Ring, 1), ring_free);
  g_thread_unref (g_thread_new ("alarm", play, task));
}

UnsootHeard
unsoot_bay_bell_ring_finish (GAsyncResult *result)
{
  return (UnsootHeard) g_task_propagate_int (G_TASK (result), NULL);
}

const char *
unsoot_heard_words (UnsootHeard heard)
{
  return heard == UNSOOT_HEARD_SOUND
             ? _ ("The alarm was played. Too soft? Turn up the computer's sound.")
             : _ ("No sound could be played: only the display's bell rang. Look whether this "
                  "computer has a loudspeaker that is on.");
}
