/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "role.h"
#include "rows.h"

G_BEGIN_DECLS

/* What every deed begins and ends with. */

/* Whether the acting person's role allows @deed; the program itself (staff 0) may do all.
 * Errors: NOT_ALLOWED with the role's sentence, or for someone who no longer works here. */
gboolean unsoot_deed_allowed (UnsootDb *db, const UnsootActing *who, UnsootDeed deed,
                              GError **error);

/* Opens the deed where it is allowed. */
UnsootTransaction *unsoot_deed_begin (UnsootDb *db, const UnsootActing *who, UnsootDeed deed,
                                      GError **error);

/* Inserts a kept row whose id is 0, else updates it. */
gboolean unsoot_deed_keep (UnsootDb *db, const UnsootRecordType *type, gpointer row,
                           const UnsootActing *who, GError **error);

/**
 * unsoot_deed_keep_all:
 * @kept: the rows stored now
 * @wanted: (nullable): all there are to be; %NULL changes nothing
 * @owner_column: offset of the gint64 that names the owner, set to @owner_id
 *
 * Adds, saves and deletes so that @wanted is what is stored. Works on copies: ids and
 * versions in @wanted stay as they are.
 */
gboolean unsoot_deed_keep_all (UnsootDb *db, const UnsootRecordType *type, GPtrArray *kept,
                               GPtrArray *wanted, gsize owner_column, gint64 owner_id,
                               const UnsootActing *who, GError **error);

/* Commits where @done, else undoes the deed. */
gboolean unsoot_deed_end (UnsootTransaction **deed, gboolean done, GError **error);

/* The whole of a deed that saves one kept row of people: @row's id and version are put back
 * where it fails. @index (nullable) makes the row findable. */
typedef gboolean (*UnsootDeedIndex) (UnsootDb *db, gint64 id, GError **error);
gboolean unsoot_deed_save (UnsootDb *db, const UnsootActing *who, UnsootDeed deed,
                           const UnsootRecordType *type, gpointer row, UnsootDeedIndex index,
                           GError **error);

/* A row, or NULL without an error where there is none. */
#define unsoot_rows_maybe(db, type, error, tail, ...)                                              \
  unsoot_rows_maybe_values (db, type, error, tail, UNSOOT_VALUES (__VA_ARGS__))
gpointer unsoot_rows_maybe_values (UnsootDb *db, const UnsootRecordType *type, GError **error,
                                   const char *tail, gsize n, const UnsootValue *values);

/* Whether @text is NULL, empty or only spaces. */
gboolean unsoot_deed_blank (const char *text);

/* Sentences of an array of char *, a line each. */
char *unsoot_deed_lines (GPtrArray *sentences);

/* Sets an UNSOOT_STORE_ERROR with this code and sentence; always FALSE. */
gboolean unsoot_deed_fail (GError **error, UnsootStoreError code, const char *format, ...)
    G_GNUC_PRINTF (3, 4);

G_END_DECLS
