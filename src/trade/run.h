/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rig.h"

/* A live run: a procedure, the rig, and the events that were recorded. Applying
 * the stored events in order to a new run gives the same run again. */

typedef enum
{
  UNSOOT_RUN_BEGAN,
  UNSOOT_RUN_CAUTION,     /* step: index of the phase whose cautions were confirmed */
  UNSOOT_RUN_CONFIRM,     /* step done, with what was entered */
  UNSOOT_RUN_STARTED,     /* a run or soak step's timer starts */
  UNSOOT_RUN_PROGRESS,    /* ml: used so far by this step */
  UNSOOT_RUN_ENDED,       /* a run or soak step is done; ml: used by it */
  UNSOOT_RUN_PASS_OVER,   /* step doesn't apply; text: why */
  UNSOOT_RUN_EXTRA,       /* an act off the list; text: its step line */
  UNSOOT_RUN_HAPPENED,    /* happening: against everyone's will */
  UNSOOT_RUN_HALT,        /* happening: which STOP was chosen */
  UNSOOT_RUN_RESUMED,     /* going on after a halt */
  UNSOOT_RUN_ASKED_AGAIN, /* the last step before a halt or a cut was confirmed again */
  UNSOOT_RUN_ALARM_HEARD,
  UNSOOT_RUN_SIGNED,   /* complete and signed */
  UNSOOT_RUN_RELEASED, /* left, or stays overnight, incomplete; text: why */
} UnsootRunEventKind;

#define UNSOOT_RUN_EVENT_KINDS (UNSOOT_RUN_RELEASED + 1)

const char *unsoot_run_event_to_slug (UnsootRunEventKind kind);
/* "Timer started": for people, translated. */
const char *unsoot_run_event_label (UnsootRunEventKind kind);
gboolean unsoot_run_event_from_slug (const char *slug, UnsootRunEventKind *kind);

typedef struct
{
  gint64 seq;     /* 1, 2, 3 … without a gap */
  gint64 at;      /* when it was recorded */
  gint64 done_at; /* when it was done; = at unless stamped late */
  UnsootRunEventKind kind;
  int step;                  /* index; -1 where it doesn't apply */
  UnsootHappening happening; /* happened, halt */
  double value;              /* entered; NAN: none */
  gint64 ml;                 /* entered; -1: none */
  gint64 lot_id;             /* 0: none */
  UnsootSide fluid;          /* the side the lot's fluid is meant for */
  char *text;                /* reason, note; extra: the step line (unsoot_step_print()) */
  gint64 staff_id;
} UnsootRunEvent;

/* An event of KIND at AT, done then, everything else unset. */
UnsootRunEvent *unsoot_run_event_new (UnsootRunEventKind kind, gint64 at);
UnsootRunEvent *unsoot_run_event_copy (const UnsootRunEvent *event);
void unsoot_run_event_free (UnsootRunEvent *event);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootRunEvent, unsoot_run_event_free)

/* Whether it brings a run to a halt: STOP, or what happens against everyone's will. */
gboolean unsoot_run_event_stops (const UnsootRunEvent *event);

typedef enum
{
  UNSOOT_RUN_STATE_READY,
  UNSOOT_RUN_STATE_RUNNING,
  UNSOOT_RUN_STATE_HALTED,
  UNSOOT_RUN_STATE_COMPLETE, /* every step done, not signed */
  UNSOOT_RUN_STATE_SIGNED,
  UNSOOT_RUN_STATE_RELEASED, /* incomplete, signed for; goes on by RESUMED */
} UnsootRunState;

#define UNSOOT_RUN_STATES (UNSOOT_RUN_STATE_RELEASED + 1)

const char *unsoot_run_state_to_slug (UnsootRunState state);
gboolean unsoot_run_state_from_slug (const char *slug, UnsootRunState *state);
const char *unsoot_run_state_label (UnsootRunState state);

/* What is known of the machine when the run begins. Zeroed: unknown tanks, no capacity. */
typedef struct
{
  UnsootTank tank[UNSOOT_SIDES];
} UnsootRunStart;

#define UNSOOT_RUN_ERROR (unsoot_run_error_quark ())
GQuark unsoot_run_error_quark (void);

typedef enum
{
  UNSOOT_RUN_ERROR_REFUSED, /* by a rule of the trade */
  UNSOOT_RUN_ERROR_ORDER,   /* another step, or a confirmation, comes first */
  UNSOOT_RUN_ERROR_STATE,   /* not in this state of the run */
  UNSOOT_RUN_ERROR_LATE,    /* may not be stamped late, or not that late */
  UNSOOT_RUN_ERROR_ENTRY,   /* something that has to be entered is missing or makes no sense */
} UnsootRunErrorCode;

