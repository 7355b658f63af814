/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-task.h"

#include <glib/gi18n-lib.h>

#include "procedure-text.h"
#include "run-recovery.h"

static void
say (UnsootBayTask *task, const UnsootFault *fault)
{
  if (fault->rule != UNSOOT_RULE_NONE)
    g_ptr_array_add (task->sentences, unsoot_fault_sentence (fault));
}

static void
take_step (UnsootBayTask *task, const UnsootRun *run, UnsootBayTaskKind kind,
           const UnsootStep *step, int index)
{
  task->kind = kind;
  task->step = index;
  task->what = unsoot_step_copy (step);
  task->ask = unsoot_step_ask (step, unsoot_run_facts (run), unsoot_run_rig (run));
}

static void
take_cautions (UnsootBayTask *task, const UnsootRun *run, int phase)
{
  task->kind = UNSOOT_TASK_CAUTIONS;
  task->step = phase;
  task->cautions = unsoot_procedure_phase (unsoot_run_procedure (run), phase)->cautions;
  task->may_do = TRUE;
}

/* The last step that was done; -1 before the first. */
static int
last_done (const UnsootRun *run)
{
  int step = MIN (unsoot_run_current (run), (int) unsoot_run_procedure (run)->steps->len) - 1;

  while (step >= 0 && !unsoot_run_step_done (run, step))
    step--;
  return step;
}

/* FALSE where nothing is to be made good. @refused: why the step that is due waits for it. */
static gboolean
take_way_back (UnsootBayTask *task, const UnsootRun *run, const UnsootFault *refused)
{
  g_autoptr (UnsootRecovery) recovery = unsoot_run_recovery (run);

  if (recovery->acts->len == 0 && recovery->until == recovery->first)
    return FALSE;
  if (recovery->acts->len > 0)
    {
      take_step (task, run, UNSOOT_TASK_ACT, g_ptr_array_index (recovery->acts, 0), -1);
      task->acts_left = recovery->acts->len;
    }
  else
    take_step (task, run, UNSOOT_TASK_ALREADY,
               unsoot_procedure_step (unsoot_run_procedure (run), recovery->first),
               recovery->first);
  if (task->what->subject == UNSOOT_SUBJECT_TANK)
    say (task, refused);
  if (g_strcmp0 (recovery->fault.reason, refused->reason) != 0)
    say (task, &recovery->fault);
  task->may_do = TRUE;
  task->may_be_late = task->kind == UNSOOT_TASK_ACT && !unsoot_run_is_interlock (task->what);
  return TRUE;
}

static void
take_current (UnsootBayTask *task, const UnsootRun *run, const UnsootRunOffer *offer)
{
  const UnsootStep *step = unsoot_procedure_step (unsoot_run_procedure (run), offer->step);
  const UnsootBayTaskKind kind = offer->already_so ? UNSOOT_TASK_ALREADY
                                 : !offer->timed   ? UNSOOT_TASK_STEP
                                 : offer->running  ? UNSOOT_TASK_TIMER
                                                   : UNSOOT_TASK_START;

  take_step (task, run, kind, step, offer->step);
  task->may_do = offer->may_do || offer->already_so;
  task->may_be_late = offer->may_be_late;
  task->may_pass_over = offer->may_pass_over;
  if (!task->may_do)
    say (task, &offer->fault);
}

static void
take_running (UnsootBayTask *task, const UnsootRun *run, gboolean cut_off)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  const int last = last_done (run);

  unsoot_run_offer (run, &offer);
  if (offer.ask_again || (cut_off && last >= 0))
    {
      const int asked = offer.ask_again ? offer.ask_step : last;
      take_step (task, run, UNSOOT_TASK_AGAIN,
                 unsoot_procedure_step (unsoot_run_procedure (run), asked), asked);
      task->may_do = TRUE;
    }
  else if (offer.caution)
    take_cautions (task, run,
                   unsoot_procedure_step (unsoot_run_procedure (run), offer.step)->phase);
  else if (!take_way_back (task, run, &offer.fault))
    take_current (task, run, &offer);
}

