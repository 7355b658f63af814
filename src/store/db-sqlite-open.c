/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "place.h"

/* "UnSt": in the file's header, where file(1) and we can see whose it is. */
#define APPLICATION_ID 0x556e5374u
#define APPLICATION_ID_TEXT "1433293684"

/* The header of an SQLite file: https://www.sqlite.org/fileformat2.html#the_database_header */
#define HEADER_SIZE 100
#define HEADER_MAGIC "SQLite format 3"
#define HEADER_APPLICATION_ID 68

#define PATIENCE_AT_FIRST 5000

typedef enum
{
  FILE_NONE,
  FILE_EMPTY,
  FILE_OURS,
  FILE_OTHER,
  FILE_UNREADABLE,
} FileKind;

/* Read without SQLite, which would leave files of its own beside a stranger's. */
static FileKind
look_at_file (const char *path)
{
  guint8 header[HEADER_SIZE];
  guint32 id;

  if (!g_file_test (path, G_FILE_TEST_EXISTS))
    return FILE_NONE;
  FILE *file = g_fopen (path, "rbe");
  if (file == NULL)
    return FILE_UNREADABLE;
  gsize n = fread (header, 1, sizeof header, file);
  gboolean failed = ferror (file) != 0;
  fclose (file);
  if (failed)
    return FILE_UNREADABLE;
  if (n == 0)
    return FILE_EMPTY;
  if (n < sizeof header || memcmp (header, HEADER_MAGIC, sizeof HEADER_MAGIC) != 0)
    return FILE_OTHER;
  memcpy (&id, header + HEADER_APPLICATION_ID, sizeof id);
  return GUINT32_FROM_BE (id) == APPLICATION_ID ? FILE_OURS : FILE_OTHER;
}

/* Decides what may be opened. @is_new is set where there is nothing in it yet. */
static gboolean
check_file (const char *path, UnsootDbFlags flags, gboolean *is_new, GError **error)
{
  if (!unsoot_place_check (path, error))
    return FALSE;
  switch (look_at_file (path))
    {
    case FILE_NONE:
      *is_new = TRUE;
      if ((flags & UNSOOT_DB_CREATE) != 0)
        return unsoot_place_create (path, error);
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                   _ ("There is no shop’s book at “%s”."), path);
      return FALSE;
    case FILE_EMPTY:
      *is_new = TRUE;
      if ((flags & UNSOOT_DB_CREATE) != 0)
        return TRUE;
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_OURS,
                   _ ("“%s” is empty: it is not a shop’s book."), path);
      return FALSE;
    case FILE_OURS:
      *is_new = FALSE;
      return TRUE;
    case FILE_OTHER:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_OURS,
                   _ ("“%s” is not a shop’s book. It was left as it is; choose another file."),
                   path);
      return FALSE;
    case FILE_UNREADABLE:
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED,
                   _ ("“%s” can’t be read. Check who may open it."), path);
      return FALSE;
    }
  g_assert_not_reached ();
}

static gboolean
open_handle (UnsootSqlite *connection, UnsootDbFlags flags, GError **error)
{
  const char *path = connection->db->path;
  int mode = (flags & UNSOOT_DB_READ_ONLY) != 0 ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
  int code = sqlite3_open_v2 (path != NULL ? path : ":memory:", &connection->handle,
                              mode | SQLITE_OPEN_NOMUTEX | SQLITE_OPEN_EXRESCODE, NULL);
  if (code != SQLITE_OK)
    {
      unsoot_sqlite_set_error (error, connection->handle, code);
      return FALSE;
    }
  if (mode == SQLITE_OPEN_READWRITE && sqlite3_db_readonly (connection->handle, "main") == 1)
    {
      g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_READ_ONLY,
                   _ ("“%s” can be read, not written. Check who may write to it."), path);
      return FALSE;
    }
  return TRUE;
}

/* What a file's own schema could do to us is switched off before anything is read. */
static gboolean
configure (UnsootSqlite *connection, GError **error)
{
  sqlite3_db_config (connection->handle, SQLITE_DBCONFIG_DEFENSIVE, 1, NULL);
  sqlite3_db_config (connection->handle, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, NULL);
  sqlite3_db_config (connection->handle, SQLITE_DBCONFIG_DQS_DML, 0, NULL);
  sqlite3_db_config (connection->handle, SQLITE_DBCONFIG_DQS_DDL, 0, NULL);
  unsoot_sqlite_guard (connection);
  /* Without recursive triggers an INSERT OR REPLACE deletes a posting unseen. */
  return unsoot_sqlite_exec (connection,
                             "PRAGMA cell_size_check = ON;"
                             "PRAGMA foreign_keys = ON;"
                             "PRAGMA recursive_triggers = ON;"
                             "PRAGMA synchronous = FULL;",
                             error);
}

static gboolean
check_pages (UnsootSqlite *connection, GError **error)
{
  g_autoptr (GPtrArray) findings
      = unsoot_sqlite_exec_texts (connection, "PRAGMA quick_check (1)", error);
  if (findings == NULL)
    return FALSE;
  const char *first = findings->len > 0 ? g_ptr_array_index (findings, 0) : "";
  if (g_strcmp0 (first, "ok") == 0)
    return TRUE;
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_DAMAGED,
               _ ("“%s” is damaged (%s). Choose a backup."), connection->db->path, first);
  return FALSE;
}

gboolean
unsoot_sqlite_settle (gpointer data, GError **error)
{
  UnsootSqlite *connection = data;
  if (connection->db->path == NULL || sqlite3_db_readonly (connection->handle, "main") == 1)
    return TRUE;

  g_autoptr (GPtrArray) mode
      = unsoot_sqlite_exec_texts (connection, "PRAGMA journal_mode = WAL", error);
  if (mode == NULL)
    return FALSE;
  if (mode->len == 1 && g_strcmp0 (g_ptr_array_index (mode, 0), "wal") == 0)
    return TRUE;
  g_set_error (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_ALLOWED,
               _ ("The disk of “%s” can’t keep the shop’s book safely. "
                  "Choose a folder on this computer’s own disk."),
               connection->db->path);
  return FALSE;
}

gpointer
unsoot_sqlite_open (UnsootDb *db, UnsootDbFlags flags, GError **error)
{
  gboolean is_new = TRUE;
  if (db->path != NULL && !check_file (db->path, flags, &is_new, error))
    return NULL;

  UnsootSqlite *connection = g_new0 (UnsootSqlite, 1);
  connection->db = db;
  connection->patience = PATIENCE_AT_FIRST;
  gboolean opened
      = open_handle (connection, flags, error) && configure (connection, error)
        && ((flags & UNSOOT_DB_ELSEWHERE) == 0 || is_new || check_pages (connection, error));
  /* The name goes into the file itself, not into a log beside it that may be lost. */
  if (opened && is_new)
    opened = unsoot_sqlite_exec (connection, "PRAGMA application_id = " APPLICATION_ID_TEXT, error)
             && unsoot_sqlite_settle (connection, error);
  if (!opened)
    g_clear_pointer (&connection, unsoot_sqlite_close);
  return connection;
}

void
unsoot_sqlite_close (gpointer data)
{
  UnsootSqlite *connection = data;
  int code = sqlite3_close (connection->handle);
  g_assert (code == SQLITE_OK);
  g_free (connection);
}