typedef struct _UnsootRun UnsootRun;

/* PROCEDURE and FACTS are copied (doses are in the facts); START may be NULL. */
UnsootRun *unsoot_run_new (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                           const UnsootRunStart *start);
UnsootRun *unsoot_run_copy (const UnsootRun *run);
void unsoot_run_free (UnsootRun *run);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootRun, unsoot_run_free)

/* The only way forward, live and when stored events are read back. FALSE sets
 * ERROR and leaves RUN as it was. EVENT's seq has to be the next one. */
gboolean unsoot_run_apply (UnsootRun *run, const UnsootRunEvent *event, GError **error);

UnsootRunState unsoot_run_state (const UnsootRun *run);
gint64 unsoot_run_next_seq (const UnsootRun *run);
int unsoot_run_current (const UnsootRun *run); /* step index; their count when all are done */
gboolean unsoot_run_step_done (const UnsootRun *run, int step);
gboolean unsoot_run_step_passed_over (const UnsootRun *run, int step);
const UnsootRig *unsoot_run_rig (const UnsootRun *run);
const UnsootProcedure *unsoot_run_procedure (const UnsootRun *run);
const UnsootFamilyFacts *unsoot_run_facts (const UnsootRun *run);

/* What the screen may offer now. */
typedef struct
{
  int step;
  gboolean caution;   /* the phase's cautions come first */
  gboolean ask_again; /* step ASK_STEP is confirmed again first */
  int ask_step;
  gboolean timed;   /* a run or soak: STARTED and ENDED instead of CONFIRM */
  gboolean running; /* its timer runs */
  gboolean may_do;  /* CONFIRM, or STARTED / ENDED */
  gboolean may_be_late;
  gboolean may_pass_over;
  gboolean already_so; /* it stops what is stopped already: pass it over */
  gboolean may_sign;
  UnsootFault fault; /* why not, where may_do is FALSE */
} UnsootRunOffer;

void unsoot_run_offer (const UnsootRun *run, UnsootRunOffer *offer);
void unsoot_run_offer_clear (UnsootRunOffer *offer);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (UnsootRunOffer, unsoot_run_offer_clear)

/* Whether STEP depends on the moment (order, pressure, engine): never stamped late. */
gboolean unsoot_run_is_interlock (const UnsootStep *step);

/* Whether an act off the list, or ENTRY with the current step, would be taken. */
gboolean unsoot_run_allows (const UnsootRun *run, const UnsootStep *step, const UnsootEntry *entry,
                            UnsootFault *fault);

/* The current timer. FALSE where the current step has none or it hasn't been
 * started. Seconds count only while engine and pump both run (fuel side), engine
 * and atomiser (intake side), the engine (idling); a soak counts always.
 * *REMAINING is below zero when it is over. NOW before the last start counts as
 * that start. */
gboolean unsoot_run_remaining (const UnsootRun *run, gint64 now, gint64 *remaining);
gboolean unsoot_run_timer_counts (const UnsootRun *run);
gint64 unsoot_run_progress_ml (const UnsootRun *run); /* of the current run step, as told; 0 */

/* Whether the alarm has to ring at NOW, and how long ago it should have begun. */
gboolean unsoot_run_alarm (const UnsootRun *run, gint64 now, gint64 *late_seconds);

/* The moment the alarm is due if nothing happens; -1: none. */
gint64 unsoot_run_alarm_at (const UnsootRun *run);

/* Each in words, translated, for the screen and the incomplete tag. NULL-terminated,
 * free with g_strfreev(). */
char **unsoot_run_off_engine (const UnsootRun *run); /* off, on, parted, disabled, due */
char **unsoot_run_tanks (const UnsootRun *run);
char *unsoot_run_next_safe_step (const UnsootRun *run);

/* All three as the tag of a vehicle in pieces says them: a heading ends in a colon, an item stands
 * behind a dash, the next safe step behind its colon. */
char *unsoot_run_tag (const UnsootRun *run);

/* As unsoot_rig_finish_faults(), and steps that are not done. */
gboolean unsoot_run_finish_faults (const UnsootRun *run, GArray *faults);

/* The whole state as text: two runs are equal when these are. */
char *unsoot_run_digest (const UnsootRun *run);
