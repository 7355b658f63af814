/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-driver.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "sql-log.h"

/* Statements kept ready; lists with many shapes must not fill the memory. */
#define STATEMENTS_KEPT 512

struct _UnsootTransaction
{
  UnsootDb *db;
  guint depth;
};

static void
assert_owner (UnsootDb *db)
{
  g_assert (db->owner == g_thread_self ());
}

static void
query_finalize (UnsootQuery *query)
{
  query->db->driver->finalize (query->statement);
  g_free (query->sql);
  g_free (query);
}

static void
free_shell (UnsootDb *db)
{
  g_clear_pointer (&db->statements, g_hash_table_unref);
  g_clear_pointer (&db->postings, g_hash_table_unref);
  g_free (db->path);
  g_free (db);
}

UnsootDb *
unsoot_db_open (const char *path, UnsootDbFlags flags, GError **error)
{
  UnsootDb *db = g_new0 (UnsootDb, 1);
  db->driver = &unsoot_sqlite_driver;
  db->path = path != NULL ? g_canonicalize_filename (path, NULL) : NULL;
  db->owner = g_thread_self ();
  db->statements
      = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, (GDestroyNotify) query_finalize);
  db->postings = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  db->connection = db->driver->open (db, flags, error);
  if (db->connection == NULL)
    g_clear_pointer (&db, free_shell);
  return db;
}

void
unsoot_db_close (UnsootDb *db)
{
  unsoot_db_assert_idle (db);
  g_assert (db->queries == 0);
  g_hash_table_remove_all (db->statements);
  db->driver->close (db->connection);
  free_shell (db);
}

const char *
unsoot_db_path (UnsootDb *db)
{
  return db->path;
}

void
unsoot_db_guard_postings (UnsootDb *db, const UnsootRecordType *const *types)
{
  assert_owner (db);
  for (; *types != NULL; types++)
    if ((*types)->posting)
      g_hash_table_add (db->postings, g_strdup ((*types)->table));
}

void
unsoot_db_set_cancellable (UnsootDb *db, GCancellable *cancellable)
{
  assert_owner (db);
  db->cancellable = cancellable;
}

gboolean
unsoot_db_is_cancelled (UnsootDb *db)
{
  return g_cancellable_is_cancelled (db->cancellable);
}

void
unsoot_db_set_patience (UnsootDb *db, guint milliseconds)
{
  assert_owner (db);
  db->driver->set_patience (db->connection, milliseconds);
}

void
unsoot_db_assert_idle (UnsootDb *db)
{
  assert_owner (db);
  g_assert (db->depth == 0);
  g_assert (!db->driver->in_transaction (db->connection));
}

gint64
unsoot_db_total_changes (UnsootDb *db)
{
  assert_owner (db);
  return db->driver->total_changes (db->connection);
}

/* The engine ends a transaction by itself where a write in it was stopped or the disk is
   full; what came after would be kept without what came before. */
static gboolean
transaction_stands (UnsootDb *db, GError **error)
{
  if (db->depth == 0 || db->driver->in_transaction (db->connection))
    return TRUE;
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_FAILED,
                       _ ("A part of this failed, so nothing of it was kept."));
  return FALSE;
}

UnsootTransaction *
unsoot_db_begin (UnsootDb *db, GError **error)
{
  assert_owner (db);
  if (db->depth == 0)
    {
      g_assert (!db->driver->in_transaction (db->connection));
      if (!db->driver->begin (db->connection, error))
        return NULL;
    }
  else if (!transaction_stands (db, error))
    return NULL;

  UnsootTransaction *transaction = g_new (UnsootTransaction, 1);
  transaction->db = db;
  transaction->depth = ++db->depth;
  return transaction;
}

/* Transactions end in the reverse order of their beginning. */
static UnsootDb *
leave (UnsootTransaction *transaction)
{
  UnsootDb *db = transaction->db;
  assert_owner (db);
  g_assert (transaction->depth == db->depth);
  g_free (transaction);
  return db;
}

static void
roll_back (UnsootDb *db)
{
  if (db->driver->in_transaction (db->connection))
    db->driver->rollback (db->connection);
}

gboolean
unsoot_transaction_commit (UnsootTransaction *transaction, GError **error)
{
  UnsootDb *db = leave (transaction);
  gboolean kept = transaction_stands (db, error);
  if (kept && db->depth == 1)
    {
      kept = db->driver->commit (db->connection, error);
      if (!kept)
        roll_back (db);
    }
  db->depth--;
  return kept;
}

void
unsoot_transaction_rollback (UnsootTransaction *transaction)
{
  UnsootDb *db = leave (transaction);
  roll_back (db);
  db->depth--;
}

static UnsootQuery *
take_statement (UnsootDb *db, const char *sql, gboolean common, GError **error)
{
  gpointer kept = NULL;
  UnsootQuery *query;

  assert_owner (db);
  if (g_hash_table_steal_extended (db->statements, sql, NULL, &kept))
    query = kept;
  else
    {
      gpointer statement = db->driver->prepare (db->connection, sql, error);
      if (statement == NULL)
        return NULL;
      if (common)
        unsoot_sql_log (sql);
      query = g_new0 (UnsootQuery, 1);
      query->db = db;
      query->sql = g_strdup (sql);
      query->statement = statement;
      query->n_arguments = db->driver->n_arguments (statement);
      g_assert (query->n_arguments < 64);
    }
  query->unbound = (G_GUINT64_CONSTANT (1) << query->n_arguments) - 1;
  query->started = FALSE;
  db->queries++;
  return query;
}

