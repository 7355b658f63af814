/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One event after another: the only way a run goes forward. */
#include <glib/gi18n-lib.h>

#include "run-private.h"

static const UnsootStep *
current_step (const UnsootRun *run)
{
  return unsoot_procedure_step (run->procedure, run->cursor);
}

/* Running, at EVENT's step, with nothing that has to come before it. */
static gboolean
is_its_turn (const UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const UnsootStep *step;

  if (!unsoot_run_needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error))
    return FALSE;
  if (event->step != run->cursor)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Step %d comes first."),
                            run->cursor + 1);
  if (run->ask_step >= 0)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Confirm step %d again first."),
                            run->ask_step + 1);
  step = current_step (run);
  if (step->phase >= 0 && !g_array_index (run->cautioned, gboolean, step->phase))
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER,
                            _ ("Confirm the cautions of this part first."));
  return TRUE;
}

static void
advance (UnsootRun *run, UnsootStepMark mark)
{
  g_array_index (run->marks, UnsootStepMark, run->cursor) = mark;
  if (mark == UNSOOT_STEP_DONE)
    run->last_step = run->cursor;
  run->timer = (UnsootRunTimer){ .started = FALSE };
  run->cursor++;
  if (run->cursor == (int) run->procedure->steps->len)
    run->state = UNSOOT_RUN_STATE_COMPLETE;
  if (mark == UNSOOT_STEP_DONE)
    g_clear_pointer (&run->wanted, unsoot_rig_free);
}

/* What was to be had again is then what it would be after the step that is passed over. */
static void
pass_over (UnsootRun *run)
{
  if (run->wanted != NULL)
    unsoot_rig_apply (run->wanted, run->facts, current_step (run), NULL, NULL);
  advance (run, UNSOOT_STEP_PASSED_OVER);
}

static gboolean
take_began (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!unsoot_run_needs_state (run, run->state == UNSOOT_RUN_STATE_READY, error))
    return FALSE;
  run->state
      = run->procedure->steps->len > 0 ? UNSOOT_RUN_STATE_RUNNING : UNSOOT_RUN_STATE_COMPLETE;
  return TRUE;
}

static gboolean
take_caution (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!unsoot_run_needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error))
    return FALSE;
  if (event->step < 0 || event->step != current_step (run)->phase)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER,
                            _ ("These are not the cautions that are due."));
  g_array_index (run->cautioned, gboolean, event->step) = TRUE;
  return TRUE;
}

static gboolean
is_entered (const UnsootStep *step, const UnsootRunEvent *event, GError **error)
{
  if (step->act == UNSOOT_ACT_MEASURE && step->subject == UNSOOT_SUBJECT_TANK && event->ml < 0)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY,
                            _ ("Enter how much is left in the tank."));
  return TRUE;
}

static gboolean
take_confirm (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = unsoot_run_entry_of (event);
  const UnsootStep *step;

  if (!is_its_turn (run, event, error))
    return FALSE;
  step = current_step (run);
  if (unsoot_run_is_timed (step))
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("This step is started, and ended."));
  if (!unsoot_run_may_be_late (run, event, step, error) || !is_entered (step, event, error))
    return FALSE;
  if (!unsoot_rig_apply (run->rig, run->facts, step, &entry, &fault))
    return unsoot_run_fail_by_rule (error, &fault);
  advance (run, UNSOOT_STEP_DONE);
  return TRUE;
}

static gboolean
take_started (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;

  if (!is_its_turn (run, event, error)
      || !unsoot_run_may_be_late (run, event, current_step (run), error))
    return FALSE;
  if (!unsoot_run_is_timed (current_step (run)) || run->timer.started)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("There is no timer to start now."));
  if (!unsoot_rig_allows (run->rig, run->facts, current_step (run), NULL, &fault))
    return unsoot_run_fail_by_rule (error, &fault);
  unsoot_run_timer_begin (run, current_step (run), event->done_at);
  g_clear_pointer (&run->wanted, unsoot_rig_free);
  return TRUE;
}

static gboolean
needs_timer (const UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (run->timer.started)
    return TRUE;
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("No timer was started."));
}

static gboolean
take_progress (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!unsoot_run_needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error)
      || !needs_timer (run, event, error))
    return FALSE;
  if (event->ml < run->timer.progress_ml)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY,
                            _ ("That is less than the %" G_GINT64_FORMAT " mL told before."),
                            run->timer.progress_ml);
  run->timer.progress_ml = event->ml;
  return TRUE;
}

static gboolean
take_ended (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = unsoot_run_entry_of (event);

  if (!is_its_turn (run, event, error) || !needs_timer (run, event, error)
      || !unsoot_run_may_be_late (run, event, current_step (run), error))
    return FALSE;
  if (!unsoot_rig_apply (run->rig, run->facts, current_step (run), &entry, &fault))
    return unsoot_run_fail_by_rule (error, &fault);
  advance (run, UNSOOT_STEP_DONE);
  return TRUE;
}

static gboolean
take_pass_over (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!is_its_turn (run, event, error) || !unsoot_run_has_text (event, error)
      || !unsoot_run_may_be_late (run, event, NULL, error))
    return FALSE;
  pass_over (run);
  return TRUE;
}

static gboolean
take_alarm_heard (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gint64 late;

  if (!unsoot_run_alarm (run, event->at, &late))
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("No alarm rings."));
  run->timer.heard = TRUE;
  return TRUE;
}

static gboolean
take (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  switch (event->kind)
    {
    case UNSOOT_RUN_BEGAN:
      return take_began (run, event, error);
    case UNSOOT_RUN_CAUTION:
      return take_caution (run, event, error);
    case UNSOOT_RUN_CONFIRM:
      return take_confirm (run, event, error);
    case UNSOOT_RUN_STARTED:
      return take_started (run, event, error);
    case UNSOOT_RUN_PROGRESS:
      return take_progress (run, event, error);
    case UNSOOT_RUN_ENDED:
      return take_ended (run, event, error);
    case UNSOOT_RUN_PASS_OVER:
      return take_pass_over (run, event, error);
    case UNSOOT_RUN_EXTRA:
      return unsoot_run_take_extra (run, event, error);
    case UNSOOT_RUN_HAPPENED:
    case UNSOOT_RUN_HALT:
      return unsoot_run_take_halt (run, event, error);
    case UNSOOT_RUN_RESUMED:
      return unsoot_run_take_resumed (run, event, error);
    case UNSOOT_RUN_ASKED_AGAIN:
      return unsoot_run_take_asked_again (run, event, error);
    case UNSOOT_RUN_ALARM_HEARD:
      return take_alarm_heard (run, event, error);
    case UNSOOT_RUN_SIGNED:
      return unsoot_run_take_signed (run, event, error);
    case UNSOOT_RUN_RELEASED:
      return unsoot_run_take_released (run, event, error);
    }
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY,
                          _ ("The event is of no kind that is known."));
}

gboolean
unsoot_run_apply (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (event->seq != run->next_seq)
    return unsoot_run_fail (
        error, UNSOOT_RUN_ERROR_ORDER,
        _ ("Event %" G_GINT64_FORMAT " is missing before event %" G_GINT64_FORMAT "."),
        run->next_seq, event->seq);
  if (!take (run, event, error))
    return FALSE;
  run->next_seq++;
  run->last_done_at = MAX (run->last_done_at, event->done_at);
  unsoot_run_timer_follow (run, event->done_at);
  return TRUE;
}
