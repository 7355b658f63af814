/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "session.h"

/**
 * unsoot_opening_async:
 * @path: the shop's file
 * @demo: the invented shop: its first advisor is at the desk at once, as its owner is in a new one
 * @prepare: (nullable): a deed that fills a new file before it is read: makes the shop or the
 *   demo. Where it fails or is stopped, the new file is taken away again
 * @data: for @prepare, freed with @free_data
 *
 * Opens a shop without blocking: file, format, the shop's row, who is at the desk.
 */
void unsoot_opening_async (const char *path, UnsootDbFlags flags, gboolean demo,
                           UnsootStoreFunc prepare, gpointer data, GDestroyNotify free_data,
                           GCancellable *cancellable, GAsyncReadyCallback callback,
                           gpointer user_data);

/* The session, the caller's. Errors: a sentence that names the file. */
UnsootSession *unsoot_opening_finish (GAsyncResult *result, GError **error);
