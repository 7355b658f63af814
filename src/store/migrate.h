/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* One numbered change of the book's format: SQL that is never edited once released. */
typedef struct
{
  int number; /* from 1, without a gap */
  const char *name;
  const char *sql;
} UnsootMigration;

/**
 * unsoot_migrate:
 *
 * Brings the book to the present format, all or nothing; a file that holds anything is
 * copied to backups/ beside it first. @now (Unix seconds) names the copy.
 *
 * Errors: NEWER_FORMAT, the file untouched; DAMAGED where rows refer to what is not there.
 */
gboolean unsoot_migrate (UnsootDb *db, gint64 now, GError **error);

/* The same with given migrations and record kinds, both ended by NULL (a NULL name). */
gboolean unsoot_migrate_with (UnsootDb *db, const UnsootMigration *migrations,
                              const UnsootRecordType *const *types, gint64 now, GError **error);

/* Number of the newest format this program knows. */
int unsoot_migrate_newest (void);

G_END_DECLS