UnsootQuery *
unsoot_db_prepare (UnsootDb *db, const char *sql, GError **error)
{
  return take_statement (db, sql, TRUE, error);
}

UnsootQuery *
unsoot_db_prepare_native (UnsootDb *db, const char *sql, GError **error)
{
  return take_statement (db, sql, FALSE, error);
}

void
unsoot_query_bind (UnsootQuery *query, guint position, UnsootValue value)
{
  assert_owner (query->db);
  g_assert (position >= 1 && position <= query->n_arguments);
  query->db->driver->bind (query->statement, position, value);
  query->unbound &= ~(G_GUINT64_CONSTANT (1) << (position - 1));
}

UnsootQueryStep
unsoot_query_step (UnsootQuery *query, GError **error)
{
  UnsootDb *db = query->db;
  assert_owner (db);
  g_assert (query->unbound == 0);

  if (!transaction_stands (db, error))
    return UNSOOT_STEP_FAILED;
  if (!query->started && unsoot_db_is_cancelled (db))
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_CANCELLED, _ ("Stopped."));
      return UNSOOT_STEP_FAILED;
    }
  query->started = TRUE;
  return db->driver->step (db->connection, query->statement, error);
}

void
unsoot_query_reset (UnsootQuery *query)
{
  assert_owner (query->db);
  query->db->driver->reset (query->statement, FALSE);
  query->started = FALSE;
}

void
unsoot_query_free (UnsootQuery *query)
{
  UnsootDb *db = query->db;
  assert_owner (db);
  db->driver->reset (query->statement, TRUE);
  db->queries--;
  if (g_hash_table_size (db->statements) >= STATEMENTS_KEPT)
    g_hash_table_remove_all (db->statements);
  if (g_hash_table_contains (db->statements, query->sql))
    query_finalize (query);
  else
    g_hash_table_insert (db->statements, query->sql, query);
}

gint64
unsoot_query_get_int (UnsootQuery *query, guint column)
{
  return query->db->driver->get_int (query->statement, column);
}

double
unsoot_query_get_real (UnsootQuery *query, guint column)
{
  return unsoot_query_is_null (query, column)
             ? (double) NAN
             : query->db->driver->get_real (query->statement, column);
}

const char *
unsoot_query_get_text (UnsootQuery *query, guint column)
{
  return query->db->driver->get_text (query->statement, column);
}

GBytes *
unsoot_query_get_bytes (UnsootQuery *query, guint column)
{
  return unsoot_query_is_null (query, column)
             ? NULL
             : query->db->driver->get_bytes (query->statement, column);
}

gboolean
unsoot_query_is_null (UnsootQuery *query, guint column)
{
  return query->db->driver->is_null (query->statement, column);
}

char *
unsoot_query_dup_text (UnsootQuery *query, guint column)
{
  return g_strdup (unsoot_query_get_text (query, column));
}

UnsootQuery *
unsoot_db_query_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                        const UnsootValue *values)
{
  UnsootQuery *query = unsoot_db_prepare (db, sql, error);
  if (query == NULL)
    return NULL;
  g_assert (n == query->n_arguments);
  for (guint i = 0; i < n; i++)
    unsoot_query_bind (query, i + 1, values[i]);
  return query;
}

gboolean
unsoot_db_run_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                      const UnsootValue *values)
{
  return unsoot_db_change_values (db, NULL, error, sql, n, values);
}

gboolean
unsoot_db_change_values (UnsootDb *db, gint64 *changed, GError **error, const char *sql, gsize n,
                         const UnsootValue *values)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query_values (db, error, sql, n, values);
  if (query == NULL)
    return FALSE;

  UnsootQueryStep step = UNSOOT_STEP_ROW;
  while (step == UNSOOT_STEP_ROW)
    step = unsoot_query_step (query, error);
  if (step == UNSOOT_STEP_DONE && changed != NULL)
    *changed = db->driver->changes (db->connection);
  return step == UNSOOT_STEP_DONE;
}

/* The query at its first row. */
static UnsootQuery *
first_row (UnsootDb *db, GError **error, const char *sql, gsize n, const UnsootValue *values)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query_values (db, error, sql, n, values);
  if (query == NULL)
    return NULL;

  UnsootQueryStep step = unsoot_query_step (query, error);
  if (step == UNSOOT_STEP_DONE)
    g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                         _ ("There is no such entry in the book."));
  return step == UNSOOT_STEP_ROW ? g_steal_pointer (&query) : NULL;
}

gboolean
unsoot_db_int_values (UnsootDb *db, gint64 *value, GError **error, const char *sql, gsize n,
                      const UnsootValue *values)
{
  g_autoptr (UnsootQuery) query = first_row (db, error, sql, n, values);
  if (query != NULL)
    *value = unsoot_query_get_int (query, 0);
  return query != NULL;
}

char *
unsoot_db_text_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                       const UnsootValue *values)
{
  g_autoptr (UnsootQuery) query = first_row (db, error, sql, n, values);
  return query != NULL ? unsoot_query_dup_text (query, 0) : NULL;
}
