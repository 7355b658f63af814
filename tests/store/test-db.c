/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The connection: statements, arguments, errors, deeds, who may use it, being stopped. */
#include "book.h"

#include <math.h>
#include <string.h>

static void
add_thing (UnsootDb *db, const char *name)
{
  GError *error = NULL;
  unsoot_db_run (db, &error,
                 "INSERT INTO things (version, name, amount, active) VALUES (1, $1, 0, 1)",
                 unsoot_text (name));
  ck_no_error (error);
}

static gint64
count_things (UnsootDb *db)
{
  GError *error = NULL;
  gint64 n = -1;
  unsoot_db_int (db, &n, &error, "SELECT count (*) FROM things");
  ck_no_error (error);
  return n;
}

START_TEST (test_values_come_back)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (GBytes) picture = g_bytes_new_static ("a\0b", 3);
  GError *error = NULL;

  unsoot_db_run (db, &error,
                 "INSERT INTO things (version, name, amount, level, active, secret, picture) "
                 "VALUES (1, $1, $2, $3, 1, $4, $5)",
                 unsoot_text ("Zoë ’\" ;--"), unsoot_int (G_MAXINT64), unsoot_real (0.1),
                 unsoot_text (NULL), unsoot_bytes (picture));
  ck_no_error (error);

  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, &error, "SELECT name, amount, level, secret, picture, owner_id FROM things");
  ck_no_error (error);
  ck_assert_int_eq (unsoot_query_step (query, &error), UNSOOT_STEP_ROW);
  g_autoptr (GBytes) read = unsoot_query_get_bytes (query, 4);
  ck_assert_str_eq (unsoot_query_get_text (query, 0), "Zoë ’\" ;--");
  ck_assert_int_eq (unsoot_query_get_int (query, 1), G_MAXINT64);
  ck_assert (unsoot_query_get_real (query, 2) == 0.1);
  ck_assert_ptr_null (unsoot_query_get_text (query, 3));
  ck_assert (g_bytes_equal (read, picture));
  ck_assert (isnan (unsoot_query_get_real (query, 5)));
  ck_assert (unsoot_query_is_null (query, 5));
  ck_assert_int_eq (unsoot_query_get_int (query, 5), 0);
  ck_assert_int_eq (unsoot_query_step (query, &error), UNSOOT_STEP_DONE);
}
END_TEST

/* $2 before $1, and $1 twice: a position is the number that stands in the text. */
START_TEST (test_arguments_by_number)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  GError *error = NULL;
  g_autofree char *text = unsoot_db_text (
      db, &error, "SELECT CAST ($2 AS TEXT) || CAST ($1 AS TEXT) || CAST ($2 AS TEXT)",
      unsoot_text ("one"), unsoot_text ("two"));
  ck_no_error (error);
  ck_assert_str_eq (text, "twoonetwo");
}
END_TEST

START_TEST (test_argument_left_out)
{
  be_quiet ();
  g_autoptr (UnsootDb) db = test_book (NULL);
  UnsootQuery *query = unsoot_db_prepare (db, "SELECT $1, $2", NULL);
  unsoot_query_bind (query, 1, unsoot_int (1));
  unsoot_query_step (query, NULL);
}
END_TEST

START_TEST (test_same_statement_twice_at_once)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  const char *sql = "SELECT name FROM things ORDER BY id";
  add_thing (db, "a");
  add_thing (db, "b");

  g_autoptr (UnsootQuery) outer = unsoot_db_query (db, NULL, sql);
  unsoot_query_step (outer, NULL);
  g_autoptr (UnsootQuery) inner = unsoot_db_query (db, NULL, sql);
  unsoot_query_step (inner, NULL);
  unsoot_query_step (inner, NULL);
  ck_assert_str_eq (unsoot_query_get_text (outer, 0), "a");
  ck_assert_str_eq (unsoot_query_get_text (inner, 0), "b");
}
END_TEST

/* Codes and the words that a person needs; which is which: sqlite.org/rescode.html. */
START_TEST (test_constraints_are_sentences)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  GError *error = NULL;
  add_thing (db, "a");

  unsoot_db_run (db, &error,
                 "INSERT INTO things (version, name, amount, active) VALUES (1, $1, 0, 1)",
                 unsoot_text ("a"));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "same value already (things.name)");
  unsoot_db_run (db, &error, "UPDATE things SET name = $1", unsoot_null ());
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "missing (things.name)");
  unsoot_db_run (db, &error, "UPDATE things SET owner_id = 77");
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "not there");
  unsoot_db_run (db, &error, "UPDATE things SET amount = -1");
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "amount >= 0");
  unsoot_db_run (db, &error, "UPDATE things SET amount = $1", unsoot_text ("much"));
  ck_store_error (error, UNSOOT_STORE_ERROR_CONSTRAINT, "outside what this entry allows");
  unsoot_db_run (db, &error, "SELECT a FROM nowhere");
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "no such table");

  gint64 value;
  unsoot_db_int (db, &value, &error, "SELECT id FROM things WHERE name = $1", unsoot_text ("b"));
  ck_store_error (error, UNSOOT_STORE_ERROR_NOT_FOUND, "no such entry");
}
END_TEST

