/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

G_BEGIN_DECLS

/* The shop's book behind one worker thread. Deeds are plain synchronous functions on
 * an UnsootDb; they run there one after another, in the order in which they were asked for.
 *
 * Signal "changed": a deed wrote something, so pages may refresh. Emitted on the main
 * context that opened the store, once for deeds in quick succession. */
#define UNSOOT_TYPE_STORE (unsoot_store_get_type ())
G_DECLARE_FINAL_TYPE (UnsootStore, unsoot_store, UNSOOT, STORE, GObject)

/**
 * UnsootStoreFunc:
 *
 * A deed, on the worker thread. It fails by setting @error; NULL without an error is a
 * result like any other. It leaves no transaction open.
 */
typedef gpointer (*UnsootStoreFunc) (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                     GError **error);

/* Opens and brings the file up to the present format. Blocks; errors as unsoot_db_open()
 * and unsoot_migrate(). */
UnsootStore *unsoot_store_open (const char *path, UnsootDbFlags flags, GError **error);

/* The same without blocking. */
void unsoot_store_open_async (const char *path, UnsootDbFlags flags, GCancellable *cancellable,
                              GAsyncReadyCallback callback, gpointer user_data);
UnsootStore *unsoot_store_open_finish (GAsyncResult *result, GError **error);

/* Waits for the deeds that were asked for, then closes the file. Later calls fail. */
void unsoot_store_close (UnsootStore *store);

/**
 * unsoot_store_call_async:
 * @data: for @func; freed with @free_data on the caller's main context
 * @free_result: frees a result that nobody takes
 * @cancellable: (nullable): really stops the deed, which then fails with CANCELLED
 */
void unsoot_store_call_async (UnsootStore *store, UnsootStoreFunc func, gpointer data,
                              GDestroyNotify free_data, GDestroyNotify free_result,
                              GCancellable *cancellable, GAsyncReadyCallback callback,
                              gpointer user_data);
gpointer unsoot_store_call_finish (UnsootStore *store, GAsyncResult *result, GError **error);

/* The same, waiting for it: for commands and tests, never on the desk's main loop. */
gpointer unsoot_store_call (UnsootStore *store, UnsootStoreFunc func, gpointer data,
                            GCancellable *cancellable, GError **error);

/* Grows with every deed that wrote: the same number means that nothing changed. */
guint64 unsoot_store_get_generation (UnsootStore *store);

/* The file's path, NULL for a book in memory. */
const char *unsoot_store_get_path (UnsootStore *store);

G_END_DECLS
