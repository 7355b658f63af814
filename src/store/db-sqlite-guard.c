/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "db-sqlite.h"

/* Instructions of SQLite's machine between two looks at the cancellable: some 0.1 ms. */
#define STEPS_BETWEEN_LOOKS 4000

/* Whether the statement being prepared may do this. The schema and settings change in a
   migration only, and postings never. */
static int
authorize (gpointer data, int action, const char *first, const char *second, const char *schema,
           const char *trigger)
{
  UnsootSqlite *connection = data;

  if (connection->own_work)
    return SQLITE_OK;
  switch (action)
    {
    case SQLITE_UPDATE:
    case SQLITE_DELETE:
      return g_hash_table_contains (connection->db->postings, first) ? SQLITE_DENY : SQLITE_OK;
    case SQLITE_PRAGMA:
      return second != NULL ? SQLITE_DENY : SQLITE_OK;
    case SQLITE_CREATE_TABLE:
    case SQLITE_CREATE_VTABLE:
    case SQLITE_CREATE_INDEX:
    case SQLITE_CREATE_TRIGGER:
    case SQLITE_CREATE_TEMP_TRIGGER:
    case SQLITE_CREATE_VIEW:
    case SQLITE_DROP_TABLE:
    case SQLITE_DROP_VTABLE:
    case SQLITE_DROP_INDEX:
    case SQLITE_DROP_TRIGGER:
    case SQLITE_DROP_VIEW:
    case SQLITE_ALTER_TABLE:
    case SQLITE_ATTACH:
    case SQLITE_DETACH:
      return SQLITE_DENY;
    default:
      return SQLITE_OK;
    }
}

static int
look (gpointer data)
{
  UnsootSqlite *connection = data;
  return unsoot_db_is_cancelled (connection->db);
}

/* Another program is writing: wait in short naps, so that the wait can be stopped too. */
static int
wait_for_others (gpointer data, int times)
{
  UnsootSqlite *connection = data;
  gint64 now = g_get_monotonic_time ();

  if (times == 0)
    connection->waiting_for = now;
  if (now - connection->waiting_for >= (gint64) connection->patience * 1000
      || unsoot_db_is_cancelled (connection->db))
    return FALSE;
  g_usleep (times < 10 ? 1000 : 20000);
  return TRUE;
}

void
unsoot_sqlite_guard (UnsootSqlite *connection)
{
  sqlite3_set_authorizer (connection->handle, authorize, connection);
  sqlite3_progress_handler (connection->handle, STEPS_BETWEEN_LOOKS, look, connection);
  sqlite3_busy_handler (connection->handle, wait_for_others, connection);
}
