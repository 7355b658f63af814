/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* Where a book may stand. */

/* Whether a file system is one that is reached over a network, where two programs can't
 * share a book safely. @magic is statfs's f_type (statfs(2), linux/magic.h), @type the name
 * in the mount table, which tells file systems in user space apart; it may be NULL. */
gboolean unsoot_place_is_network (guint64 magic, const char *type);

/* Checks the file system on which @path is or would be. Errors: NOT_ALLOWED. */
gboolean unsoot_place_check (const char *path, GError **error);

/* Makes the folder of @path (0700) and an empty file (0600). The file must not exist. */
gboolean unsoot_place_create (const char *path, GError **error);

/* Makes the file's contents, and its name in its folder, durable. */
gboolean unsoot_place_sync (const char *path, GError **error);

/* Where a shop's own book stands unless another file is named: in the person's data folder. */
char *unsoot_place_usual (void);
