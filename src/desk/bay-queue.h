/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bay-order.h"
#include "store.h"

/* What a deed did to the page that asked for it. */
typedef enum
{
  UNSOOT_DONE_STEP,
  UNSOOT_DONE_STOP, /* STOP, or what happened, was recorded */
  UNSOOT_DONE_RELEASE,
} UnsootBayDone;

/* @error: why it was not done; NULL: it was. Borrowed. */
typedef void (*UnsootBayQueueDone) (gpointer owner, UnsootBayDone what, const GError *error);

/* The deeds of one bay, one at a time. What is asked for while another is on its way was pressed
 * twice and is dropped, but for STOP: that is stored right after it. What was taken is carried out
 * even when the page is left. Zeroed it is empty. */
typedef struct
{
  gpointer owner; /* a GObject */
  UnsootBayQueueDone done;
  guint under_way;
  gboolean stopping; /* a STOP is among them */
} UnsootBayQueue;

/* Takes @order. */
void unsoot_bay_queue_add (UnsootBayQueue *self, UnsootStore *store, UnsootBayOrder *order);

gboolean unsoot_bay_queue_is_busy (const UnsootBayQueue *self);

/* The owner is about to go: nothing is told any more. */
void unsoot_bay_queue_clear (UnsootBayQueue *self);
