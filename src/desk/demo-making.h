/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "db.h"

/* The demo shop being made on the store's worker while the main loop looks on. */
typedef struct _UnsootDemoMaking UnsootDemoMaking;

/* @now: Unix seconds, the moment around which its day is arranged. */
UnsootDemoMaking *unsoot_demo_making_new (gint64 now);
UnsootDemoMaking *unsoot_demo_making_ref (UnsootDemoMaking *making);
void unsoot_demo_making_unref (UnsootDemoMaking *making);

/* How far it is, 0 to 1; from any thread. */
double unsoot_demo_making_get_share (UnsootDemoMaking *making);

/* The deed; its data is the making. */
gpointer unsoot_demo_making_func (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                  GError **error);
