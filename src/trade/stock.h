/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What is on the shelf, what of it is promised, and which lot is used first.
 * Volumes are mL, days ISO dates ("2025-03-31"), which sort as text. */

/**
 * UnsootStockLot:
 * @label: the lot's number, as it stands on the container
 * @on_hand: sum of the lot's moves
 * @expires: the last day it may be used, or NULL
 * @opened: a container that was opened; used before sealed ones
 * @opened_until: the last day for the opened container, or NULL
 * @held: recalled or set aside: counted, never picked
 */
typedef struct
{
  gint64 id;
  const char *label;
  gint64 on_hand;
  const char *expires;
  gboolean opened;
  const char *opened_until;
  gboolean held;
} UnsootStockLot;

/**
 * UnsootStockState:
 * @on_hand: everything on the shelf
 * @usable: of that, neither expired nor held
 * @promised: doses of booked jobs
 * @free: usable less promised; below zero it is short
 * @has_days_left: FALSE where nothing is being used
 * @days_left: how long what is free lasts
 */
typedef struct
{
  gint64 on_hand;
  gint64 usable;
  gint64 promised;
  gint64 free;
  gboolean has_days_left;
  double days_left;
} UnsootStockState;

typedef struct
{
  gsize lot; /* index into the lots given */
  gint64 ml;
} UnsootStockPick;

/* A booked job's dose: the day it is run and how much it takes. */
typedef struct
{
  const char *day;
  gint64 ml;
} UnsootStockNeed;

/* The sum of a lot's moves. FALSE with RANGE where it overflows or falls below zero. */
gboolean unsoot_stock_on_hand (const gint64 *moves, gsize n, gint64 *on_hand, GError **error);

/* The earlier of a lot's own date and its opened container's, or NULL for none. */
const char *unsoot_stock_last_day (const UnsootStockLot *lot);

/* Not held, not empty, and not past its last day; the last day itself still counts. */
gboolean unsoot_stock_usable (const UnsootStockLot *lot, const char *day);

/* @daily_use in mL a day, zero or below for none. */
UnsootStockState unsoot_stock_state (const UnsootStockLot *lots, gsize n, const char *today,
                                     gint64 promised, double daily_use);

/**
 * unsoot_stock_pick:
 * @shortage: (out): what the usable lots can't give, 0 where they can
 *
 * First expired, first out: opened before sealed, then by last day (those
 * without one at the end), then in the order given.
 *
 * Returns: (transfer full): #UnsootStockPick
 */
GArray *unsoot_stock_pick (const UnsootStockLot *lots, gsize n, gint64 ml, const char *day,
                           gint64 *shortage);

/* Walks booked doses in the order of their days, each picking what is usable on its
 * own day; shortages[i] is what need i lacks. */
void unsoot_stock_allot (const UnsootStockLot *lots, gsize n, const UnsootStockNeed *needs,
                         gsize n_needs, gint64 *shortages);

/* "Intake fluid R is 3 L short for tomorrow 10:00." Free with g_free. */
char *unsoot_stock_shortage_sentence (const char *fluid, gint64 shortage, const char *when);
