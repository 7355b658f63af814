/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One event after another: the only way a run goes forward. */
#include <glib/gi18n-lib.h>

#include "procedure-text.h"
#include "run-private.h"

#define SECONDS_A_MINUTE 60

G_DEFINE_QUARK (unsoot_run_error, unsoot_run_error)

static gboolean fail (GError **error, UnsootRunErrorCode code, const char *format, ...)
    G_GNUC_PRINTF (3, 4);

static gboolean
fail (GError **error, UnsootRunErrorCode code, const char *format, ...)
{
  va_list values;
  g_autofree char *message = NULL;

  va_start (values, format);
  message = g_strdup_vprintf (format, values);
  va_end (values);
  g_set_error_literal (error, UNSOOT_RUN_ERROR, (gint) code, message);
  return FALSE;
}

static gboolean
fail_by_rule (GError **error, UnsootFault *fault)
{
  g_autofree char *sentence = unsoot_fault_sentence (fault);

  unsoot_fault_clear (fault);
  return fail (error, UNSOOT_RUN_ERROR_REFUSED, "%s", sentence);
}

static const UnsootStep *
current_step (const UnsootRun *run)
{
  return unsoot_procedure_step (run->procedure, run->cursor);
}

static UnsootEntry
entry_of (const UnsootRunEvent *event)
{
  return (UnsootEntry){ event->value, event->ml, event->lot_id, event->fluid };
}

static gboolean
needs_state (const UnsootRun *run, gboolean holds, GError **error)
{
  if (holds)
    return TRUE;
  return fail (error, UNSOOT_RUN_ERROR_STATE, _ ("That can't be done now: the run is “%s”."),
               unsoot_run_state_label (run->state));
}

static gboolean
has_text (const UnsootRunEvent *event, GError **error)
{
  if (event->text != NULL && *event->text != '\0')
    return TRUE;
  return fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("Say why, in a few words."));
}

static gboolean
is_signed_for (const UnsootRunEvent *event, GError **error)
{
  if (event->staff_id > 0)
    return TRUE;
  return fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("A signature is needed: who are you?"));
}

/* Running, at EVENT's step, with nothing that has to come before it. */
static gboolean
is_its_turn (const UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const UnsootStep *step;

  if (!needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error))
    return FALSE;
  if (event->step != run->cursor)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Step %d comes first."), run->cursor + 1);
  if (run->ask_step >= 0)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Confirm step %d again first."),
                 run->ask_step + 1);
  step = current_step (run);
  if (step->phase >= 0 && !g_array_index (run->cautioned, gboolean, step->phase))
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Confirm the cautions of this part first."));
  return TRUE;
}

static gboolean
fail_too_early (GError **error, gint64 seconds)
{
  const gint64 minutes = MAX (seconds, 0) / SECONDS_A_MINUTE;

  if (minutes == 0)
    return fail (error, UNSOOT_RUN_ERROR_LATE,
                 _ ("It can't be stamped earlier than the step before it, which was done just "
                    "now."));
  return fail (error, UNSOOT_RUN_ERROR_LATE,
               ngettext ("It can't be stamped earlier than the step before it, which was done "
                         "%d minute ago.",
                         "It can't be stamped earlier than the step before it, which was done "
                         "%d minutes ago.",
                         (gulong) minutes),
               (int) minutes);
}

/* STEP is NULL where the event is no step. */
static gboolean
may_be_late (const UnsootRun *run, const UnsootRunEvent *event, const UnsootStep *step,
             GError **error)
{
  if (event->done_at == event->at)
    return TRUE;
  if (event->done_at > event->at)
    return fail (error, UNSOOT_RUN_ERROR_LATE, _ ("It can't be done later than it is recorded."));
  if (step != NULL && unsoot_run_is_interlock (step))
    return fail (error, UNSOOT_RUN_ERROR_LATE,
                 _ ("This step depends on the moment and can't be stamped late."));
  if (event->done_at < run->last_done_at)
    return fail_too_early (error, event->at - run->last_done_at);
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
  if (!needs_state (run, run->state == UNSOOT_RUN_STATE_READY, error))
    return FALSE;
  run->state
      = run->procedure->steps->len > 0 ? UNSOOT_RUN_STATE_RUNNING : UNSOOT_RUN_STATE_COMPLETE;
  return TRUE;
}

