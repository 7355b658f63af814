/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The worker thread: order, results, stopping, closing, word of changes. */
#include "book.h"

#include <string.h>

#include "store.h"

static UnsootStore *
open_store (void)
{
  GError *error = NULL;
  UnsootStore *store = unsoot_store_open (NULL, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  return store;
}

/* Runs the main loop until @done, for five seconds at most. */
static void
wait_until (const int *done, int wanted)
{
  gint64 end = g_get_monotonic_time () + 5 * G_USEC_PER_SEC;
  while (*done < wanted && g_get_monotonic_time () < end)
    g_main_context_iteration (NULL, FALSE);
  ck_assert_int_eq (*done, wanted);
}

static gpointer
add_holiday (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  unsoot_db_run (db, error, "INSERT INTO holidays (day, name) VALUES ('2031-01-01', $1)",
                 unsoot_text (data));
  return NULL;
}

static gpointer
count_holidays (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  gint64 n = 0;
  unsoot_db_int (db, &n, error, "SELECT count (*) FROM holidays");
  return GINT_TO_POINTER ((int) n);
}

static gpointer
run_endless (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  gint64 n = 0;
  unsoot_db_int (db, &n, error,
                 "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) "
                 "SELECT count (*) FROM n");
  return NULL;
}

static gpointer
take_thread (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  return g_thread_self ();
}

START_TEST (test_one_thread_does_all)
{
  g_autoptr (UnsootStore) store = open_store ();
  gpointer first = unsoot_store_call (store, take_thread, NULL, NULL, NULL);
  gpointer second = unsoot_store_call (store, take_thread, NULL, NULL, NULL);
  ck_assert_ptr_eq (first, second);
  ck_assert_ptr_ne (first, g_thread_self ());
}
END_TEST

typedef struct
{
  GString *order;
  int n_done;
  int n_freed;
  GThread *thread;
} Witness;

typedef struct
{
  Witness *witness;
  char name;
} Named;

static gpointer
take_name (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  Named *named = data;
  g_usleep (1000);
  return g_strdup_printf ("%c", named->name);
}

static void
named_free (gpointer data)
{
  Named *named = data;
  ck_assert_ptr_eq (named->witness->thread, g_thread_self ());
  named->witness->n_freed++;
  g_free (named);
}

static void
named_cb (GObject *store, GAsyncResult *result, gpointer data)
{
  Witness *witness = data;
  GError *error = NULL;
  g_autofree char *name = unsoot_store_call_finish (UNSOOT_STORE (store), result, &error);
  ck_no_error (error);
  ck_assert_ptr_eq (witness->thread, g_thread_self ());
  g_string_append (witness->order, name);
  witness->n_done++;
}

START_TEST (test_in_order_and_back_on_the_main_loop)
{
  g_autoptr (UnsootStore) store = open_store ();
  Witness witness = { g_string_new (NULL), 0, 0, g_thread_self () };
  for (int i = 0; i < 26; i++)
    {
      Named *named = g_new (Named, 1);
      named->witness = &witness;
      named->name = (char) ('a' + i);
      unsoot_store_call_async (store, take_name, named, named_free, g_free, NULL, named_cb,
                               &witness);
    }
  wait_until (&witness.n_done, 26);
  wait_until (&witness.n_freed, 26);
  ck_assert_str_eq (witness.order->str, "abcdefghijklmnopqrstuvwxyz");
  g_string_free (witness.order, TRUE);
}
END_TEST

static int n_results_freed;

static void
result_freed (gpointer result)
{
  n_results_freed++;
}

static void
ignoring_cb (GObject *store, GAsyncResult *result, gpointer data)
{
  (*(int *) data)++;
}

START_TEST (test_result_nobody_takes_is_freed)
{
  g_autoptr (UnsootStore) store = open_store ();
  int n_done = 0;
  unsoot_store_call_async (store, take_thread, NULL, NULL, result_freed, NULL, ignoring_cb,
                           &n_done);
  wait_until (&n_done, 1);
  wait_until (&n_results_freed, 1);
}
END_TEST

typedef struct
{
  int n_done;
  GError *error;
} Outcome;

static void
outcome_cb (GObject *store, GAsyncResult *result, gpointer data)
{
  Outcome *outcome = data;
  unsoot_store_call_finish (UNSOOT_STORE (store), result, &outcome->error);
  outcome->n_done++;
}

static gboolean
cancel_cb (gpointer cancellable)
{
  g_cancellable_cancel (cancellable);
  return G_SOURCE_REMOVE;
}

static gpointer
note_running (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  *(gboolean *) data = TRUE;
  return NULL;
}

/* The first is stopped while it runs, the second before it began; the third is not touched. */
START_TEST (test_cancel)
{
  g_autoptr (UnsootStore) store = open_store ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  Outcome running = { 0 };
  Outcome waiting = { 0 };
  Outcome other = { 0 };
  gboolean began = FALSE;
  unsoot_store_call_async (store, run_endless, NULL, NULL, NULL, cancellable, outcome_cb, &running);
  unsoot_store_call_async (store, note_running, &began, NULL, NULL, cancellable, outcome_cb,
                           &waiting);
  unsoot_store_call_async (store, add_holiday, (gpointer) "y", NULL, NULL, NULL, outcome_cb,
                           &other);
  g_timeout_add (50, cancel_cb, cancellable);
  wait_until (&running.n_done, 1);
  wait_until (&waiting.n_done, 1);
  wait_until (&other.n_done, 1);
  ck_store_error (running.error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  ck_store_error (waiting.error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  ck_no_error (other.error);
  ck_assert (!began);
  ck_assert_int_eq (GPOINTER_TO_INT (unsoot_store_call (store, count_holidays, NULL, NULL, NULL)),
                    1);
}
END_TEST

static void
changed_cb (UnsootStore *store, gpointer data)
{
  (*(int *) data)++;
}

START_TEST (test_word_of_changes)
{
  g_autoptr (UnsootStore) store = open_store ();
  int n_changes = 0;
  guint64 before = unsoot_store_get_generation (store);
  g_signal_connect (store, "changed", G_CALLBACK (changed_cb), &n_changes);

  unsoot_store_call (store, count_holidays, NULL, NULL, NULL);
  ck_assert_uint_eq (unsoot_store_get_generation (store), before);
  for (int i = 0; i < 20; i++)
    unsoot_store_call (store, add_holiday, (gpointer) "x", NULL, NULL);
  ck_assert_uint_eq (unsoot_store_get_generation (store), before + 20);
  wait_until (&n_changes, 1);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  ck_assert_int_eq (n_changes, 1);
  unsoot_store_call (store, add_holiday, (gpointer) "x", NULL, NULL);
  wait_until (&n_changes, 2);
}
END_TEST

START_TEST (test_closing_waits_then_refuses)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  GError *error = NULL;
  g_autoptr (UnsootStore) store = unsoot_store_open (path, UNSOOT_DB_CREATE, &error);
  ck_no_error (error);
  ck_assert_str_eq (unsoot_store_get_path (store), path);
  Outcome outcomes[10] = { 0 };
  for (int i = 0; i < 10; i++)
    unsoot_store_call_async (store, add_holiday, (gpointer) "x", NULL, NULL, NULL, outcome_cb,
                             &outcomes[i]);
  unsoot_store_close (store);
  unsoot_store_close (store);
  ck_raw (path, "SELECT count (*) FROM holidays", "10");

  unsoot_store_call (store, add_holiday, (gpointer) "x", NULL, &error);
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "closed");
  Outcome late = { 0 };
  unsoot_store_call_async (store, add_holiday, (gpointer) "x", NULL, NULL, NULL, outcome_cb, &late);
  wait_until (&late.n_done, 1);
  ck_store_error (late.error, UNSOOT_STORE_ERROR_FAILED, "closed");
  for (int i = 0; i < 10; i++)
    ck_assert_int_eq (outcomes[i].n_done, 1);
}
END_TEST

START_TEST (test_store_is_freed)
{
  UnsootStore *store = open_store ();
  gpointer gone = store;
  g_object_add_weak_pointer (G_OBJECT (store), &gone);
  unsoot_store_call (store, add_holiday, (gpointer) "x", NULL, NULL);
  g_object_unref (store);
  while (g_main_context_iteration (NULL, FALSE))
    ;
  ck_assert_ptr_null (gone);
}
END_TEST

typedef struct
{
  int n_done;
  UnsootStore *store;
  GError *error;
} OpenOutcome;

static void
opened_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  OpenOutcome *outcome = data;
  outcome->store = unsoot_store_open_finish (result, &outcome->error);
  outcome->n_done++;
}

