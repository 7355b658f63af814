/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* Records of any kind, by their descriptor. Every change of a kept record and its
 * entries in the log of changes are one deed. */

/* Who acts, and when: the store has no clock of its own. */
typedef struct
{
  gint64 staff_id; /* 0: the program itself, as when it seeds a new shop */
  gint64 now;      /* Unix seconds */
} UnsootActing;

/* The row with this @id, the caller's to free. Errors: NOT_FOUND. */
gpointer unsoot_rows_get (UnsootDb *db, const UnsootRecordType *type, gint64 id, GError **error);

/**
 * unsoot_rows_list:
 * @tail: what follows FROM table: "WHERE customer_id = $1 ORDER BY id"; always with ORDER BY
 *
 * unsoot_rows_list (db, &type, error, tail, values …): all rows that match, in an array
 * that owns them.
 */
#define unsoot_rows_list(db, type, error, tail, ...)                                               \
  unsoot_rows_list_values (db, type, error, tail, UNSOOT_VALUES (__VA_ARGS__))
GPtrArray *unsoot_rows_list_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                                    const char *tail, gsize n, const UnsootValue *values);

/* The first such row. Errors: NOT_FOUND. */
#define unsoot_rows_first(db, type, error, tail, ...)                                              \
  unsoot_rows_first_values (db, type, error, tail, UNSOOT_VALUES (__VA_ARGS__))
gpointer unsoot_rows_first_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                                   const char *tail, gsize n, const UnsootValue *values);

/* Adds @record, which gets its id and version 1. The log has one entry, "version" from
 * nothing to 1: what each field was at first is what it is now, or what its first change
 * says that it was. */
gboolean unsoot_rows_insert (UnsootDb *db, const UnsootRecordType *type, gpointer record,
                             const UnsootActing *acting, GError **error);

/**
 * unsoot_rows_update:
 *
 * Saves @record where its version is still the stored one, and raises its version. The
 * log has an entry for each field that differs; where none does, nothing is written.
 *
 * Errors: CONFLICT where someone saved it meanwhile: @record is untouched, and
 * unsoot_rows_get() has theirs. NOT_FOUND where it is gone.
 */
gboolean unsoot_rows_update (UnsootDb *db, const UnsootRecordType *type, gpointer record,
                             const UnsootActing *acting, GError **error);

/* Deletes the row where its version is still @record's. The log keeps every field that
 * had a value, and "version" from its last number to nothing. */
gboolean unsoot_rows_delete (UnsootDb *db, const UnsootRecordType *type, gconstpointer record,
                             const UnsootActing *acting, GError **error);

/* Adds a posting, which gets its id. It is its own log: nothing ever changes it. */
gboolean unsoot_rows_post (UnsootDb *db, const UnsootRecordType *type, gpointer record,
                           GError **error);

G_END_DECLS