static gboolean
take_caution (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error))
    return FALSE;
  if (event->step < 0 || event->step != current_step (run)->phase)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("These are not the cautions that are due."));
  g_array_index (run->cautioned, gboolean, event->step) = TRUE;
  return TRUE;
}

static gboolean
is_entered (const UnsootStep *step, const UnsootRunEvent *event, GError **error)
{
  if (step->act == UNSOOT_ACT_MEASURE && step->subject == UNSOOT_SUBJECT_TANK && event->ml < 0)
    return fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("Enter how much is left in the tank."));
  return TRUE;
}

static gboolean
take_confirm (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = entry_of (event);
  const UnsootStep *step;

  if (!is_its_turn (run, event, error))
    return FALSE;
  step = current_step (run);
  if (unsoot_run_is_timed (step))
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("This step is started, and ended."));
  if (!may_be_late (run, event, step, error) || !is_entered (step, event, error))
    return FALSE;
  if (!unsoot_rig_apply (run->rig, run->facts, step, &entry, &fault))
    return fail_by_rule (error, &fault);
  advance (run, UNSOOT_STEP_DONE);
  return TRUE;
}

static gboolean
take_started (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;

  if (!is_its_turn (run, event, error) || !may_be_late (run, event, current_step (run), error))
    return FALSE;
  if (!unsoot_run_is_timed (current_step (run)) || run->timer.started)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("There is no timer to start now."));
  if (!unsoot_rig_allows (run->rig, run->facts, current_step (run), NULL, &fault))
    return fail_by_rule (error, &fault);
  unsoot_run_timer_begin (run, current_step (run), event->done_at);
  g_clear_pointer (&run->wanted, unsoot_rig_free);
  return TRUE;
}

static gboolean
needs_timer (const UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (run->timer.started)
    return TRUE;
  return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("No timer was started."));
}

static gboolean
take_progress (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!needs_state (run, run->state == UNSOOT_RUN_STATE_RUNNING, error)
      || !needs_timer (run, event, error))
    return FALSE;
  if (event->ml < run->timer.progress_ml)
    return fail (error, UNSOOT_RUN_ERROR_ENTRY,
                 _ ("That is less than the %" G_GINT64_FORMAT " mL told before."),
                 run->timer.progress_ml);
  run->timer.progress_ml = event->ml;
  return TRUE;
}

static gboolean
take_ended (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = entry_of (event);

  if (!is_its_turn (run, event, error) || !needs_timer (run, event, error)
      || !may_be_late (run, event, current_step (run), error))
    return FALSE;
  if (!unsoot_rig_apply (run->rig, run->facts, current_step (run), &entry, &fault))
    return fail_by_rule (error, &fault);
  advance (run, UNSOOT_STEP_DONE);
  return TRUE;
}

static gboolean
take_pass_over (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (!is_its_turn (run, event, error) || !has_text (event, error)
      || !may_be_late (run, event, NULL, error))
    return FALSE;
  pass_over (run);
  return TRUE;
}

