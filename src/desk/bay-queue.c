/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-queue.h"

static UnsootBayDone
what_is (const UnsootBayOrder *order)
{
  if (order->deed == UNSOOT_ORDER_RELEASE)
    return UNSOOT_DONE_RELEASE;
  return order->event != NULL && unsoot_run_event_stops (order->event) ? UNSOOT_DONE_STOP
                                                                       : UNSOOT_DONE_STEP;
}

static void send (UnsootBayQueue *self, UnsootBayOrder *order);

static void
sent (gpointer owner, gpointer result, const GError *error)
{
  UnsootBayQueue *self = g_object_get_data (owner, "bay-queue");
  const UnsootBayDone what = self->under_way;

  if (self->waiting != NULL)
    send (self, g_steal_pointer (&self->waiting));
  self->done (owner, what, error);
}

static void
send (UnsootBayQueue *self, UnsootBayOrder *order)
{
  self->under_way = what_is (order);
  g_object_set_data (self->owner, "bay-queue", self);
  unsoot_store_slot_call (&self->slot, self->store, unsoot_bay_order_carry_out, order,
                          (GDestroyNotify) unsoot_bay_order_free, NULL, sent, self->owner);
}

void
unsoot_bay_queue_add (UnsootBayQueue *self, UnsootStore *store, UnsootBayOrder *order)
{
  self->store = store;
  if (!unsoot_bay_queue_is_busy (self))
    {
      send (self, order);
      return;
    }
  if (what_is (order) == UNSOOT_DONE_STOP)
    {
      g_clear_pointer (&self->waiting, unsoot_bay_order_free);
      self->waiting = order;
    }
  else
    unsoot_bay_order_free (order);
}

gboolean
unsoot_bay_queue_is_busy (const UnsootBayQueue *self)
{
  return unsoot_store_slot_busy (&self->slot);
}

void
unsoot_bay_queue_clear (UnsootBayQueue *self)
{
  unsoot_store_slot_clear (&self->slot);
  g_clear_pointer (&self->waiting, unsoot_bay_order_free);
}
