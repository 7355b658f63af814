/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-watch.h"

#include <glib/gi18n-lib.h>

#include "bay-bell.h"
#include "bay-words.h"
#include "jobs.h"
#include "runs.h"
#include "store-call.h"

enum
{
  TICKS_A_BEAT = 2,
  MOST_HELD_UP = 4 /* beats */
};

struct _UnsootBayWatch
{
  GObject parent_instance;

  UnsootSession *session; /* borrowed: it owns the watch */
  UnsootStoreSlot slot;
  GPtrArray *alarms;    /* UnsootBayAlarm, first due first */
  GHashTable *followed; /* run ids */
  GHashTable *told;     /* run ids that rang */
  guint tick_id;
  guint ticks;
  GCancellable *sound; /* that is being played; NULL: none */
  guint held_up;       /* beats since it began */

  UnsootSession *kept; /* owned, while the program is held */
};

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (UnsootBayWatch, unsoot_bay_watch, G_TYPE_OBJECT)

static void
alarm_free (gpointer data)
{
  UnsootBayAlarm *alarm = data;

  g_free (alarm->step);
  g_free (alarm);
}

/* When the run's alarm is, or was, due; -1: it has none. */
static gint64
due_of (const UnsootRun *run, gint64 now)
{
  gint64 late = 0;

  return unsoot_run_alarm (run, now, &late) ? now - late : unsoot_run_alarm_at (run);
}

static UnsootBayAlarm *
alarm_of (UnsootDb *db, const UnsootRunRow *row, const UnsootRun *run, gint64 due, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, row->job_id, error);
  UnsootBayAlarm *alarm;

  if (job == NULL)
    return NULL;
  alarm = g_new0 (UnsootBayAlarm, 1);
  alarm->run_id = row->id;
  alarm->job_id = job->id;
  alarm->job_number = job->number;
  alarm->due = due;
  alarm->step = unsoot_step_words (
      unsoot_procedure_step (unsoot_run_procedure (run), unsoot_run_current (run)));
  return alarm;
}

static int
by_due (gconstpointer a, gconstpointer b)
{
  const UnsootBayAlarm *first = *(UnsootBayAlarm *const *) a;
  const UnsootBayAlarm *second = *(UnsootBayAlarm *const *) b;

  return (first->due > second->due) - (first->due < second->due);
}

/* On the worker. */
static gpointer
read_alarms (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const gint64 now = *(const gint64 *) data;
  g_autoptr (GPtrArray) alarms = g_ptr_array_new_with_free_func (alarm_free);
  g_autoptr (GPtrArray) rows = unsoot_job_run_list (db, error);

  if (rows == NULL)
    return NULL;
  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootRunRow *row = g_ptr_array_index (rows, i);
      g_autoptr (UnsootRun) run = unsoot_job_run_load (db, row->id, error);
      UnsootBayAlarm *alarm;
      gint64 due;

      if (run == NULL)
        return NULL;
      due = due_of (run, now);
      if (due < 0)
        continue;
      alarm = alarm_of (db, row, run, due, error);
      if (alarm == NULL)
        return NULL;
      g_ptr_array_add (alarms, alarm);
    }
  g_ptr_array_sort (alarms, by_due);
  return g_steal_pointer (&alarms);
}

static gint64 *
key_of (gint64 run_id)
{
  return g_memdup2 (&run_id, sizeof run_id);
}

static char *
notification_id (gint64 run_id)
{
  return g_strdup_printf ("alarm-%" G_GINT64_FORMAT, run_id);
}