/* What makes things safer may be done in a halt; nothing else. */
static gboolean
makes_safe (const UnsootStep *step)
{
  switch (step->act)
    {
    case UNSOOT_ACT_SET:
      return step->value <= 0 || g_strcmp0 (step->name, UNSOOT_SPEED_IDLE) == 0;
    case UNSOOT_ACT_BLEED:
    case UNSOOT_ACT_DRAIN:
    case UNSOOT_ACT_FLUSH:
    case UNSOOT_ACT_HOLD:
    case UNSOOT_ACT_DISABLE:
    case UNSOOT_ACT_STOP:
    case UNSOOT_ACT_CLOSE:
    case UNSOOT_ACT_LOOK:
    case UNSOOT_ACT_MEASURE:
      return TRUE;
    case UNSOOT_ACT_TAKE_OFF:
    case UNSOOT_ACT_REFIT:
    case UNSOOT_ACT_REPLACE:
    case UNSOOT_ACT_FIT:
    case UNSOOT_ACT_REMOVE:
    case UNSOOT_ACT_JOIN:
    case UNSOOT_ACT_PART:
    case UNSOOT_ACT_PRIME:
    case UNSOOT_ACT_FILL:
    case UNSOOT_ACT_DISCONNECT:
    case UNSOOT_ACT_RECONNECT:
    case UNSOOT_ACT_ENABLE:
    case UNSOOT_ACT_START:
    case UNSOOT_ACT_OPEN:
    case UNSOOT_ACT_RUN:
    case UNSOOT_ACT_SOAK:
    case UNSOOT_ACT_CLEAR:
    case UNSOOT_ACT_DRIVE:
      return FALSE;
    }
  g_assert_not_reached ();
}

static gboolean
is_open (const UnsootRun *run)
{
  return run->state == UNSOOT_RUN_STATE_RUNNING || run->state == UNSOOT_RUN_STATE_HALTED
         || run->state == UNSOOT_RUN_STATE_COMPLETE;
}

static gboolean
take_extra (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = entry_of (event);
  g_autoptr (UnsootStep) step = NULL;
  g_autoptr (GError) unread = NULL;

  if (!needs_state (run, is_open (run), error) || !has_text (event, error))
    return FALSE;
  step = unsoot_step_parse (event->text, &unread);
  if (step == NULL)
    return fail (error, UNSOOT_RUN_ERROR_ENTRY, "%s", unread->message);
  if (!may_be_late (run, event, step, error))
    return FALSE;
  if (run->state == UNSOOT_RUN_STATE_HALTED && !makes_safe (step))
    return fail (error, UNSOOT_RUN_ERROR_STATE,
                 _ ("The run is halted: only what makes it safer can be done. Resume it first."));
  if (!unsoot_rig_apply (run->rig, run->facts, step, &entry, &fault))
    return fail_by_rule (error, &fault);
  return TRUE;
}

static gboolean
is_stop (UnsootHappening happening)
{
  return happening == UNSOOT_HAPPENING_STOP || happening == UNSOOT_HAPPENING_STALL
         || happening == UNSOOT_HAPPENING_RUNAWAY || happening == UNSOOT_HAPPENING_LEAK_OR_FIRE;
}

/* A stop is recorded after it was made: what was stored meanwhile, an alarm that was heard, must
 * not refuse it. */
static gboolean
take_halt (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gboolean chosen = event->kind == UNSOOT_RUN_HALT;
  gboolean fits = chosen ? is_stop (event->happening)
                         : event->happening != UNSOOT_HAPPENING_NONE
                               && event->happening != UNSOOT_HAPPENING_STOP;

  if (!needs_state (run, is_open (run), error))
    return FALSE;
  if (event->done_at > event->at)
    return fail (error, UNSOOT_RUN_ERROR_LATE, _ ("It can't be done later than it is recorded."));
  if (!fits)
    return fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("Say what happened."));
  if (run->wanted == NULL)
    run->wanted = unsoot_rig_copy (run->rig);
  unsoot_rig_suffer (run->rig, run->facts, event->happening);
  run->state = UNSOOT_RUN_STATE_HALTED;
  return TRUE;
}

