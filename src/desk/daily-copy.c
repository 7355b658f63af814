/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "daily-copy.h"

#include <glib/gi18n-lib.h>

#include "backup.h"
#include "store-call.h"

/* Long after the first frame, so that nobody waits for it. */
#define FIRST_SECONDS 5
#define AGAIN_SECONDS 1800

typedef struct
{
  GWeakRef window;
  GWeakRef session;
  UnsootStoreSlot slot;
} DailyCopy;

static void
daily_copy_free (DailyCopy *copy)
{
  unsoot_store_slot_clear (&copy->slot);
  g_weak_ref_clear (&copy->window);
  g_weak_ref_clear (&copy->session);
  g_free (copy);
}

static gpointer
copy_func (UnsootDb *db, gpointer now, GCancellable *cancellable, GError **error)
{
  unsoot_backup_daily (db, *(gint64 *) now, error);
  return NULL;
}

static void
copied (gpointer owner, gpointer result, const GError *error)
{
  if (error == NULL)
    return;
  g_autofree char *text
      = g_strdup_printf (_ ("Today’s copy of the book could not be made. %s"), error->message);
  unsoot_window_toast (UNSOOT_WINDOW (owner), text);
}

static gboolean
copy_cb (gpointer data)
{
  DailyCopy *copy = data;
  g_autoptr (UnsootWindow) window = g_weak_ref_get (&copy->window);
  g_autoptr (UnsootSession) session = g_weak_ref_get (&copy->session);

  if (window == NULL || session == NULL || unsoot_window_get_session (window) != session)
    return G_SOURCE_REMOVE;
  gint64 now = unsoot_session_now (session);
  unsoot_store_slot_call (&copy->slot, unsoot_session_get_store (session), copy_func,
                          g_memdup2 (&now, sizeof now), g_free, NULL, copied, window);
  return G_SOURCE_CONTINUE;
}

static gboolean
first_cb (gpointer data)
{
  if (copy_cb (data) == G_SOURCE_CONTINUE)
    g_timeout_add_seconds_full (G_PRIORITY_LOW, AGAIN_SECONDS, copy_cb, data,
                                (GDestroyNotify) daily_copy_free);
  else
    daily_copy_free (data);
  return G_SOURCE_REMOVE;
}

void
unsoot_daily_copy_start (UnsootWindow *window, UnsootSession *session)
{
  DailyCopy *copy = g_new0 (DailyCopy, 1);

  g_weak_ref_init (&copy->window, window);
  g_weak_ref_init (&copy->session, session);
  g_timeout_add_seconds_full (G_PRIORITY_LOW, FIRST_SECONDS, first_cb, copy, NULL);
}
