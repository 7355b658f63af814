/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <sqlite3.h>

#include "db-driver.h"

G_BEGIN_DECLS

/* SQLite's connection. */
typedef struct
{
  sqlite3 *handle;
  UnsootDb *db;
  guint patience;     /* ms */
  gint64 waiting_for; /* monotonic µs at which this wait began */
  gboolean own_work;  /* the driver's own statements, which may change the schema */
} UnsootSqlite;

typedef struct
{
  sqlite3_stmt *handle;
  int *indices; /* of $1, $2 … among SQLite's own numbers */
  guint n_arguments;
} UnsootSqliteStatement;

/* db-sqlite-error.c: @code of the last call on @handle as an UNSOOT_STORE_ERROR. */
void unsoot_sqlite_set_error (GError **error, sqlite3 *handle, int code);

/* db-sqlite.c: runs the driver's own @sql, pragmas and schema included. */
gboolean unsoot_sqlite_exec (UnsootSqlite *connection, const char *sql, GError **error);
/* The first column of the first row of the driver's own @sql; 0 where there is none. */
gboolean unsoot_sqlite_exec_int (UnsootSqlite *connection, const char *sql, gint64 *value,
                                 GError **error);
/* Every row of the driver's own @sql, first column, as text. */
GPtrArray *unsoot_sqlite_exec_texts (UnsootSqlite *connection, const char *sql, GError **error);

/* db-sqlite-open.c */
gpointer unsoot_sqlite_open (UnsootDb *db, UnsootDbFlags flags, GError **error);
void unsoot_sqlite_close (gpointer connection);
gboolean unsoot_sqlite_settle (gpointer connection, GError **error);

/* db-sqlite-guard.c: what no code path may do, waiting for others, and being stopped. */
void unsoot_sqlite_guard (UnsootSqlite *connection);

/* db-sqlite-schema.c */
gboolean unsoot_sqlite_get_format (gpointer connection, int *number, GError **error);
gboolean unsoot_sqlite_begin_schema (gpointer connection, GError **error);
gboolean unsoot_sqlite_run_schema (gpointer connection, const char *sql, GError **error);
gboolean unsoot_sqlite_commit_schema (gpointer connection, int number,
                                      const UnsootRecordType *const *types, GError **error);
void unsoot_sqlite_rollback_schema (gpointer connection);

/* db-sqlite-copy.c */
gboolean unsoot_sqlite_copy (gpointer connection, const char *path, GError **error);
gboolean unsoot_sqlite_verify (gpointer connection, GPtrArray *findings, GError **error);

/* db-sqlite-find.c */
extern const char *const unsoot_sqlite_find_schema;
gboolean unsoot_sqlite_find_put (UnsootDb *db, gint64 key, const char *title, const char *detail,
                                 const char *folded, const char *compact, GError **error);
gboolean unsoot_sqlite_find_remove (UnsootDb *db, gint64 key, GError **error);
gboolean unsoot_sqlite_find (UnsootDb *db, UnsootFoundFit fit, const char *const *words,
                             const char *compact, gint64 first, gint64 last, guint limit,
                             GHashTable *seen, GPtrArray *found, GError **error);

G_END_DECLS
