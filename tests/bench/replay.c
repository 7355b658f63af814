/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "replay.h"

static GPtrArray *recorded = NULL;

/* A trigger's own statements come as comments: the statement that fires it runs them again. */
static int
trace_cb (unsigned type, void *unused, void *statement, void *text)
{
  if (recorded != NULL && !g_str_has_prefix (text, "--"))
    {
      char *expanded = sqlite3_expanded_sql (statement);
      g_ptr_array_add (recorded, g_strdup (expanded));
      sqlite3_free (expanded);
    }
  return 0;
}

static int
opened_cb (sqlite3 *handle, char **message, const struct sqlite3_api_routines *unused)
{
  return sqlite3_trace_v2 (handle, SQLITE_TRACE_STMT, trace_cb, NULL);
}

void
replay_listen (void)
{
  sqlite3_auto_extension ((void (*) (void)) opened_cb);
}

void
replay_ignore (void)
{
  sqlite3_cancel_auto_extension ((void (*) (void)) opened_cb);
}

void
replay_record (GPtrArray *statements)
{
  recorded = statements;
}

static void
need (sqlite3 *raw, gboolean done)
{
  if (!done)
    g_error ("%s", sqlite3_errmsg (raw));
}

sqlite3 *
replay_open (const char *path)
{
  sqlite3 *raw = NULL;
  need (raw, sqlite3_open_v2 (path, &raw, SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX, NULL)
                 == SQLITE_OK);
  need (raw, sqlite3_exec (raw,
                           "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL;"
                           "PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON;"
                           "PRAGMA cell_size_check = ON;",
                           NULL, NULL, NULL)
                 == SQLITE_OK);
  return raw;
}

static void
finalize_cb (gpointer statement)
{
  sqlite3_finalize (statement);
}

GPtrArray *
replay_prepare (sqlite3 *raw, GPtrArray *statements)
{
  GPtrArray *prepared = g_ptr_array_new_with_free_func (finalize_cb);
  for (guint i = 0; i < statements->len; i++)
    {
      sqlite3_stmt *statement = NULL;
      need (raw, sqlite3_prepare_v2 (raw, statements->pdata[i], -1, &statement, NULL) == SQLITE_OK);
      g_ptr_array_add (prepared, statement);
    }
  return prepared;
}

void
replay_run (GPtrArray *prepared)
{
  for (guint i = 0; i < prepared->len; i++)
    {
      sqlite3_stmt *statement = prepared->pdata[i];
      int code;
      while ((code = sqlite3_step (statement)) == SQLITE_ROW)
        for (int k = 0; k < sqlite3_column_count (statement); k++)
          sqlite3_column_text (statement, k);
      if (code != SQLITE_DONE)
        g_error ("%s: %s", sqlite3_sql (statement), sqlite3_errmsg (sqlite3_db_handle (statement)));
      sqlite3_reset (statement);
    }
}
