/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "planner-board.h"
#include "planner-file.h"
#include "session.h"

G_BEGIN_DECLS

/* What a block of the board stands for. */
typedef struct
{
  const UnsootPlannerBooking *booking;
  const UnsootPlannerLane *lane;
} UnsootPlannerItem;

/* The hand on the planner's board: says under it what a booking would break where it is held,
 * asks the store meanwhile, and carries out what is let go, with Undo. */
#define UNSOOT_TYPE_PLANNER_HOLD (unsoot_planner_hold_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPlannerHold, unsoot_planner_hold, UNSOOT, PLANNER_HOLD, GObject)

/* @board and @verdict outlive it, or unsoot_planner_hold_close () is called before. */
UnsootPlannerHold *unsoot_planner_hold_new (UnsootSession *session, UnsootPlannerBoard *board,
                                            GtkLabel *verdict);
void unsoot_planner_hold_close (UnsootPlannerHold *self);

/* What the board shows from now on, both borrowed: @items (UnsootPlannerItem) as its blocks. NULLs
 * while it is made anew. */
void unsoot_planner_hold_set_day (UnsootPlannerHold *self, const UnsootPlannerFile *file,
                                  const GArray *items);

/* The sentence while nothing is held; copied, and said at once. */
void unsoot_planner_hold_set_idle (UnsootPlannerHold *self, const char *sentence, gboolean dim);

/* Puts the keyboard back on what was moved last, once. */
void unsoot_planner_hold_restore_focus (UnsootPlannerHold *self);

G_END_DECLS
