/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "days.h"

G_BEGIN_DECLS

typedef enum
{
  UNSOOT_LANE_BAY,
  UNSOOT_LANE_MACHINE,
  UNSOOT_LANE_TECHNICIAN,
  UNSOOT_LANE_ADAPTER,
} UnsootLaneKind;

/* One lane of the planner. */
typedef struct
{
  UnsootLaneKind kind;
  gint64 id; /* 0: those that have none */
  char *name;
} UnsootPlannerLane;

/* One booking, with all that it holds. */
typedef struct
{
  const UnsootDayBlock *block; /* the day's */
  gint64 machine_id;
  gint64 technician_id;
  GArray *items; /* gint64 */
} UnsootPlannerBooking;

/* What the planner shows of one day. */
typedef struct
{
  UnsootDay *day;
  GPtrArray *bookings; /* UnsootPlannerBooking by start */
  GPtrArray *lanes;    /* UnsootPlannerLane: bays, then machines, technicians, held adapters */
  GPtrArray *services; /* UnsootServiceRow that are sold */
  GArray *free;        /* UnsootPlannerFree for the service asked for; bays' */
} UnsootPlannerFile;

/* A free time in a bay. */
typedef struct
{
  gint64 bay_id;
  gint64 from;
  gint64 to;
} UnsootPlannerFree;

/**
 * unsoot_planner_file_load:
 * @date: (nullable): ISO date, %NULL is the shop's today
 * @service_id: whose free times are wanted; 0: none
 */
UnsootPlannerFile *unsoot_planner_file_load (UnsootDb *db, const char *date, gint64 service_id,
                                             gint64 now, GError **error);
void unsoot_planner_file_free (UnsootPlannerFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootPlannerFile, unsoot_planner_file_free)

/* Whether a booking stands in a lane. */
gboolean unsoot_planner_holds (const UnsootPlannerBooking *booking, const UnsootPlannerLane *lane);

G_END_DECLS