START_TEST (test_opening_without_blocking)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  OpenOutcome outcome = { 0 };
  unsoot_store_open_async (path, 0, NULL, opened_cb, &outcome);
  wait_until (&outcome.n_done, 1);
  ck_assert_ptr_null (outcome.store);
  ck_store_error (outcome.error, UNSOOT_STORE_ERROR_NOT_FOUND, "no shop’s book");

  unsoot_store_open_async (path, UNSOOT_DB_CREATE, NULL, opened_cb, &outcome);
  wait_until (&outcome.n_done, 2);
  ck_no_error (outcome.error);
  int n_changes = 0;
  g_signal_connect (outcome.store, "changed", G_CALLBACK (changed_cb), &n_changes);
  unsoot_store_call (outcome.store, add_holiday, (gpointer) "x", NULL, NULL);
  wait_until (&n_changes, 1);
  g_object_unref (outcome.store);
}
END_TEST

static gpointer
leave_open (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  unsoot_db_begin (db, error);
  return NULL;
}

START_TEST (test_deed_that_leaves_a_transaction_aborts)
{
  be_quiet ();
  UnsootStore *store = open_store ();
  unsoot_store_call (store, leave_open, NULL, NULL, NULL);
}
END_TEST

static Suite *
store_suite (void)
{
  Suite *suite = suite_create ("store");
  TCase *tcase = tcase_create ("worker");
  tcase_add_test (tcase, test_one_thread_does_all);
  tcase_add_test (tcase, test_in_order_and_back_on_the_main_loop);
  tcase_add_test (tcase, test_result_nobody_takes_is_freed);
  tcase_add_test (tcase, test_cancel);
  tcase_add_test (tcase, test_word_of_changes);
  tcase_add_test (tcase, test_closing_waits_then_refuses);
  tcase_add_test (tcase, test_store_is_freed);
  tcase_add_test (tcase, test_opening_without_blocking);
  tcase_add_test_raise_signal (tcase, test_deed_that_leaves_a_transaction_aborts, SIGABRT);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (store_suite)