START_TEST (test_changed_rows_are_counted)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  gint64 changed = -1;
  add_thing (db, "a");
  add_thing (db, "b");
  unsoot_db_change (db, &changed, NULL, "UPDATE things SET amount = 5");
  ck_assert_int_eq (changed, 2);
  unsoot_db_change (db, &changed, NULL, "UPDATE things SET amount = 5 WHERE name = 'c'");
  ck_assert_int_eq (changed, 0);
}
END_TEST

START_TEST (test_outermost_commit_keeps)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  GError *error = NULL;
  {
    g_autoptr (UnsootTransaction) outer = unsoot_db_begin (db, &error);
    {
      g_autoptr (UnsootTransaction) inner = unsoot_db_begin (db, &error);
      add_thing (db, "a");
      ck_assert (unsoot_transaction_commit (g_steal_pointer (&inner), &error));
    }
  }
  ck_no_error (error);
  ck_assert_int_eq (count_things (db), 0);

  UnsootTransaction *deed = unsoot_db_begin (db, &error);
  add_thing (db, "a");
  ck_assert (unsoot_transaction_commit (deed, &error));
  ck_assert_int_eq (count_things (db), 1);
}
END_TEST

/* Nothing that comes after a failed part may be kept alone. */
START_TEST (test_inner_rollback_undoes_all)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  GError *error = NULL;
  UnsootTransaction *outer = unsoot_db_begin (db, &error);
  add_thing (db, "a");
  unsoot_transaction_rollback (unsoot_db_begin (db, &error));

  unsoot_db_run (db, &error,
                 "INSERT INTO things (version, name, amount, active) VALUES (1, 'b', 0, 1)");
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "nothing of it was kept");
  ck_assert_ptr_null (unsoot_db_begin (db, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "nothing of it was kept");
  ck_assert (!unsoot_transaction_commit (outer, &error));
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "nothing of it was kept");
  ck_assert_int_eq (count_things (db), 0);
  add_thing (db, "c");
  ck_assert_int_eq (count_things (db), 1);
}
END_TEST

START_TEST (test_stray_transaction_aborts)
{
  be_quiet ();
  UnsootDb *db = test_book (NULL);
  unsoot_db_begin (db, NULL);
  unsoot_db_assert_idle (db);
}
END_TEST

START_TEST (test_stray_sql_transaction_aborts)
{
  be_quiet ();
  UnsootDb *db = test_book (NULL);
  unsoot_db_run (db, NULL, "BEGIN");
  unsoot_db_begin (db, NULL);
}
END_TEST

START_TEST (test_wrong_order_aborts)
{
  be_quiet ();
  UnsootDb *db = test_book (NULL);
  UnsootTransaction *outer = unsoot_db_begin (db, NULL);
  unsoot_db_begin (db, NULL);
  unsoot_transaction_commit (outer, NULL);
}
END_TEST

static gpointer
use_from_another_thread (gpointer db)
{
  count_things (db);
  return NULL;
}

START_TEST (test_other_thread_aborts)
{
  be_quiet ();
  UnsootDb *db = test_book (NULL);
  g_thread_join (g_thread_new ("other", use_from_another_thread, db));
}
END_TEST

static const char *const endless
    = "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) SELECT count (*) FROM n";

static gpointer
cancel_soon (gpointer cancellable)
{
  g_usleep (100000);
  g_cancellable_cancel (cancellable);
  return NULL;
}

START_TEST (test_cancel_stops_a_running_query)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GError *error = NULL;

  unsoot_db_set_cancellable (db, cancellable);
  GThread *thread = g_thread_new ("cancel", cancel_soon, cancellable);
  gint64 began = g_get_monotonic_time ();
  unsoot_db_run (db, &error, endless);
  gint64 took = g_get_monotonic_time () - began;
  g_thread_join (thread);
  ck_store_error (error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  ck_assert_int_ge (took, 90000);
  ck_assert_int_le (took, 5000000);

  unsoot_db_run (db, &error, "SELECT 1");
  ck_store_error (error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  unsoot_db_set_cancellable (db, NULL);
  ck_assert_int_eq (count_things (db), 0);
}
END_TEST

/* SQLite undoes the whole deed where a write in it is stopped: what follows must not be kept. */
START_TEST (test_cancelled_write_undoes_the_deed)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GError *error = NULL;

  UnsootTransaction *deed = unsoot_db_begin (db, &error);
  add_thing (db, "a");
  unsoot_db_set_cancellable (db, cancellable);
  GThread *thread = g_thread_new ("cancel", cancel_soon, cancellable);
  unsoot_db_run (db, &error,
                 "WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n) "
                 "INSERT INTO things (version, name, amount, active) "
                 "SELECT 1, CAST (i AS TEXT), 0, 1 FROM n");
  g_thread_join (thread);
  unsoot_db_set_cancellable (db, NULL);
  ck_store_error (error, UNSOOT_STORE_ERROR_CANCELLED, "Stopped");
  unsoot_db_run (db, &error, "UPDATE things SET amount = 1");
  ck_store_error (error, UNSOOT_STORE_ERROR_FAILED, "nothing of it was kept");
  ck_assert (!unsoot_transaction_commit (deed, NULL));
  ck_assert_int_eq (count_things (db), 0);
}
END_TEST

