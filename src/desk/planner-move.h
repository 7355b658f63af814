/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "bookings.h"
#include "planner-file.h"
#include "strip-layout.h"

G_BEGIN_DECLS

/* A booking on its way to another place: handed to the worker, so it refers to nothing. */
typedef struct
{
  UnsootActing who;
  UnsootBookingWish wish; /* its items are the booking's own */
} UnsootPlannerMove;

/* The booking where it is now. */
UnsootPlannerMove *unsoot_planner_move_new (const UnsootPlannerBooking *booking,
                                            const UnsootActing *who);

/* Puts it to @span in @lane; a lane of another kind than it came from changes nothing but time. */
void unsoot_planner_move_to (UnsootPlannerMove *move, const UnsootPlannerLane *from,
                             const UnsootPlannerLane *to, const UnsootStripSpan *span);

/* What it would break, and what it would leave short. */
typedef struct
{
  GPtrArray *breaks;   /* char *: it can't be done */
  GPtrArray *warnings; /* char *: it can */
} UnsootPlannerVerdict;

void unsoot_planner_verdict_free (UnsootPlannerVerdict *verdict);

/* On the worker; @data is an UnsootPlannerMove: returns an UnsootPlannerVerdict. */
gpointer unsoot_planner_move_ask (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                  GError **error);

/* On the worker, likewise: carries it out. */
gpointer unsoot_planner_move_do (UnsootDb *db, gpointer data, GCancellable *cancellable,
                                 GError **error);

G_END_DECLS
