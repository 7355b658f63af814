/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

#include <glib/gi18n-lib.h>

gboolean
unsoot_sqlite_copy (gpointer data, const char *path, GError **error)
{
  UnsootSqlite *connection = data;
  char *sql = sqlite3_mprintf ("VACUUM INTO %Q", path);
  gboolean copied = unsoot_sqlite_exec (connection, sql, error);
  sqlite3_free (sql);
  return copied;
}

static gboolean
check_pages (UnsootSqlite *connection, GPtrArray *findings, GError **error)
{
  g_autoptr (GPtrArray) lines
      = unsoot_sqlite_exec_texts (connection, "PRAGMA integrity_check", error);
  if (lines == NULL)
    return FALSE;
  for (guint i = 0; i < lines->len; i++)
    {
      const char *line = g_ptr_array_index (lines, i);
      if (g_strcmp0 (line, "ok") != 0)
        /* Translators: what the database engine found wrong in the file */
        g_ptr_array_add (findings, g_strdup_printf (_ ("The file is damaged: %s."), line));
    }
  return TRUE;
}

static int
add_reference (gpointer data, int n_columns, char **values, char **names)
{
  /* Translators: a row's number, its table, and the table it refers to */
  g_ptr_array_add (data,
                   g_strdup_printf (_ ("Entry %s of “%s” refers to one of “%s” that is "
                                       "not there."),
                                    values[1] != NULL ? values[1] : "?", values[0], values[2]));
  return 0;
}

/* The index is compared with the words it was made from; that "insert" changes nothing. */
static void
check_words (UnsootSqlite *connection, GPtrArray *findings)
{
  static const char *const indices[] = { "found_words", "found_inside" };
  for (gsize i = 0; i < G_N_ELEMENTS (indices); i++)
    {
      char *sql = sqlite3_mprintf ("INSERT INTO %s (%s, rank) VALUES ('integrity-check', 1)",
                                   indices[i], indices[i]);
      int code = sqlite3_exec (connection->handle, sql, NULL, NULL, NULL);
      sqlite3_free (sql);
      if ((code & 0xff) == SQLITE_CORRUPT)
        g_ptr_array_add (findings,
                         g_strdup (_ ("Search does not know the same words as the book.")));
    }
}

gboolean
unsoot_sqlite_verify (gpointer data, GPtrArray *findings, GError **error)
{
  UnsootSqlite *connection = data;
  if (!check_pages (connection, findings, error))
    return FALSE;
  int code = sqlite3_exec (connection->handle, "PRAGMA foreign_key_check", add_reference, findings,
                           NULL);
  if (code != SQLITE_OK)
    {
      unsoot_sqlite_set_error (error, connection->handle, code);
      return FALSE;
    }
  if (sqlite3_db_readonly (connection->handle, "main") == 0)
    check_words (connection, findings);
  return TRUE;
}
