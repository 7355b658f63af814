/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "conflict.h"

/* When a bay, a machine, a technician and an adapter of every kind are free together. */

typedef enum
{
  UNSOOT_NEED_BAY,
  UNSOOT_NEED_MACHINE,
  UNSOOT_NEED_TECHNICIAN,
  UNSOOT_NEED_ADAPTER,
} UnsootNeedKind;

/* One of these is needed: any of @any, those that are liked best first. */
typedef struct
{
  UnsootNeedKind kind;
  const UnsootNamed *any;
  gsize n_any;
} UnsootNeed;

/**
 * UnsootFreeAsk:
 * @own: the booking that is moved, which does not stand in its own way; 0: a new one
 * @minutes: how long it takes
 */
typedef struct
{
  const UnsootNeed *needs;
  gsize n_needs;
  gint64 own;
  gint64 minutes;
} UnsootFreeAsk;

/**
 * unsoot_free_starts:
 * @from: the first moment wanted
 * @most: how many are wanted; 0 for all
 *
 * Returns: (transfer full) (element-type gint64): moments of @day from @from on, on the
 *   grid of a quarter of an hour, at which one of every need is free; earliest first
 */
GArray *unsoot_free_starts (const UnsootFreeAsk *ask, const UnsootDiary *diary, int day,
                            gint64 from, guint most);

/**
 * unsoot_free_choose:
 * @ids: (out) (array length=n_needs): what was chosen for each need; 0 where none is free,
 *   or where the need names nothing
 * @why: (nullable) (element-type utf8): gets a sentence for everything that stands in the way
 *
 * Returns: whether one of every need is free at @starts
 */
gboolean unsoot_free_choose (const UnsootFreeAsk *ask, const UnsootDiary *diary, gint64 starts,
                             gint64 *ids, GPtrArray *why);