static void
notify (UnsootBayWatch *self, const UnsootBayAlarm *alarm)
{
  GApplication *application = g_application_get_default ();
  g_autofree char *title = g_strdup_printf (_ ("Alarm: job %d"), (int) alarm->job_number);
  g_autofree char *late = unsoot_bay_late (unsoot_session_now (self->session) - alarm->due);
  g_autofree char *body = g_strdup_printf (_ ("%s: the time is over, %s."), alarm->step, late);
  g_autofree char *id = notification_id (alarm->run_id);
  g_autoptr (GNotification) notification = g_notification_new (title);

  if (application == NULL || !g_action_group_has_action (G_ACTION_GROUP (application), "bay"))
    return;
  g_notification_set_body (notification, body);
  g_notification_set_priority (notification, G_NOTIFICATION_PRIORITY_URGENT);
  g_notification_set_default_action_and_target (notification, "app.bay", "x", alarm->job_id);
  g_notification_add_button_with_target (notification, _ ("Open the bay"), "app.bay", "x",
                                         alarm->job_id);
  g_application_send_notification (application, id, notification);
}

static void
rang_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  g_autofree GWeakRef *ref = user_data;
  g_autoptr (UnsootBayWatch) self = g_weak_ref_get (ref);

  unsoot_bay_bell_ring_finish (result);
  if (self != NULL)
    g_clear_object (&self->sound);
  g_weak_ref_clear (ref);
}

/* A sound that does not come to its end, because the sound server hangs, silences nothing. */
static void
sound (UnsootBayWatch *self)
{
  GWeakRef *ref;

  if (self->sound != NULL)
    {
      if (++self->held_up >= MOST_HELD_UP)
        unsoot_bay_bell_beep ();
      return;
    }
  ref = g_new (GWeakRef, 1);
  g_weak_ref_init (ref, self);
  self->held_up = 0;
  self->sound = g_cancellable_new ();
  unsoot_bay_bell_ring_async (self->sound, rang_cb, ref);
}

static void
silence (UnsootBayWatch *self)
{
  if (self->sound != NULL)
    g_cancellable_cancel (self->sound);
}

static void
ring (UnsootBayWatch *self)
{
  const gint64 now = unsoot_session_now (self->session);
  gboolean rings = FALSE;

  for (guint i = 0; i < self->alarms->len; i++)
    {
      const UnsootBayAlarm *alarm = g_ptr_array_index (self->alarms, i);

      if (alarm->due > now)
        continue;
      rings = TRUE;
      if (g_hash_table_add (self->told, key_of (alarm->run_id)))
        {
          self->ticks = 0;
          notify (self, alarm);
        }
    }
  if (!rings)
    {
      silence (self);
      return;
    }
  if (self->ticks++ % TICKS_A_BEAT == 0)
    sound (self);
  g_signal_emit (self, signals[CHANGED], 0);
}

static gboolean
tick_cb (gpointer user_data)
{
  ring (user_data);
  return G_SOURCE_CONTINUE;
}

static UnsootBayAlarm *
find_alarm (UnsootBayWatch *self, gint64 run_id)
{
  for (guint i = 0; i < self->alarms->len; i++)
    {
      UnsootBayAlarm *alarm = g_ptr_array_index (self->alarms, i);
      if (alarm->run_id == run_id)
        return alarm;
    }
  return NULL;
}

/* What no longer rings is taken off the desktop too. */
static void
forget_heard (UnsootBayWatch *self)
{
  GApplication *application = g_application_get_default ();
  GHashTableIter each;
  gpointer run_id;

  g_hash_table_iter_init (&each, self->told);
  while (g_hash_table_iter_next (&each, &run_id, NULL))
    if (find_alarm (self, *(gint64 *) run_id) == NULL)
      {
        g_autofree char *id = notification_id (*(gint64 *) run_id);
        if (application != NULL)
          g_application_withdraw_notification (application, id);
        g_hash_table_iter_remove (&each);
      }
}

static gboolean
has_to_hold (UnsootBayWatch *self)
{
  for (guint i = 0; i < self->alarms->len; i++)
    {
      const UnsootBayAlarm *alarm = g_ptr_array_index (self->alarms, i);
      if (g_hash_table_contains (self->followed, &alarm->run_id))
        return TRUE;
    }
  return FALSE;
}

