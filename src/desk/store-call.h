/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "store.h"

/* The one way from the desk to the store: a deed runs on the store's worker, its result comes
 * back on the main loop. Each widget that asks keeps a slot for each question; asking again
 * stops the former deed, and a stopped or orphaned answer is freed unseen. */
typedef struct
{
  GCancellable *cancellable;
} UnsootStoreSlot;

/* @result is the receiver's to free; @error (borrowed) is set where the deed failed. */
typedef void (*UnsootStoreDone) (gpointer owner, gpointer result, const GError *error);

/**
 * unsoot_store_slot_call:
 * @owner: a GObject; nothing is delivered once it is finalised or @slot is cleared
 * @data: for @func, freed with @free_data
 * @free_result: frees an answer that nobody wants any more
 */
void unsoot_store_slot_call (UnsootStoreSlot *slot, UnsootStore *store, UnsootStoreFunc func,
                             gpointer data, GDestroyNotify free_data, GDestroyNotify free_result,
                             UnsootStoreDone done, gpointer owner);

/* Whether an answer is on its way. */
gboolean unsoot_store_slot_busy (const UnsootStoreSlot *slot);

/* Stops what is on its way; for dispose and for closing. */
void unsoot_store_slot_clear (UnsootStoreSlot *slot);
