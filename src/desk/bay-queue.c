/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-queue.h"

static const char QUEUE[] = "bay-queue";

typedef struct
{
  GWeakRef owner;
  UnsootBayDone what;
} Sent;

static UnsootBayDone
what_is (const UnsootBayOrder *order)
{
  if (order->deed == UNSOOT_ORDER_RELEASE)
    return UNSOOT_DONE_RELEASE;
  return order->event != NULL && unsoot_run_event_stops (order->event) ? UNSOOT_DONE_STOP
                                                                       : UNSOOT_DONE_STEP;
}

static void
sent_cb (GObject *source, GAsyncResult *result, gpointer user_data)
{
  Sent *sent = user_data;
  g_autoptr (GError) error = NULL;
  g_autoptr (GObject) owner = g_weak_ref_get (&sent->owner);
  UnsootBayQueue *self = owner != NULL ? g_object_get_data (owner, QUEUE) : NULL;

  unsoot_store_call_finish (UNSOOT_STORE (source), result, &error);
  if (self != NULL)
    {
      self->under_way--;
      if (sent->what == UNSOOT_DONE_STOP)
        self->stopping = FALSE;
      self->done (owner, sent->what, error);
    }
  g_weak_ref_clear (&sent->owner);
  g_free (sent);
}

/* Without a way to cancel it: a page that is left takes nothing back. The store carries out one
 * call after the other. */
static void
send (UnsootBayQueue *self, UnsootStore *store, UnsootBayOrder *order)
{
  Sent *sent = g_new0 (Sent, 1);

  sent->what = what_is (order);
  g_weak_ref_init (&sent->owner, self->owner);
  g_object_set_data (self->owner, QUEUE, self);
  self->under_way++;
  self->stopping = self->stopping || sent->what == UNSOOT_DONE_STOP;
  unsoot_store_call_async (store, unsoot_bay_order_carry_out, order,
                           (GDestroyNotify) unsoot_bay_order_free, NULL, NULL, sent_cb, sent);
}

void
unsoot_bay_queue_add (UnsootBayQueue *self, UnsootStore *store, UnsootBayOrder *order)
{
  const gboolean stop = what_is (order) == UNSOOT_DONE_STOP;

  if (self->under_way == 0 || (stop && !self->stopping))
    send (self, store, order);
  else
    unsoot_bay_order_free (order);
}

gboolean
unsoot_bay_queue_is_busy (const UnsootBayQueue *self)
{
  return self->under_way > 0;
}

void
unsoot_bay_queue_clear (UnsootBayQueue *self)
{
  if (self->owner != NULL)
    g_object_set_data (self->owner, QUEUE, NULL);
  self->under_way = 0;
}
