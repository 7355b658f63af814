/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gio/gio.h>

#include "record.h"
#include "store-error.h"
#include "value.h"

G_BEGIN_DECLS

/* One connection to the shop's book, owned by the thread that opened it: every
 * function here asserts that. SQL is the dialect that SQLite and PostgreSQL share,
 * with $1, $2 … for the arguments. Every failure is an UNSOOT_STORE_ERROR. */
typedef struct _UnsootDb UnsootDb;

/* A prepared statement, borrowed from the connection until it is freed. */
typedef struct _UnsootQuery UnsootQuery;

/* A deed in progress: freed before its commit, nothing of it is kept. */
typedef struct _UnsootTransaction UnsootTransaction;

typedef enum
{
  UNSOOT_DB_CREATE = 1 << 0,    /* make the file where there is none */
  UNSOOT_DB_READ_ONLY = 1 << 1, /* refuse every change */
  UNSOOT_DB_ELSEWHERE = 1 << 2, /* not written here: look for damage before trusting it */
} UnsootDbFlags;

typedef enum
{
  UNSOOT_STEP_ROW,
  UNSOOT_STEP_DONE,
  UNSOOT_STEP_FAILED, /* the error is set */
} UnsootQueryStep;

/**
 * unsoot_db_open:
 * @path: (nullable): the file; %NULL keeps the book in memory
 *
 * The calling thread owns the connection from here on. A new file has mode 0600, a
 * folder made for it 0700.
 *
 * Errors: NOT_FOUND without CREATE; NOT_OURS for any other file, which is left
 * untouched; DAMAGED; READ_ONLY; NOT_ALLOWED on a network file system.
 */
UnsootDb *unsoot_db_open (const char *path, UnsootDbFlags flags, GError **error);

/* Closes; every query must be freed and no transaction open. */
void unsoot_db_close (UnsootDb *db);

/* The file's path, NULL for a book in memory. */
const char *unsoot_db_path (UnsootDb *db);

/* Tables whose rows are never updated or deleted, whatever code asks for it:
 * those of @types (NULL-terminated) that are postings. */
void unsoot_db_guard_postings (UnsootDb *db, const UnsootRecordType *const *types);

/* A running statement fails with CANCELLED once @cancellable (borrowed, may be NULL) is
 * cancelled. A commit or rollback under way is never stopped. */
void unsoot_db_set_cancellable (UnsootDb *db, GCancellable *cancellable);

/* How long to wait for another program's write before BUSY; 5000 ms at first. */
void unsoot_db_set_patience (UnsootDb *db, guint milliseconds);

/* Aborts where a deed was left open. */
void unsoot_db_assert_idle (UnsootDb *db);

/* Rows changed through this connection since it was opened. */
gint64 unsoot_db_total_changes (UnsootDb *db);

/**
 * unsoot_db_begin:
 *
 * Opens a deed, or joins the one that is open: only the outermost commit writes, and a
 * rollback anywhere undoes the whole; after it, statements fail until the outermost is
 * freed too. Waits for other writers, BUSY when that takes too long.
 */
UnsootTransaction *unsoot_db_begin (UnsootDb *db, GError **error);

/* Consumes @transaction. Where this fails nothing was kept. */
gboolean unsoot_transaction_commit (UnsootTransaction *transaction, GError **error);

/* Consumes @transaction and undoes the deed. */
void unsoot_transaction_rollback (UnsootTransaction *transaction);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDb, unsoot_db_close)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootTransaction, unsoot_transaction_rollback)

/* The statement @sql, ready to be bound. Statements are kept by their text and used again. */
UnsootQuery *unsoot_db_prepare (UnsootDb *db, const char *sql, GError **error);

/* Binds $@position, counted from 1. */
void unsoot_query_bind (UnsootQuery *query, guint position, UnsootValue value);

/* The next row. Every argument must be bound. */
UnsootQueryStep unsoot_query_step (UnsootQuery *query, GError **error);

/* Ready to run again, its arguments still bound. */
void unsoot_query_reset (UnsootQuery *query);

/* Gives the statement back. */
void unsoot_query_free (UnsootQuery *query);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootQuery, unsoot_query_free)

/* Columns of the present row, counted from 0. NULL reads as 0, NAN, NULL and NULL.
 * Text is borrowed until the next step; bytes are the caller's. */
gint64 unsoot_query_get_int (UnsootQuery *query, guint column);
double unsoot_query_get_real (UnsootQuery *query, guint column);
const char *unsoot_query_get_text (UnsootQuery *query, guint column);
GBytes *unsoot_query_get_bytes (UnsootQuery *query, guint column);
gboolean unsoot_query_is_null (UnsootQuery *query, guint column);
char *unsoot_query_dup_text (UnsootQuery *query, guint column);

/* Prepared and bound: unsoot_db_query (db, error, "… $1 … $2", unsoot_int (1), unsoot_text (s)). */
#define unsoot_db_query(db, error, sql, ...)                                                       \
  unsoot_db_query_values (db, error, sql, UNSOOT_VALUES (__VA_ARGS__))

/* Run to the end, rows ignored. */
#define unsoot_db_run(db, error, sql, ...)                                                         \
  unsoot_db_run_values (db, error, sql, UNSOOT_VALUES (__VA_ARGS__))

/* As unsoot_db_run(); also how many rows the statement changed. */
#define unsoot_db_change(db, changed, error, sql, ...)                                             \
  unsoot_db_change_values (db, changed, error, sql, UNSOOT_VALUES (__VA_ARGS__))

/* First column of the first row. NOT_FOUND where there is no row; NULL in it reads as 0. */
#define unsoot_db_int(db, value, error, sql, ...)                                                  \
  unsoot_db_int_values (db, value, error, sql, UNSOOT_VALUES (__VA_ARGS__))

/* The same as text, the caller's to free; NULL may be a NULL in the row, then no error is set. */
#define unsoot_db_text(db, error, sql, ...)                                                        \
  unsoot_db_text_values (db, error, sql, UNSOOT_VALUES (__VA_ARGS__))

UnsootQuery *unsoot_db_query_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                                     const UnsootValue *values);
gboolean unsoot_db_run_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                               const UnsootValue *values);
gboolean unsoot_db_change_values (UnsootDb *db, gint64 *changed, GError **error, const char *sql,
                                  gsize n, const UnsootValue *values);
gboolean unsoot_db_int_values (UnsootDb *db, gint64 *value, GError **error, const char *sql,
                               gsize n, const UnsootValue *values);
char *unsoot_db_text_values (UnsootDb *db, GError **error, const char *sql, gsize n,
                             const UnsootValue *values);

G_END_DECLS
