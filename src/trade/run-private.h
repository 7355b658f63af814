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

/* Why an event is refused. Each returns FALSE with its sentence in @error where it does. */
gboolean unsoot_run_fail (GError **error, UnsootRunErrorCode code, const char *format, ...)
    G_GNUC_PRINTF (3, 4);
/* Clears FAULT. */
gboolean unsoot_run_fail_by_rule (GError **error, UnsootFault *fault);
gboolean unsoot_run_needs_state (const UnsootRun *run, gboolean holds, GError **error);
gboolean unsoot_run_has_text (const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_is_signed_for (const UnsootRunEvent *event, GError **error);
/* STEP is NULL where the event is no step. */
gboolean unsoot_run_may_be_late (const UnsootRun *run, const UnsootRunEvent *event,
                                 const UnsootStep *step, GError **error);

static inline UnsootEntry
unsoot_run_entry_of (const UnsootRunEvent *event)
{
  return (UnsootEntry){ event->value, event->ml, event->lot_id, event->fluid };
}

/* Events that are no step of the list: each puts RUN forward, or refuses. */
gboolean unsoot_run_take_extra (UnsootRun *run, const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_take_halt (UnsootRun *run, const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_take_resumed (UnsootRun *run, const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_take_asked_again (UnsootRun *run, const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_take_signed (UnsootRun *run, const UnsootRunEvent *event, GError **error);
gboolean unsoot_run_take_released (UnsootRun *run, const UnsootRunEvent *event, GError **error);
