/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

#include <glib/gi18n-lib.h>

static void
statement_finalize (gpointer data)
{
  UnsootSqliteStatement *statement = data;
  sqlite3_finalize (statement->handle);
  g_free (statement->indices);
  g_free (statement);
}

/* $1 is a name to SQLite, numbered by first appearance: look up where each one went. */
static gboolean
find_arguments (UnsootSqliteStatement *statement, GError **error)
{
  guint n = (guint) sqlite3_bind_parameter_count (statement->handle);
  statement->n_arguments = n;
  statement->indices = g_new0 (int, n + 1);
  for (guint i = 1; i <= n; i++)
    {
      g_autofree char *name = g_strdup_printf ("$%u", i);
      statement->indices[i] = sqlite3_bind_parameter_index (statement->handle, name);
      if (statement->indices[i] == 0)
        {
          g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_INVALID,
                       "statement without %s: %s", name, sqlite3_sql (statement->handle));
          return FALSE;
        }
    }
  return TRUE;
}

static gpointer
prepare (gpointer data, const char *sql, GError **error)
{
  UnsootSqlite *connection = data;
  UnsootSqliteStatement *statement = g_new0 (UnsootSqliteStatement, 1);
  int code = sqlite3_prepare_v3 (connection->handle, sql, -1, SQLITE_PREPARE_PERSISTENT,
                                 &statement->handle, NULL);
  if (code != SQLITE_OK)
    {
      unsoot_sqlite_set_error (error, connection->handle, code);
      g_clear_pointer (&statement, statement_finalize);
    }
  else if (!find_arguments (statement, error))
    g_clear_pointer (&statement, statement_finalize);
  return statement;
}

static guint
n_arguments (gpointer data)
{
  UnsootSqliteStatement *statement = data;
  return statement->n_arguments;
}

static void
bind (gpointer data, guint position, UnsootValue value)
{
  UnsootSqliteStatement *statement = data;
  int index = statement->indices[position];
  int code = SQLITE_OK;
  gsize length = 0;
  gconstpointer bytes;

  switch (value.type)
    {
    case UNSOOT_VALUE_NULL:
      code = sqlite3_bind_null (statement->handle, index);
      break;
    case UNSOOT_VALUE_INT:
      code = sqlite3_bind_int64 (statement->handle, index, value.integer);
      break;
    case UNSOOT_VALUE_REAL:
      code = sqlite3_bind_double (statement->handle, index, value.real);
      break;
    case UNSOOT_VALUE_TEXT:
      code = sqlite3_bind_text (statement->handle, index, value.text, -1, SQLITE_TRANSIENT);
      break;
    case UNSOOT_VALUE_BYTES:
      bytes = g_bytes_get_data (value.bytes, &length);
      code = length == 0
                 ? sqlite3_bind_zeroblob (statement->handle, index, 0)
                 : sqlite3_bind_blob64 (statement->handle, index, bytes, length, SQLITE_TRANSIENT);
      break;
    }
  /* Longer than SQLite holds: leave no older value behind, the step then says what is wrong. */
  if (code == SQLITE_TOOBIG)
    sqlite3_bind_null (statement->handle, index);
  else
    g_assert (code == SQLITE_OK);
}

static UnsootQueryStep
step (gpointer data, gpointer statement_data, GError **error)
{
  UnsootSqlite *connection = data;
  UnsootSqliteStatement *statement = statement_data;

  int code = sqlite3_step (statement->handle);
  if (code == SQLITE_ROW)
    return UNSOOT_STEP_ROW;
  if (code == SQLITE_DONE)
    return UNSOOT_STEP_DONE;
  unsoot_sqlite_set_error (error, connection->handle, code);
  return UNSOOT_STEP_FAILED;
}

static void
reset (gpointer data, gboolean forget_arguments)
{
  UnsootSqliteStatement *statement = data;
  sqlite3_reset (statement->handle);
  if (forget_arguments)
    sqlite3_clear_bindings (statement->handle);
}

static gboolean
is_null (gpointer data, guint column)
{
  UnsootSqliteStatement *statement = data;
  g_assert ((int) column < sqlite3_column_count (statement->handle));
  return sqlite3_column_type (statement->handle, (int) column) == SQLITE_NULL;
}

static gint64
get_int (gpointer data, guint column)
{
  UnsootSqliteStatement *statement = data;
  g_assert ((int) column < sqlite3_column_count (statement->handle));
  return sqlite3_column_int64 (statement->handle, (int) column);
}

static double
get_real (gpointer data, guint column)
{
  UnsootSqliteStatement *statement = data;
  return sqlite3_column_double (statement->handle, (int) column);
}

