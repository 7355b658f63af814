/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-order.h"

#include "finishes.h"
#include "lot-scan.h"

UnsootBayOrder *
unsoot_bay_order_new (UnsootBayDeed deed, UnsootActing who, gint64 job_id, gint64 run_id)
{
  UnsootBayOrder *order = g_new0 (UnsootBayOrder, 1);

  order->deed = deed;
  order->who = who;
  order->job_id = job_id;
  order->run_id = run_id;
  return order;
}

void
unsoot_bay_order_free (UnsootBayOrder *order)
{
  g_clear_pointer (&order->event, unsoot_run_event_free);
  g_free (order->signature);
  g_free (order->reason);
  g_free (order);
}

gpointer
unsoot_bay_order_carry_out (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootBayOrder *order = data;
  const UnsootActing *who = &order->who;

  switch (order->deed)
    {
    case UNSOOT_ORDER_BEGIN:
      unsoot_job_run_begin (db, who, order->job_id, order->machine_id, error);
      break;
    case UNSOOT_ORDER_POST:
      unsoot_job_run_post (db, who, order->run_id, order->event, NULL, error);
      break;
    case UNSOOT_ORDER_RESUME:
      unsoot_job_run_resume (db, who, order->run_id, NULL, error);
      break;
    case UNSOOT_ORDER_FINISH:
      unsoot_job_finish (db, who, order->job_id, order->signature, error);
      break;
    case UNSOOT_ORDER_RELEASE:
      unsoot_job_release (db, who, order->job_id, order->signature, order->reason, error);
      break;
    }
  return NULL;
}

UnsootBayScan *
unsoot_bay_scan_new (const char *code, UnsootSide side, char *today)
{
  UnsootBayScan *scan = g_new0 (UnsootBayScan, 1);

  scan->code = g_strdup (code);
  scan->side = side;
  scan->today = today;
  return scan;
}

void
unsoot_bay_scan_free (UnsootBayScan *scan)
{
  g_free (scan->code);
  g_free (scan->today);
  g_free (scan);
}

gpointer
unsoot_bay_scan_look_up (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  const UnsootBayScan *scan = data;

  return unsoot_lot_scan (db, scan->code, unsoot_side_to_slug (scan->side), scan->today, error);
}