START_TEST (test_commit_is_not_stopped)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  GError *error = NULL;
  UnsootTransaction *deed = unsoot_db_begin (db, &error);
  add_thing (db, "a");
  unsoot_db_set_cancellable (db, cancellable);
  g_cancellable_cancel (cancellable);
  ck_assert (unsoot_transaction_commit (deed, &error));
  unsoot_db_set_cancellable (db, NULL);
  ck_assert_int_eq (count_things (db), 1);
}
END_TEST

START_TEST (test_two_writers)
{
  g_autoptr (TestFolder) folder = test_folder ();
  g_autofree char *path = g_build_filename (folder, "book.unsoot", NULL);
  g_autoptr (UnsootDb) first = test_book (path);
  g_autoptr (UnsootDb) second = test_book (path);
  GError *error = NULL;

  UnsootTransaction *deed = unsoot_db_begin (first, &error);
  add_thing (first, "a");
  ck_assert_int_eq (count_things (second), 0);
  unsoot_db_set_patience (second, 150);
  gint64 began = g_get_monotonic_time ();
  ck_assert_ptr_null (unsoot_db_begin (second, &error));
  gint64 took = g_get_monotonic_time () - began;
  ck_store_error (error, UNSOOT_STORE_ERROR_BUSY, "Another program is writing");
  ck_assert_int_ge (took, 150000);
  ck_assert_int_le (took, 3000000);

  ck_assert (unsoot_transaction_commit (deed, &error));
  ck_assert_int_eq (count_things (second), 1);
  add_thing (second, "b");
  ck_assert_int_eq (count_things (first), 2);
}
END_TEST

START_TEST (test_only_migrations_change_the_schema)
{
  g_autoptr (UnsootDb) db = test_book (NULL);
  static const char *const forbidden[]
      = { "CREATE TABLE more (id INTEGER)", "DROP TABLE things",
          "DROP TRIGGER moves_no_update",   "ALTER TABLE things RENAME TO others",
          "PRAGMA foreign_keys = OFF",      "PRAGMA writable_schema = ON",
          "ATTACH ':memory:' AS other" };
  for (gsize i = 0; i < G_N_ELEMENTS (forbidden); i++)
    {
      GError *error = NULL;
      unsoot_db_run (db, &error, forbidden[i]);
      ck_store_error (error, UNSOOT_STORE_ERROR_NOT_ALLOWED, "does not allow");
    }
}
END_TEST

static Suite *
db_suite (void)
{
  Suite *suite = suite_create ("db");
  TCase *tcase = tcase_create ("statements");
  tcase_add_test (tcase, test_values_come_back);
  tcase_add_test (tcase, test_arguments_by_number);
  tcase_add_test_raise_signal (tcase, test_argument_left_out, SIGABRT);
  tcase_add_test (tcase, test_same_statement_twice_at_once);
  tcase_add_test (tcase, test_constraints_are_sentences);
  tcase_add_test (tcase, test_changed_rows_are_counted);
  tcase_add_test (tcase, test_only_migrations_change_the_schema);
  suite_add_tcase (suite, tcase);

  tcase = tcase_create ("deeds");
  tcase_add_test (tcase, test_outermost_commit_keeps);
  tcase_add_test (tcase, test_inner_rollback_undoes_all);
  tcase_add_test_raise_signal (tcase, test_stray_transaction_aborts, SIGABRT);
  tcase_add_test_raise_signal (tcase, test_stray_sql_transaction_aborts, SIGABRT);
  tcase_add_test_raise_signal (tcase, test_wrong_order_aborts, SIGABRT);
  tcase_add_test_raise_signal (tcase, test_other_thread_aborts, SIGABRT);
  tcase_add_test (tcase, test_two_writers);
  suite_add_tcase (suite, tcase);

  tcase = tcase_create ("stopping");
  tcase_add_test (tcase, test_cancel_stops_a_running_query);
  tcase_add_test (tcase, test_cancelled_write_undoes_the_deed);
  tcase_add_test (tcase, test_commit_is_not_stopped);
  suite_add_tcase (suite, tcase);
  return suite;
}

UNSOOT_TEST_MAIN (db_suite)