/* While the vehicle was away the machine may have served another one. */
static void
doubt_tanks (UnsootRig *rig)
{
  gboolean stayed[UNSOOT_SIDES] = { FALSE };

  stayed[UNSOOT_SIDE_FUEL] = rig->joined[UNSOOT_LINE_MACHINE_SUPPLY];
  stayed[UNSOOT_SIDE_INTAKE] = unsoot_rig_change (rig, UNSOOT_SUBJECT_ADAPTER, NULL) != NULL;
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    if (!stayed[side])
      {
        gint64 capacity = rig->tank[side].capacity_ml;
        rig->tank[side]
            = (UnsootTank){ .contents = UNSOOT_CONTENTS_UNKNOWN, .capacity_ml = capacity };
      }
}

static gboolean
take_resumed (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gboolean released = run->state == UNSOOT_RUN_STATE_RELEASED;

  if (!needs_state (run, released || run->state == UNSOOT_RUN_STATE_HALTED, error))
    return FALSE;
  if (released)
    doubt_tanks (run->rig);
  run->ask_step = run->last_step;
  run->state = run->cursor < (int) run->procedure->steps->len ? UNSOOT_RUN_STATE_RUNNING
                                                              : UNSOOT_RUN_STATE_COMPLETE;
  return TRUE;
}

/* After a halt it has to be; where only the screen was gone, it may be. */
static gboolean
take_asked_again (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const int asked = run->ask_step >= 0 ? run->ask_step : run->last_step;

  if (!is_open (run) || asked < 0 || event->step != asked)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("That step is not asked about again."));
  run->ask_step = -1;
  return TRUE;
}

static gboolean
take_alarm_heard (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gint64 late;

  if (!unsoot_run_alarm (run, event->at, &late))
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("No alarm rings."));
  run->timer.heard = TRUE;
  return TRUE;
}

static gboolean
take_signed (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();

  if (!needs_state (run, run->state == UNSOOT_RUN_STATE_COMPLETE, error)
      || !is_signed_for (event, error))
    return FALSE;
  if (run->ask_step >= 0)
    return fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Confirm step %d again first."),
                 run->ask_step + 1);
  if (!unsoot_run_finish_faults (run, faults))
    return fail_by_rule (error, &g_array_index (faults, UnsootFault, 0));
  run->state = UNSOOT_RUN_STATE_SIGNED;
  return TRUE;
}

static gboolean
take_released (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const UnsootRig *rig = run->rig;

  if (!needs_state (run, is_open (run), error) || !has_text (event, error)
      || !is_signed_for (event, error))
    return FALSE;
  if (rig->atomiser || unsoot_rig_engine_runs (rig) || rig->pump || rig->air_pa > 0)
    return fail (error, UNSOOT_RUN_ERROR_REFUSED,
                 _ ("It can't be left like this: atomiser, air, engine and pump go off first."));
  if (run->wanted == NULL)
    run->wanted = unsoot_rig_copy (rig);
  run->state = UNSOOT_RUN_STATE_RELEASED;
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
      return take_extra (run, event, error);
    case UNSOOT_RUN_HAPPENED:
    case UNSOOT_RUN_HALT:
      return take_halt (run, event, error);
    case UNSOOT_RUN_RESUMED:
      return take_resumed (run, event, error);
    case UNSOOT_RUN_ASKED_AGAIN:
      return take_asked_again (run, event, error);
    case UNSOOT_RUN_ALARM_HEARD:
      return take_alarm_heard (run, event, error);
    case UNSOOT_RUN_SIGNED:
      return take_signed (run, event, error);
    case UNSOOT_RUN_RELEASED:
      return take_released (run, event, error);
    }
  return fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("The event is of no kind that is known."));
}

gboolean
unsoot_run_apply (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  if (event->seq != run->next_seq)
    return fail (error, UNSOOT_RUN_ERROR_ORDER,
                 _ ("Event %" G_GINT64_FORMAT " is missing before event %" G_GINT64_FORMAT "."),
                 run->next_seq, event->seq);
  if (!take (run, event, error))
    return FALSE;
  run->next_seq++;
  run->last_done_at = MAX (run->last_done_at, event->done_at);
  unsoot_run_timer_follow (run, event->done_at);
  return TRUE;
}
