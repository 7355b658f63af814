/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "run.h"
#include "step-ask.h"

/* The one thing that the bay asks for now, worked out of the run alone. */
typedef enum
{
  UNSOOT_TASK_CAUTIONS, /* of a phase: read and kept */
  UNSOOT_TASK_AGAIN,    /* the last step, confirmed once more */
  UNSOOT_TASK_ACT,      /* an act of the way back after a halt */
  UNSOOT_TASK_ALREADY,  /* a step that is so already: passed over */
  UNSOOT_TASK_STEP,
  UNSOOT_TASK_START, /* a timer is to be started */
  UNSOOT_TASK_TIMER, /* it runs */
  UNSOOT_TASK_HALTED,
  UNSOOT_TASK_SIGN,
  UNSOOT_TASK_OVER, /* signed, or released */
} UnsootBayTaskKind;

typedef struct
{
  UnsootBayTaskKind kind;
  int step;         /* of the procedure, or for cautions the phase; -1 where it is neither */
  UnsootStep *what; /* NULL: no step */
  UnsootAsk ask;
  guint cautions;
  guint acts_left; /* of the way back, this one included */
  gboolean may_do;
  gboolean may_be_late;
  gboolean may_pass_over;
  GPtrArray *sentences; /* char *: why it may not be done, or not be signed */
  char *key;            /* the same as long as the same thing is asked */
} UnsootBayTask;

/* @cut_off: the screen was gone since the last step, which is therefore asked for again. */
UnsootBayTask *unsoot_bay_task_new (const UnsootRun *run, gboolean cut_off);
void unsoot_bay_task_free (UnsootBayTask *task);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBayTask, unsoot_bay_task_free)

/* What is stored when it is done; what was entered is the caller's to add. NULL where there
 * is no such event (a halt, a signature). */
UnsootRunEvent *unsoot_bay_task_event (const UnsootBayTask *task, gint64 now);

/* The phase in which the run stands, counted from 0, -1 without one; its steps, and how many
 * of them are done or passed over. */
int unsoot_bay_phase (const UnsootRun *run, guint *steps, guint *done);
