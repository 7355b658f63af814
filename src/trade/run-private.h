/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run.h"

/* Internal to the run's files. */
typedef enum
{
  UNSOOT_STEP_OPEN,
  UNSOOT_STEP_DONE,
  UNSOOT_STEP_PASSED_OVER,
} UnsootStepMark;

typedef struct
{
  gboolean started;
  gboolean counting;
  gint64 since;   /* when it last began to count */
  gint64 counted; /* seconds up to then */
  gint64 limit;   /* seconds; -1: none */
  gboolean heard;
  gint64 progress_ml;
} UnsootRunTimer;

struct _UnsootRun
{
  UnsootProcedure *procedure;
  UnsootFamilyFacts *facts;
  UnsootRig *rig;
  UnsootRig *wanted; /* the rig as it was before the halt; NULL: nothing to make good */
  UnsootRunState state;
  gint64 next_seq;
  gint64 last_done_at;
  int cursor;
  int last_step; /* confirmed last; -1 */
  int ask_step;  /* to be confirmed again first; -1 */
  UnsootRunTimer timer;
  GArray *marks;     /* of UnsootStepMark, one a step */
  GArray *cautioned; /* of gboolean, one a phase */
};

gboolean unsoot_run_is_timed (const UnsootStep *step);

/* Whether STEP only takes something away: stops, bleeds, sets to nothing. */
gboolean unsoot_step_only_stops (const UnsootStep *step);
/* … and RIG is as it would leave it. */
gboolean unsoot_step_is_already_so (const UnsootStep *step, const UnsootRig *rig);

/* After every event: does the current timer count from AT on? */
void unsoot_run_timer_follow (UnsootRun *run, gint64 at);
void unsoot_run_timer_begin (UnsootRun *run, const UnsootStep *step, gint64 at);
