/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store.h"

#include <glib/gi18n-lib.h>

#include "migrate.h"

struct _UnsootStore
{
  GObject parent_instance;

  char *path;
  GMainContext *context; /* where "changed" is emitted */
  GThread *worker;
  GAsyncQueue *jobs;
  GMutex closing; /* guards closed against calls from other threads */
  gboolean closed;
  guint64 generation;    /* guarded by closing */
  gboolean announcement; /* of a change, on its way; guarded by closing */
};

G_DEFINE_TYPE (UnsootStore, unsoot_store, G_TYPE_OBJECT)

enum
{
  CHANGED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* One call. An asynchronous one has a task, one that is waited for a condition. */
typedef struct
{
  UnsootStoreFunc func; /* NULL: close the file and end */
  gpointer data;
  GDestroyNotify free_data;
  GDestroyNotify free_result;
  GCancellable *cancellable;
  gpointer result;
  GError *error;
  GTask *task;
  GMutex mutex;
  GCond finished;
  gboolean is_finished;
} Job;

typedef struct
{
  UnsootStore *store;
  UnsootDbFlags flags;
  Job opening; /* waited for; its result says whether the file is open */
} Opening;

static void
job_free (gpointer data)
{
  Job *job = data;
  if (job->free_data != NULL)
    job->free_data (job->data);
  g_clear_object (&job->cancellable);
  g_clear_object (&job->task);
  g_mutex_clear (&job->mutex);
  g_cond_clear (&job->finished);
  g_free (job);
}

static void
attach_idle (GMainContext *context, GSourceFunc func, gpointer data, GDestroyNotify free_data)
{
  g_autoptr (GSource) source = g_idle_source_new ();
  g_source_set_priority (source, G_PRIORITY_DEFAULT);
  g_source_set_callback (source, func, data, free_data);
  g_source_attach (source, context);
}

/* On the caller's main context, so that what the caller gave is freed there too. */
static gboolean
deliver_cb (gpointer data)
{
  Job *job = data;
  if (job->error != NULL)
    g_task_return_error (job->task, g_steal_pointer (&job->error));
  else
    g_task_return_pointer (job->task, g_steal_pointer (&job->result), job->free_result);
  return G_SOURCE_REMOVE;
}

static void
wait_for_job (Job *job)
{
  g_mutex_lock (&job->mutex);
  while (!job->is_finished)
    g_cond_wait (&job->finished, &job->mutex);
  g_mutex_unlock (&job->mutex);
}

static void
finish_job (Job *job)
{
  if (job->task != NULL)
    {
      attach_idle (g_task_get_context (job->task), deliver_cb, job, job_free);
      return;
    }
  g_mutex_lock (&job->mutex);
  job->is_finished = TRUE;
  g_cond_signal (&job->finished);
  g_mutex_unlock (&job->mutex);
}

static gboolean
announce_cb (gpointer data)
{
  UnsootStore *store = data;
  g_mutex_lock (&store->closing);
  store->announcement = FALSE;
  g_mutex_unlock (&store->closing);
  g_signal_emit (store, signals[CHANGED], 0);
  return G_SOURCE_REMOVE;
}

/* One announcement is enough for all that is written before it arrives. */
static void
note_change (UnsootStore *store)
{
  g_mutex_lock (&store->closing);
  gboolean announce = !store->announcement && !store->closed;
  store->announcement |= announce;
  store->generation++;
  g_mutex_unlock (&store->closing);
  if (announce)
    attach_idle (store->context, announce_cb, g_object_ref (store), g_object_unref);
}

static void
run_job (UnsootStore *store, UnsootDb *db, Job *job)
{
  gint64 before = unsoot_db_total_changes (db);

  if (g_cancellable_is_cancelled (job->cancellable))
    g_set_error_literal (&job->error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CANCELLED,
                         _ ("Stopped."));
  else
    {
      unsoot_db_set_cancellable (db, job->cancellable);
      job->result = job->func (db, job->data, job->cancellable, &job->error);
      unsoot_db_set_cancellable (db, NULL);
      unsoot_db_assert_idle (db);
    }
  if (job->error != NULL && job->result != NULL && job->free_result != NULL)
    g_clear_pointer (&job->result, job->free_result);

  /* The caller holds the store until it has its answer. */
  if (unsoot_db_total_changes (db) != before)
    note_change (store);
  finish_job (job);
}

/* The worker thread: opens the file, owns it, closes it. */
static gpointer
work (gpointer data)
{
  Opening *opening = data;
  UnsootStore *store = opening->store;
  GAsyncQueue *jobs = store->jobs;
  Job *first = &opening->opening;
  UnsootDb *db = unsoot_db_open (store->path, opening->flags, &first->error);

  /* The clock names the copy that is made before an upgrade, nothing in the book. */
  if (db != NULL && !unsoot_migrate (db, g_get_real_time () / G_USEC_PER_SEC, &first->error))
    g_clear_pointer (&db, unsoot_db_close);
  gboolean opened = db != NULL;
  finish_job (first);

  while (opened)
    {
      Job *job = g_async_queue_pop (jobs);
      if (job->func == NULL)
        {
          job_free (job);
          break;
        }
      run_job (store, db, job);
    }
  if (opened)
    unsoot_db_close (db);
  return NULL;
}

static Job *
job_new (UnsootStoreFunc func, gpointer data, GCancellable *cancellable)
{
  Job *job = g_new0 (Job, 1);
  job->func = func;
  job->data = data;
  job->cancellable = cancellable != NULL ? g_object_ref (cancellable) : NULL;
  g_mutex_init (&job->mutex);
  g_cond_init (&job->finished);
  return job;
}

/* Hands @job to the worker, unless the store is closed. */
static gboolean
push (UnsootStore *store, Job *job)
{
  g_mutex_lock (&store->closing);
  gboolean closed = store->closed;
  if (!closed)
    g_async_queue_push (store->jobs, job);
  g_mutex_unlock (&store->closing);
  if (closed)
    g_set_error_literal (&job->error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_FAILED,
                         _ ("The shop’s book is closed."));
  return !closed;
}

void
unsoot_store_close (UnsootStore *store)
{
  g_return_if_fail (UNSOOT_IS_STORE (store));

  g_mutex_lock (&store->closing);
  if (!store->closed && store->worker != NULL)
    g_async_queue_push (store->jobs, job_new (NULL, NULL, NULL));
  store->closed = TRUE;
  g_mutex_unlock (&store->closing);
  g_clear_pointer (&store->worker, g_thread_join);
}

static void
unsoot_store_finalize (GObject *object)
{
  UnsootStore *store = UNSOOT_STORE (object);

  unsoot_store_close (store);
  g_clear_pointer (&store->jobs, g_async_queue_unref);
  g_clear_pointer (&store->context, g_main_context_unref);
  g_mutex_clear (&store->closing);
  g_free (store->path);
  G_OBJECT_CLASS (unsoot_store_parent_class)->finalize (object);
}

static void
unsoot_store_class_init (UnsootStoreClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = unsoot_store_finalize;
  signals[CHANGED] = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL,
                                   NULL, NULL, G_TYPE_NONE, 0);
}

