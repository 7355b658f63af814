/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "day-strip.h"
#include "planner-layout.h"

G_BEGIN_DECLS

/* The strip of a day on which blocks are taken hold of: dragged with the pointer, or moved with
 * Ctrl and the arrows, Shift to stretch, Return to let go, Escape to give up. It decides nothing:
 * signal "proposed" (block) says that a block is held somewhere else, "dropped" (block) that it
 * is let go there, "given-up" that it is back where it was. */
#define UNSOOT_TYPE_PLANNER_BOARD (unsoot_planner_board_get_type ())
G_DECLARE_FINAL_TYPE (UnsootPlannerBoard, unsoot_planner_board, UNSOOT, PLANNER_BOARD, GtkWidget)

typedef enum
{
  UNSOOT_VERDICT_ASKED, /* not known yet */
  UNSOOT_VERDICT_FREE,
  UNSOOT_VERDICT_BREAKS,
} UnsootVerdict;

/* As unsoot_day_strip_set_day (). What was held is let go. */
void unsoot_planner_board_set_day (UnsootPlannerBoard *self, const char *const *lanes,
                                   gint64 midnight, gint64 opens, gint64 closes, GTimeZone *zone,
                                   const UnsootStripItem *items, gsize n_items);
void unsoot_planner_board_set_now (UnsootPlannerBoard *self, gint64 now);

/* Free times, shown in their lanes behind the blocks. */
void unsoot_planner_board_set_free (UnsootPlannerBoard *self, const UnsootStripSpan *spans,
                                    gsize n);

/* Where the held block would come to stand; FALSE where none is held. */
gboolean unsoot_planner_board_get_held (UnsootPlannerBoard *self, guint *block,
                                        UnsootStripSpan *span);

/* What is known of that place; it is drawn accordingly. */
void unsoot_planner_board_set_verdict (UnsootPlannerBoard *self, UnsootVerdict verdict);

/* Lets go without moving anything. */
void unsoot_planner_board_give_up (UnsootPlannerBoard *self);

/* Puts the keyboard on a block. */
void unsoot_planner_board_focus (UnsootPlannerBoard *self, guint block);

G_END_DECLS