/* The last reference to the session, and so to the watch, may go here. */
static void
follow_hold (UnsootBayWatch *self)
{
  GApplication *application = g_application_get_default ();
  const gboolean holds = has_to_hold (self);

  if (application == NULL || holds == (self->kept != NULL))
    return;
  if (holds)
    {
      self->kept = g_object_ref (self->session);
      g_application_hold (application);
      return;
    }
  g_autoptr (UnsootSession) kept = g_steal_pointer (&self->kept);
  g_application_release (application);
}

static void
read_done (gpointer owner, gpointer result, const GError *error)
{
  UnsootBayWatch *self = owner;

  if (error != NULL)
    return;
  g_ptr_array_unref (self->alarms);
  self->alarms = result;
  forget_heard (self);
  if (self->alarms->len > 0 && self->tick_id == 0)
    self->tick_id = g_timeout_add_seconds (1, tick_cb, self);
  else if (self->alarms->len == 0)
    g_clear_handle_id (&self->tick_id, g_source_remove);
  ring (self);
  g_signal_emit (self, signals[CHANGED], 0);
  follow_hold (self);
}

static void
read_again (UnsootBayWatch *self)
{
  gint64 *now = g_new (gint64, 1);

  *now = unsoot_session_now (self->session);
  unsoot_store_slot_call (&self->slot, unsoot_session_get_store (self->session), read_alarms, now,
                          g_free, (GDestroyNotify) g_ptr_array_unref, read_done, self);
}

static void
store_changed_cb (UnsootStore *store, UnsootBayWatch *self)
{
  read_again (self);
}

static void
unsoot_bay_watch_finalize (GObject *object)
{
  UnsootBayWatch *self = UNSOOT_BAY_WATCH (object);

  g_clear_handle_id (&self->tick_id, g_source_remove);
  unsoot_store_slot_clear (&self->slot);
  silence (self);
  g_clear_object (&self->sound);
  g_ptr_array_unref (self->alarms);
  g_hash_table_unref (self->followed);
  g_hash_table_unref (self->told);
  G_OBJECT_CLASS (unsoot_bay_watch_parent_class)->finalize (object);
}

static void
unsoot_bay_watch_class_init (UnsootBayWatchClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = unsoot_bay_watch_finalize;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_bay_watch_init (UnsootBayWatch *self)
{
  self->alarms = g_ptr_array_new_with_free_func (alarm_free);
  self->followed = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  self->told = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
}

UnsootBayWatch *
unsoot_bay_watch_of (UnsootSession *session)
{
  UnsootBayWatch *self = g_object_get_data (G_OBJECT (session), "unsoot-bay-watch");

  if (self != NULL)
    return self;
  self = g_object_new (UNSOOT_TYPE_BAY_WATCH, NULL);
  self->session = session;
  g_object_set_data_full (G_OBJECT (session), "unsoot-bay-watch", self, g_object_unref);
  g_signal_connect_object (unsoot_session_get_store (session), "changed",
                           G_CALLBACK (store_changed_cb), self, 0);
  read_again (self);
  return self;
}

const UnsootBayAlarm *
unsoot_bay_watch_ringing (UnsootBayWatch *self)
{
  const UnsootBayAlarm *first = self->alarms->len > 0 ? g_ptr_array_index (self->alarms, 0) : NULL;

  return first != NULL && first->due <= unsoot_session_now (self->session) ? first : NULL;
}

void
unsoot_bay_watch_follow (UnsootBayWatch *self, gint64 run_id)
{
  g_return_if_fail (UNSOOT_IS_BAY_WATCH (self));

  if (g_hash_table_add (self->followed, key_of (run_id)))
    follow_hold (self);
}

gboolean
unsoot_bay_watch_follows (UnsootBayWatch *self, gint64 run_id)
{
  return g_hash_table_contains (self->followed, &run_id);
}

gboolean
unsoot_bay_watch_holds (UnsootBayWatch *self)
{
  return self->kept != NULL;
}
