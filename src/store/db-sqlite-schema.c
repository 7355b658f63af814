/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

#include <glib/gi18n-lib.h>

/* SQLite's words for what the engines call differently. An id is never used twice, since
   papers and the log of changes name rows by it. */
static const struct
{
  const char *placeholder;
  const char *words;
} dialect[] = {
  { "@KEY", "INTEGER PRIMARY KEY AUTOINCREMENT" },
  { "@INT64", "INTEGER" },
  { "@REAL64", "REAL" },
  { "@BYTES", "BLOB" },
  { "@STRICT", "STRICT" },
};

gboolean
unsoot_sqlite_get_format (gpointer connection, int *number, GError **error)
{
  gint64 value;
  if (!unsoot_sqlite_exec_int (connection, "PRAGMA user_version", &value, error))
    return FALSE;
  *number = (int) value;
  return TRUE;
}

/* A parent table that is rebuilt takes its children along where references are enforced,
   and the pragma does nothing inside a transaction. */
gboolean
unsoot_sqlite_begin_schema (gpointer data, GError **error)
{
  UnsootSqlite *connection = data;
  if (!unsoot_sqlite_exec (connection, "PRAGMA foreign_keys = OFF; BEGIN IMMEDIATE", error))
    {
      unsoot_sqlite_exec (connection, "PRAGMA foreign_keys = ON", NULL);
      return FALSE;
    }
  connection->own_work = TRUE;
  return TRUE;
}

gboolean
unsoot_sqlite_run_schema (gpointer connection, const char *sql, GError **error)
{
  g_autoptr (GString) filled = g_string_new (sql);
  for (gsize i = 0; i < G_N_ELEMENTS (dialect); i++)
    g_string_replace (filled, dialect[i].placeholder, dialect[i].words, 0);
  return unsoot_sqlite_exec (connection, filled->str, error);
}

/* Triggers hold for every program that writes to the file, the authorizer for this one. */
static gboolean
guard_table (UnsootSqlite *connection, const char *table, const char *deed, GError **error)
{
  g_autofree char *sql
      = g_strdup_printf ("DROP TRIGGER IF EXISTS %s_no_%s;"
                         "CREATE TRIGGER %s_no_%s BEFORE %s ON %s "
                         "BEGIN SELECT RAISE (ABORT, 'postings are append-only: %s'); END;",
                         table, deed, table, deed, deed, table, table);
  return unsoot_sqlite_exec (connection, sql, error);
}

static gboolean
guard_postings (UnsootSqlite *connection, const UnsootRecordType *const *types, GError **error)
{
  for (; *types != NULL; types++)
    if ((*types)->posting
        && (!guard_table (connection, (*types)->table, "update", error)
            || !guard_table (connection, (*types)->table, "delete", error)))
      return FALSE;
  return TRUE;
}

static gboolean
check_references (UnsootSqlite *connection, GError **error)
{
  g_autoptr (GPtrArray) tables
      = unsoot_sqlite_exec_texts (connection, "PRAGMA foreign_key_check", error);
  if (tables == NULL)
    return FALSE;
  if (tables->len == 0)
    return TRUE;
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_DAMAGED,
               _ ("Entries in “%s” refer to others that are not there, so the book was left in "
                  "its old format. Restore a backup."),
               (const char *) g_ptr_array_index (tables, 0));
  return FALSE;
}

static void
end_schema (UnsootSqlite *connection)
{
  connection->own_work = FALSE;
  unsoot_sqlite_exec (connection, "PRAGMA foreign_keys = ON", NULL);
}

gboolean
unsoot_sqlite_commit_schema (gpointer data, int number, const UnsootRecordType *const *types,
                             GError **error)
{
  UnsootSqlite *connection = data;
  g_autofree char *version = g_strdup_printf ("PRAGMA user_version = %d; COMMIT", number);

  if (!guard_postings (connection, types, error)
      || !unsoot_sqlite_exec (connection, unsoot_sqlite_find_schema, error)
      || !check_references (connection, error) || !unsoot_sqlite_exec (connection, version, error))
    {
      unsoot_sqlite_rollback_schema (connection);
      return FALSE;
    }
  end_schema (connection);
  return TRUE;
}

void
unsoot_sqlite_rollback_schema (gpointer data)
{
  UnsootSqlite *connection = data;
  if (!sqlite3_get_autocommit (connection->handle))
    unsoot_sqlite_exec (connection, "ROLLBACK", NULL);
  end_schema (connection);
}
