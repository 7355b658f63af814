/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "reading.h"

/* Whether two readings may be set against each other, and what their difference
 * shows. Two readings taken under different conditions show nothing, however far
 * apart they are. */

typedef enum
{
  UNSOOT_EGR_UNKNOWN,
  UNSOOT_EGR_SHUT,
  UNSOOT_EGR_REGULATED, /* left to the engine's computer */
  UNSOOT_EGR_OPEN,
} UnsootEgrState;

extern const UnsootSlug unsoot_egr_states[];

/* NAN for what was not noted. */
typedef struct
{
  double rpm;
  double load;    /* % */
  double coolant; /* °C */
  UnsootEgrState egr;
  gboolean regeneration;
  double barometer; /* Pa */
  double ambient;   /* °C */
} UnsootCondition;

#define UNSOOT_CONDITION_UNKNOWN                                                                   \
  ((UnsootCondition){ NAN, NAN, NAN, UNSOOT_EGR_UNKNOWN, FALSE, NAN, NAN })

/* How far conditions may be apart: a shop's settings. */
typedef struct
{
  double rpm;
  double load;
  double coolant;
  double barometer;
  double ambient;
} UnsootAlikeLimits;

/* 50 rpm, 5 %, 5 °C, 1 kPa, 5 °C: common practice, no source. */
extern const UnsootAlikeLimits unsoot_alike_usual;

typedef struct
{
  double value;
  double tolerance; /* of the instrument used, as kept; NAN: the kind's usual */
  UnsootCondition condition;
} UnsootReading;

/* How far a reading may be off either way, as kept: by its instrument, or else as is usual
 * for its kind. */
double unsoot_reading_tolerance (UnsootReadingKind kind, const UnsootReading *reading);

typedef enum
{
  UNSOOT_VERDICT_BETTER,
  UNSOOT_VERDICT_WORSE,
  UNSOOT_VERDICT_NO_CHANGE_SHOWN, /* within what the instruments can tell */
  UNSOOT_VERDICT_NO_DIRECTION,    /* changed; neither better nor worse by itself */
  UNSOOT_VERDICT_NOT_COMPARABLE,
} UnsootVerdict;

/**
 * UnsootReadingChange:
 * @difference: after less before
 * @percent: of the reading before; NAN where that is zero
 * @tolerance: of the difference: root of the sum of both tolerances' squares
 * @sentence: (transfer full): the verdict in words, with its reason
 */
typedef struct
{
  double difference;
  double percent;
  double tolerance;
  UnsootVerdict verdict;
  char *sentence;
} UnsootReadingChange;

/* TRUE where both were taken alike; else *@why (free it) names the difference and
 * how much is allowed, or what was not noted. */
gboolean unsoot_reading_alike (UnsootReadingKind kind, const UnsootCondition *before,
                               const UnsootCondition *after, const UnsootAlikeLimits *limits,
                               char **why);

UnsootReadingChange unsoot_reading_change (UnsootReadingKind kind, const UnsootReading *before,
                                           const UnsootReading *after,
                                           const UnsootAlikeLimits *limits);

void unsoot_reading_change_clear (UnsootReadingChange *change);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootReadingChange, unsoot_reading_change_clear)
