/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "demo-making.h"

#include "demo.h"

enum
{
  WHOLE = 10000
};

struct _UnsootDemoMaking
{
  gint64 now;
  gint done; /* of WHOLE; atomic */
};

UnsootDemoMaking *
unsoot_demo_making_new (gint64 now)
{
  UnsootDemoMaking *making = g_atomic_rc_box_new0 (UnsootDemoMaking);

  making->now = now;
  return making;
}

UnsootDemoMaking *
unsoot_demo_making_ref (UnsootDemoMaking *making)
{
  return g_atomic_rc_box_acquire (making);
}

void
unsoot_demo_making_unref (UnsootDemoMaking *making)
{
  g_atomic_rc_box_release (making);
}

double
unsoot_demo_making_get_share (UnsootDemoMaking *making)
{
  return (double) g_atomic_int_get (&making->done) / WHOLE;
}

static void
progress_cb (double share, gpointer data)
{
  UnsootDemoMaking *making = data;

  g_atomic_int_set (&making->done, (gint) (share * WHOLE));
}

gpointer
unsoot_demo_making_func (UnsootDb *db, gpointer data, GCancellable *cancellable, GError **error)
{
  UnsootDemoMaking *making = data;

  unsoot_demo_make (db, making->now, progress_cb, making, cancellable, error);
  return NULL;
}
