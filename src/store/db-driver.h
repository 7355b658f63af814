/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"
#include "find.h"

G_BEGIN_DECLS

/* What an engine must be able to do. Only files of the store include this. */

typedef struct
{
  const char *name;

  /* The connection, db->connection from here on; @db->path is set. */
  gpointer (*open) (UnsootDb *db, UnsootDbFlags flags, GError **error);
  void (*close) (gpointer connection);

  gpointer (*prepare) (gpointer connection, const char *sql, GError **error);
  void (*finalize) (gpointer statement);
  guint (*n_arguments) (gpointer statement);
  void (*bind) (gpointer statement, guint position, UnsootValue value);
  UnsootQueryStep (*step) (gpointer connection, gpointer statement, GError **error);
  void (*reset) (gpointer statement, gboolean forget_arguments);

  gboolean (*is_null) (gpointer statement, guint column);
  gint64 (*get_int) (gpointer statement, guint column);
  double (*get_real) (gpointer statement, guint column);
  const char *(*get_text) (gpointer statement, guint column);
  GBytes *(*get_bytes) (gpointer statement, guint column);

  /* A commit or rollback under way is not stopped by the cancellable. */
  gboolean (*begin) (gpointer connection, GError **error);
  gboolean (*commit) (gpointer connection, GError **error);
  void (*rollback) (gpointer connection);
  gboolean (*in_transaction) (gpointer connection);

  gint64 (*changes) (gpointer connection);
  gint64 (*total_changes) (gpointer connection);
  void (*set_patience) (gpointer connection, guint milliseconds);

  /* The book was recognised as ours: from here on the file may be written. */
  gboolean (*settle) (gpointer connection, GError **error);
  /* The format's number, 0 for a new book. */
  gboolean (*get_format) (gpointer connection, int *number, GError **error);
  /* Between these two the schema may be changed and references are not enforced;
     @number is kept with the changes, in one transaction. */
  gboolean (*begin_schema) (gpointer connection, GError **error);
  gboolean (*run_schema) (gpointer connection, const char *sql, GError **error);
  gboolean (*commit_schema) (gpointer connection, int number, const UnsootRecordType *const *types,
                             GError **error);
  void (*rollback_schema) (gpointer connection);

  /* A copy at @path, which is an empty file or none. */
  gboolean (*copy) (gpointer connection, const char *path, GError **error);
  gboolean (*verify) (gpointer connection, GPtrArray *findings, GError **error);

  /* The words that are searched; ids as unsoot_find_key () makes them. */
  gboolean (*find_put) (UnsootDb *db, gint64 key, const char *title, const char *detail,
                        const char *folded, const char *compact, GError **error);
  gboolean (*find_remove) (UnsootDb *db, gint64 key, GError **error);
  /* Appends UnsootFound for keys in @first … @last, newest first, none that @seen holds. */
  gboolean (*find) (UnsootDb *db, UnsootFoundFit fit, const char *const *words, const char *compact,
                    gint64 first, gint64 last, guint limit, GHashTable *seen, GPtrArray *found,
                    GError **error);
} UnsootDriver;

extern const UnsootDriver unsoot_sqlite_driver;

struct _UnsootDb
{
  const UnsootDriver *driver;
  gpointer connection;
  char *path; /* NULL: in memory */
  GThread *owner;
  GHashTable *statements; /* SQL → UnsootQuery not in use */
  guint queries;          /* in use */
  guint depth;            /* of transactions */
  GCancellable *cancellable;
  GHashTable *postings; /* set of table names */
};

struct _UnsootQuery
{
  UnsootDb *db;
  char *sql;
  gpointer statement;
  guint n_arguments;
  guint64 unbound; /* a bit for each argument */
  gboolean started;
};

/* As unsoot_db_prepare() for SQL that only this engine reads. */
UnsootQuery *unsoot_db_prepare_native (UnsootDb *db, const char *sql, GError **error);

/* Whether the running statement is to be stopped. */
gboolean unsoot_db_is_cancelled (UnsootDb *db);

/* Where a row's words are kept, so that one kind's rows stand together, oldest first. */
static inline gint64
unsoot_find_key (UnsootFoundKind kind, gint64 row)
{
  return ((gint64) kind << 40) | row;
}

G_END_DECLS
