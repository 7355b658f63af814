/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "civil.h"

/* What a booking would break. Moments are minutes by the clock on the shop's
 * wall: day × 1440 + minute of the day; an end is the first minute after. */

#define UNSOOT_DAY_MINUTES 1440
#define UNSOOT_GRID_MINUTES 15

/* Of a moment; seconds are dropped. */
gint64 unsoot_wall_minute (const UnsootLocal *local);

typedef struct
{
  gint64 id;
  const char *label;
} UnsootNamed;

/**
 * UnsootSlot:
 * @id: of the booking; 0 for one that is not kept yet
 * @title: how others name it: "job 2411"
 * @bay, @machine, @technician: id 0 for none
 * @items: adapter items it holds
 */
typedef struct
{
  gint64 id;
  const char *title;
  gint64 starts;
  gint64 ends;
  UnsootNamed bay;
  UnsootNamed machine;
  UnsootNamed technician;
  const UnsootNamed *items;
  gsize n_items;
} UnsootSlot;

/* Minutes from midnight; a weekday may have several, or none. Monday is 1. */
typedef struct
{
  int weekday;
  int opens;
  int closes;
} UnsootOpening;

typedef struct
{
  int day;
  const char *name;
} UnsootHoliday;

typedef enum
{
  UNSOOT_AWAY_LOAN,
  UNSOOT_AWAY_INSPECTION,
} UnsootAwayWhy;

/**
 * UnsootAway:
 * @until: first minute it is back, or G_MAXINT64 where nobody knows
 * @where: the borrower's name, or NULL
 */
typedef struct
{
  gint64 item;
  UnsootAwayWhy why;
  gint64 until;
  const char *where;
} UnsootAway;

/* A fluid that the booking's dose would find short, as unsoot_stock_allot () says. */
typedef struct
{
  const char *fluid;
  gint64 short_ml;
} UnsootShort;

/* All that a booking is held against. */
typedef struct
{
  const UnsootSlot *slots;
  gsize n_slots;
  const UnsootOpening *openings;
  gsize n_openings;
  const UnsootHoliday *holidays;
  gsize n_holidays;
  const UnsootAway *aways;
  gsize n_aways;
  const UnsootShort *shorts;
  gsize n_shorts;
} UnsootDiary;

typedef enum
{
  UNSOOT_CONFLICT_BAY,
  UNSOOT_CONFLICT_MACHINE,
  UNSOOT_CONFLICT_TECHNICIAN,
  UNSOOT_CONFLICT_ADAPTER,
  UNSOOT_CONFLICT_CLOSED,
  UNSOOT_CONFLICT_HOLIDAY,
  UNSOOT_CONFLICT_LOAN,
  UNSOOT_CONFLICT_INSPECTION,
  UNSOOT_CONFLICT_FLUID,
} UnsootConflictKind;

typedef struct
{
  UnsootConflictKind kind;
  gint64 other;   /* the other booking's id, or the item's where it is away; 0 else */
  char *sentence; /* owned */
} UnsootConflict;

/* (element-type UnsootConflict): empty where nothing stands against @slot. Another
 * booking with the same id is @slot itself before it was moved, and doesn't count. */
GArray *unsoot_conflict_find (const UnsootSlot *slot, const UnsootDiary *diary);

/**
 * unsoot_conflict_free_starts:
 * @slot: its times only say how long it takes
 * @most: how many are wanted; 0 for all
 *
 * Returns: (transfer full) (element-type gint64): moments of @day on the grid of a
 * quarter of an hour at which nothing but fluid could stand against it, earliest first
 */
GArray *unsoot_conflict_free_starts (const UnsootSlot *slot, const UnsootDiary *diary, int day,
                                     guint most);
