/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "shop-row.h"

G_BEGIN_DECLS

/* A dose that a booked job will take, and what it lacks when all doses before it are taken. */
typedef struct
{
  gint64 fluid_id;
  char *fluid; /* its name */
  char *side;
  gint64 job_id;
  gint64 starts_at;
  char *day; /* ISO, the shop's */
  gint64 ml;
  gint64 short_ml; /* 0: enough */
} UnsootFluidNeed;

void unsoot_fluid_need_free (UnsootFluidNeed *need);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFluidNeed, unsoot_fluid_need_free)

/**
 * unsoot_fluid_needs:
 * @job_id, @starts_at: a job thought of as booked then, or moved there; 0: none
 *
 * UnsootFluidNeed of every job that is booked or here and has not taken its fluid, by
 * fluid and start.
 */
GPtrArray *unsoot_fluid_needs (UnsootDb *db, const UnsootShopRow *shop, gint64 now, gint64 job_id,
                               gint64 starts_at, GError **error);

G_END_DECLS