static void
take_complete (UnsootBayTask *task, const UnsootRun *run)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();
  g_auto (UnsootRunOffer) offer = { 0 };

  unsoot_run_offer (run, &offer);
  if (offer.ask_again)
    {
      take_step (task, run, UNSOOT_TASK_AGAIN,
                 unsoot_procedure_step (unsoot_run_procedure (run), offer.ask_step),
                 offer.ask_step);
      task->may_do = TRUE;
      return;
    }
  task->kind = UNSOOT_TASK_SIGN;
  task->may_do = unsoot_run_finish_faults (run, faults);
  for (guint i = 0; i < faults->len; i++)
    say (task, &g_array_index (faults, UnsootFault, i));
}

static char *
key_of (const UnsootBayTask *task)
{
  g_autofree char *line = task->what != NULL ? unsoot_step_print (task->what) : g_strdup ("");

  return g_strdup_printf ("%d:%d:%d:%s", task->kind, task->step, task->may_do, line);
}

UnsootBayTask *
unsoot_bay_task_new (const UnsootRun *run, gboolean cut_off)
{
  UnsootBayTask *task = g_new0 (UnsootBayTask, 1);

  task->step = -1;
  task->sentences = g_ptr_array_new_with_free_func (g_free);
  switch (unsoot_run_state (run))
    {
    case UNSOOT_RUN_STATE_RUNNING:
      take_running (task, run, cut_off);
      break;
    case UNSOOT_RUN_STATE_HALTED:
      task->kind = UNSOOT_TASK_HALTED;
      task->may_do = TRUE;
      break;
    case UNSOOT_RUN_STATE_COMPLETE:
      take_complete (task, run);
      break;
    case UNSOOT_RUN_STATE_READY:
    case UNSOOT_RUN_STATE_SIGNED:
    case UNSOOT_RUN_STATE_RELEASED:
      task->kind = UNSOOT_TASK_OVER;
      break;
    }
  task->key = key_of (task);
  return task;
}

void
unsoot_bay_task_free (UnsootBayTask *task)
{
  if (task == NULL)
    return;
  g_clear_pointer (&task->what, unsoot_step_free);
  g_ptr_array_unref (task->sentences);
  g_free (task->key);
  g_free (task);
}

UnsootRunEvent *
unsoot_bay_task_event (const UnsootBayTask *task, gint64 now)
{
  static const int kinds[] = {
    [UNSOOT_TASK_CAUTIONS] = UNSOOT_RUN_CAUTION,
    [UNSOOT_TASK_AGAIN] = UNSOOT_RUN_ASKED_AGAIN,
    [UNSOOT_TASK_ACT] = UNSOOT_RUN_EXTRA,
    [UNSOOT_TASK_ALREADY] = UNSOOT_RUN_PASS_OVER,
    [UNSOOT_TASK_STEP] = UNSOOT_RUN_CONFIRM,
    [UNSOOT_TASK_START] = UNSOOT_RUN_STARTED,
    [UNSOOT_TASK_TIMER] = UNSOOT_RUN_ENDED,
    [UNSOOT_TASK_HALTED] = -1,
    [UNSOOT_TASK_SIGN] = -1,
    [UNSOOT_TASK_OVER] = -1,
  };
  UnsootRunEvent *event;

  if (kinds[task->kind] < 0)
    return NULL;
  event = unsoot_run_event_new ((UnsootRunEventKind) kinds[task->kind], now);
  event->step = task->step;
  if (task->kind == UNSOOT_TASK_ACT)
    event->text = unsoot_step_print (task->what);
  else if (task->kind == UNSOOT_TASK_ALREADY)
    event->text = g_strdup (_ ("It is so already."));
  return event;
}

int
unsoot_bay_phase (const UnsootRun *run, guint *steps, guint *done)
{
  const UnsootProcedure *procedure = unsoot_run_procedure (run);
  const int last = (int) procedure->steps->len - 1;
  const int current = MIN (unsoot_run_current (run), last);
  const int phase = current >= 0 ? unsoot_procedure_step (procedure, current)->phase : -1;

  *steps = *done = 0;
  for (int i = 0; i <= last; i++)
    if (unsoot_procedure_step (procedure, i)->phase == phase)
      {
        (*steps)++;
        if (unsoot_run_step_done (run, i) || unsoot_run_step_passed_over (run, i))
          (*done)++;
      }
  return phase;
}