static void
unsoot_store_init (UnsootStore *store)
{
  store->jobs = g_async_queue_new_full (job_free);
  g_mutex_init (&store->closing);
}

static UnsootStore *
open_for (GMainContext *context, const char *path, UnsootDbFlags flags, GError **error)
{
  g_autoptr (UnsootStore) store = g_object_new (UNSOOT_TYPE_STORE, NULL);
  Opening opening = { .store = store, .flags = flags };

  store->path = path != NULL ? g_canonicalize_filename (path, NULL) : NULL;
  store->context = context;
  g_mutex_init (&opening.opening.mutex);
  g_cond_init (&opening.opening.finished);
  store->worker = g_thread_new ("store", work, &opening);
  wait_for_job (&opening.opening);
  g_mutex_clear (&opening.opening.mutex);
  g_cond_clear (&opening.opening.finished);
  if (opening.opening.error == NULL)
    return g_steal_pointer (&store);

  g_propagate_error (error, opening.opening.error);
  return NULL;
}

UnsootStore *
unsoot_store_open (const char *path, UnsootDbFlags flags, GError **error)
{
  return open_for (g_main_context_ref_thread_default (), path, flags, error);
}

typedef struct
{
  char *path;
  UnsootDbFlags flags;
} OpenArguments;

static void
open_arguments_free (gpointer data)
{
  OpenArguments *arguments = data;
  g_free (arguments->path);
  g_free (arguments);
}

static void
open_in_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  OpenArguments *arguments = data;
  GError *error = NULL;
  UnsootStore *store = open_for (g_main_context_ref (g_task_get_context (task)), arguments->path,
                                 arguments->flags, &error);
  if (store != NULL)
    g_task_return_pointer (task, store, g_object_unref);
  else
    g_task_return_error (task, error);
}

void
unsoot_store_open_async (const char *path, UnsootDbFlags flags, GCancellable *cancellable,
                         GAsyncReadyCallback callback, gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  OpenArguments *arguments = g_new0 (OpenArguments, 1);
  arguments->path = g_strdup (path);
  arguments->flags = flags;
  g_task_set_source_tag (task, unsoot_store_open_async);
  g_task_set_task_data (task, arguments, open_arguments_free);
  g_task_run_in_thread (task, open_in_thread);
}

UnsootStore *
unsoot_store_open_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

void
unsoot_store_call_async (UnsootStore *store, UnsootStoreFunc func, gpointer data,
                         GDestroyNotify free_data, GDestroyNotify free_result,
                         GCancellable *cancellable, GAsyncReadyCallback callback,
                         gpointer user_data)
{
  g_return_if_fail (UNSOOT_IS_STORE (store));

  Job *job = job_new (func, data, cancellable);
  job->free_data = free_data;
  job->free_result = free_result;
  job->task = g_task_new (store, cancellable, callback, user_data);
  g_task_set_source_tag (job->task, unsoot_store_call_async);
  /* A deed that was kept is reported as kept, however late the wish to stop it came. */
  g_task_set_check_cancellable (job->task, FALSE);
  if (!push (store, job))
    finish_job (job);
}

gpointer
unsoot_store_call_finish (UnsootStore *store, GAsyncResult *result, GError **error)
{
  g_return_val_if_fail (g_task_is_valid (result, store), NULL);
  return g_task_propagate_pointer (G_TASK (result), error);
}

gpointer
unsoot_store_call (UnsootStore *store, UnsootStoreFunc func, gpointer data,
                   GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (UNSOOT_IS_STORE (store), NULL);
  g_assert (store->worker != g_thread_self ());

  Job *job = job_new (func, data, cancellable);
  if (push (store, job))
    wait_for_job (job);
  gpointer result = job->result;
  if (job->error != NULL)
    g_propagate_error (error, g_steal_pointer (&job->error));
  job_free (job);
  return result;
}

guint64
unsoot_store_get_generation (UnsootStore *store)
{
  g_mutex_lock (&store->closing);
  guint64 generation = store->generation;
  g_mutex_unlock (&store->closing);
  return generation;
}

const char *
unsoot_store_get_path (UnsootStore *store)
{
  return store->path;
}
