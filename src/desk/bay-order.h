/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "runs.h"

/* A deed of the bay on its way to the store's worker. */
typedef enum
{
  UNSOOT_ORDER_BEGIN,
  UNSOOT_ORDER_POST,
  UNSOOT_ORDER_RESUME,
  UNSOOT_ORDER_FINISH,
  UNSOOT_ORDER_RELEASE,
} UnsootBayDeed;

typedef struct
{
  UnsootBayDeed deed;
  UnsootActing who;
  gint64 job_id;
  gint64 run_id;
  gint64 machine_id;     /* begin */
  UnsootRunEvent *event; /* post; owned */
  char *signature;       /* finish, release */
  char *reason;          /* release */
} UnsootBayOrder;

UnsootBayOrder *unsoot_bay_order_new (UnsootBayDeed deed, UnsootActing who, gint64 job_id,
                                      gint64 run_id);
void unsoot_bay_order_free (UnsootBayOrder *order);

/* An UnsootStoreFunc; its data is the order, its result NULL. */
gpointer unsoot_bay_order_carry_out (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                     GError **error);

/* A scanned lot on its way; the result is an UnsootLotRow. */
typedef struct
{
  char *code;
  char *today;
  UnsootSide side;
} UnsootBayScan;

UnsootBayScan *unsoot_bay_scan_new (const char *code, UnsootSide side, char *today);
void unsoot_bay_scan_free (UnsootBayScan *scan);
gpointer unsoot_bay_scan_look_up (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                  GError **error);