static const char *
get_text (gpointer data, guint column)
{
  UnsootSqliteStatement *statement = data;
  g_assert ((int) column < sqlite3_column_count (statement->handle));
  return (const char *) sqlite3_column_text (statement->handle, (int) column);
}

static GBytes *
get_bytes (gpointer data, guint column)
{
  UnsootSqliteStatement *statement = data;
  gconstpointer bytes = sqlite3_column_blob (statement->handle, (int) column);
  return g_bytes_new (bytes, (gsize) sqlite3_column_bytes (statement->handle, (int) column));
}

static gboolean
begin (gpointer connection, GError **error)
{
  return unsoot_sqlite_exec (connection, "BEGIN IMMEDIATE", error);
}

static gboolean
commit (gpointer connection, GError **error)
{
  return unsoot_sqlite_exec (connection, "COMMIT", error);
}

static void
rollback (gpointer data)
{
  UnsootSqlite *connection = data;
  sqlite3_exec (connection->handle, "ROLLBACK", NULL, NULL, NULL);
}

static gboolean
in_transaction (gpointer data)
{
  UnsootSqlite *connection = data;
  return !sqlite3_get_autocommit (connection->handle);
}

static gint64
changes (gpointer data)
{
  UnsootSqlite *connection = data;
  return sqlite3_changes64 (connection->handle);
}

static gint64
total_changes (gpointer data)
{
  UnsootSqlite *connection = data;
  return sqlite3_total_changes64 (connection->handle);
}

static void
set_patience (gpointer data, guint milliseconds)
{
  UnsootSqlite *connection = data;
  connection->patience = milliseconds;
}

/* Runs @sql with the driver's own rights; each row goes to @callback. */
static gboolean
exec_own (UnsootSqlite *connection, const char *sql,
          int (*callback) (gpointer, int, char **, char **), gpointer data, GError **error)
{
  gboolean before = connection->own_work;
  connection->own_work = TRUE;
  int code = sqlite3_exec (connection->handle, sql, callback, data, NULL);
  connection->own_work = before;
  if (code != SQLITE_OK)
    unsoot_sqlite_set_error (error, connection->handle, code);
  return code == SQLITE_OK;
}

gboolean
unsoot_sqlite_exec (UnsootSqlite *connection, const char *sql, GError **error)
{
  return exec_own (connection, sql, NULL, NULL, error);
}

static int
take_int (gpointer data, int n_columns, char **values, char **names)
{
  gint64 *value = data;
  *value = values[0] != NULL ? g_ascii_strtoll (values[0], NULL, 10) : 0;
  return 0;
}

gboolean
unsoot_sqlite_exec_int (UnsootSqlite *connection, const char *sql, gint64 *value, GError **error)
{
  *value = 0;
  return exec_own (connection, sql, take_int, value, error);
}

static int
take_text (gpointer data, int n_columns, char **values, char **names)
{
  /* What is found in a damaged file may name its tables, whatever their bytes are. */
  g_ptr_array_add (data, values[0] != NULL ? g_utf8_make_valid (values[0], -1) : NULL);
  return 0;
}

GPtrArray *
unsoot_sqlite_exec_texts (UnsootSqlite *connection, const char *sql, GError **error)
{
  g_autoptr (GPtrArray) texts = g_ptr_array_new_with_free_func (g_free);
  return exec_own (connection, sql, take_text, texts, error) ? g_steal_pointer (&texts) : NULL;
}

const UnsootDriver unsoot_sqlite_driver = {
  .name = "sqlite",
  .open = unsoot_sqlite_open,
  .close = unsoot_sqlite_close,
  .prepare = prepare,
  .finalize = statement_finalize,
  .n_arguments = n_arguments,
  .bind = bind,
  .step = step,
  .reset = reset,
  .is_null = is_null,
  .get_int = get_int,
  .get_real = get_real,
  .get_text = get_text,
  .get_bytes = get_bytes,
  .begin = begin,
  .commit = commit,
  .rollback = rollback,
  .in_transaction = in_transaction,
  .changes = changes,
  .total_changes = total_changes,
  .set_patience = set_patience,
  .settle = unsoot_sqlite_settle,
  .get_format = unsoot_sqlite_get_format,
  .begin_schema = unsoot_sqlite_begin_schema,
  .run_schema = unsoot_sqlite_run_schema,
  .commit_schema = unsoot_sqlite_commit_schema,
  .rollback_schema = unsoot_sqlite_rollback_schema,
  .copy = unsoot_sqlite_copy,
  .verify = unsoot_sqlite_verify,
  .find_put = unsoot_sqlite_find_put,
  .find_remove = unsoot_sqlite_find_remove,
  .find = unsoot_sqlite_find,
};
