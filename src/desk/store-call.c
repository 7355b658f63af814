/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "store-call.h"

typedef struct
{
  UnsootStoreSlot *slot; /* valid only while the cancellable is not cancelled */
  GCancellable *cancellable;
  GWeakRef owner;
  GDestroyNotify free_result;
  UnsootStoreDone done;
} Call;

static Call *
call_new (UnsootStoreSlot *slot, UnsootStoreDone done, gpointer owner, GDestroyNotify free_result)
{
  Call *call = g_new0 (Call, 1);

  call->slot = slot;
  call->cancellable = g_object_ref (slot->cancellable);
  call->done = done;
  call->free_result = free_result;
  g_weak_ref_init (&call->owner, owner);
  return call;
}

static void
call_free (Call *call)
{
  g_weak_ref_clear (&call->owner);
  g_object_unref (call->cancellable);
  g_free (call);
}

static void
answered_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Call *call = user_data;
  g_autoptr (GError) error = NULL;
  gpointer answer = unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  g_autoptr (GObject) owner = g_weak_ref_get (&call->owner);

  if (owner != NULL && !g_cancellable_is_cancelled (call->cancellable))
    {
      g_clear_object (&call->slot->cancellable);
      call->done (owner, answer, error);
    }
  else if (answer != NULL && call->free_result != NULL)
    call->free_result (answer);
  call_free (call);
}

void
unsoot_store_slot_call (UnsootStoreSlot *slot, UnsootStore *store, UnsootStoreFunc func,
                        gpointer data, GDestroyNotify free_data, GDestroyNotify free_result,
                        UnsootStoreDone done, gpointer owner)
{
  unsoot_store_slot_clear (slot);
  slot->cancellable = g_cancellable_new ();
  unsoot_store_call_async (store, func, data, free_data, free_result, slot->cancellable,
                           answered_cb, call_new (slot, done, owner, free_result));
}

gboolean
unsoot_store_slot_busy (const UnsootStoreSlot *slot)
{
  return slot->cancellable != NULL;
}

void
unsoot_store_slot_clear (UnsootStoreSlot *slot)
{
  if (slot->cancellable != NULL)
    g_cancellable_cancel (slot->cancellable);
  g_clear_object (&slot->cancellable);
}
