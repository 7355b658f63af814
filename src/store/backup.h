/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/**
 * unsoot_backup_to:
 * @path: a file that does not exist yet
 *
 * A whole, checked copy: written beside its place, synced, renamed. Other programs may
 * go on writing. Where it fails, no file is left.
 */
gboolean unsoot_backup_to (UnsootDb *db, const char *path, GError **error);

/**
 * unsoot_backup_keep:
 * @folder: made where it is missing, mode 0700
 * @reason: part of the name: "daily", "upgrade", "restore"
 * @now: Unix seconds, for the name
 *
 * A copy in @folder; of those made this way, the newest ten stay.
 *
 * Returns: the path of the copy.
 */
char *unsoot_backup_keep (UnsootDb *db, const char *folder, const char *reason, gint64 now,
                          GError **error);

/**
 * unsoot_backup_daily:
 * @now: Unix seconds
 *
 * unsoot_backup_keep() beside the book, once a day by UTC; nothing where today's copy is
 * there already, or the book is in memory.
 */
gboolean unsoot_backup_daily (UnsootDb *db, gint64 now, GError **error);

/* The folder beside the book where its copies are kept; NULL for a book in memory. */
char *unsoot_backup_folder (UnsootDb *db);

/**
 * unsoot_verify:
 * @findings: (out): a sentence for each thing that is wrong; empty for a sound book
 *
 * Looks at every page, index and reference.
 *
 * Returns: whether it could look; what it found is in @findings.
 */
gboolean unsoot_verify (UnsootDb *db, GPtrArray **findings, GError **error);

G_END_DECLS
