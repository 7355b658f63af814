/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rows.h"
#include "vehicle-row.h"

G_BEGIN_DECLS

/* When a job could be done: times at which a bay, a machine, a technician and an adapter of
 * every kind that fits are free together. */

/* What is asked. */
typedef struct
{
  gint64 vehicle_id;
  const UnsootVehicleRow *vehicle; /* one that is not kept yet, in place of the id */
  gint64 service_id;
  gint64 job_id;        /* 0: not quoted yet */
  gint64 bay_id;        /* this one and no other; 0: any */
  gint64 machine_id;    /* likewise */
  gint64 technician_id; /* likewise */
  guint days;           /* how many to look through */
} UnsootFreeTimeAsk;

/* One such time, with what would be taken. */
typedef struct
{
  gint64 starts_at;
  gint64 ends_at;
  gint64 bay_id;
  gint64 machine_id;
  gint64 technician_id;
  char *bay;
  char *machine;
  char *technician;
  GArray *items;  /* gint64: adapters */
  char *adapters; /* their tags, commas between; NULL: none */
} UnsootFreeTime;

typedef struct
{
  char *day;        /* ISO date */
  GPtrArray *times; /* UnsootFreeTime, earliest first */
  GPtrArray *why;   /* char *: what stands in the way where there is none */
} UnsootFreeDay;

void unsoot_free_time_free (UnsootFreeTime *time);
void unsoot_free_day_free (UnsootFreeDay *day);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFreeTime, unsoot_free_time_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFreeDay, unsoot_free_day_free)

/**
 * unsoot_free_days:
 * @from: Unix seconds: nothing before it is offered
 *
 * UnsootFreeDay for every day the shop is open, from @from's on. Errors: NOT_FOUND.
 */
GPtrArray *unsoot_free_days (UnsootDb *db, const UnsootFreeTimeAsk *ask, gint64 from,
                             GError **error);

/**
 * unsoot_free_time_at:
 * @starts_at: exactly when
 * @now: Unix seconds
 * @why: (element-type utf8): gets a sentence for everything that stands in the way
 *
 * Returns: what would be taken then, with 0 and NULL for what is not free
 */
UnsootFreeTime *unsoot_free_time_at (UnsootDb *db, const UnsootFreeTimeAsk *ask, gint64 starts_at,
                                     gint64 now, GPtrArray *why, GError **error);

G_END_DECLS
