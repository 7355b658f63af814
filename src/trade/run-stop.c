/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What stops a run, what is done while it stands still, how it goes on and how it ends. */
#include <glib/gi18n-lib.h>

#include "procedure-text.h"
#include "run-private.h"

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

gboolean
unsoot_run_take_extra (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  UnsootFault fault = UNSOOT_FAULT_INIT;
  const UnsootEntry entry = unsoot_run_entry_of (event);
  g_autoptr (UnsootStep) step = NULL;
  g_autoptr (GError) unread = NULL;

  if (!unsoot_run_needs_state (run, is_open (run), error) || !unsoot_run_has_text (event, error))
    return FALSE;
  step = unsoot_step_parse (event->text, &unread);
  if (step == NULL)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY, "%s", unread->message);
  if (!unsoot_run_may_be_late (run, event, step, error))
    return FALSE;
  if (run->state == UNSOOT_RUN_STATE_HALTED && !makes_safe (step))
    return unsoot_run_fail (
        error, UNSOOT_RUN_ERROR_STATE,
        _ ("The run is halted: only what makes it safer can be done. Resume it first."));
  if (!unsoot_rig_apply (run->rig, run->facts, step, &entry, &fault))
    return unsoot_run_fail_by_rule (error, &fault);
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
gboolean
unsoot_run_take_halt (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gboolean chosen = event->kind == UNSOOT_RUN_HALT;
  gboolean fits = chosen ? is_stop (event->happening)
                         : event->happening != UNSOOT_HAPPENING_NONE
                               && event->happening != UNSOOT_HAPPENING_STOP;

  if (!unsoot_run_needs_state (run, is_open (run), error))
    return FALSE;
  if (event->done_at > event->at)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_LATE,
                            _ ("It can't be done later than it is recorded."));
  if (!fits)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("Say what happened."));
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

gboolean
unsoot_run_take_resumed (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  gboolean released = run->state == UNSOOT_RUN_STATE_RELEASED;

  if (!unsoot_run_needs_state (run, released || run->state == UNSOOT_RUN_STATE_HALTED, error))
    return FALSE;
  if (released)
    doubt_tanks (run->rig);
  run->ask_step = run->last_step;
  run->state = run->cursor < (int) run->procedure->steps->len ? UNSOOT_RUN_STATE_RUNNING
                                                              : UNSOOT_RUN_STATE_COMPLETE;
  return TRUE;
}

/* After a halt it has to be; where only the screen was gone, it may be. */
gboolean
unsoot_run_take_asked_again (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const int asked = run->ask_step >= 0 ? run->ask_step : run->last_step;

  if (!is_open (run) || asked < 0 || event->step != asked)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER,
                            _ ("That step is not asked about again."));
  run->ask_step = -1;
  return TRUE;
}

gboolean
unsoot_run_take_signed (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();

  if (!unsoot_run_needs_state (run, run->state == UNSOOT_RUN_STATE_COMPLETE, error)
      || !unsoot_run_is_signed_for (event, error))
    return FALSE;
  if (run->ask_step >= 0)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ORDER, _ ("Confirm step %d again first."),
                            run->ask_step + 1);
  if (!unsoot_run_finish_faults (run, faults))
    return unsoot_run_fail_by_rule (error, &g_array_index (faults, UnsootFault, 0));
  run->state = UNSOOT_RUN_STATE_SIGNED;
  return TRUE;
}

gboolean
unsoot_run_take_released (UnsootRun *run, const UnsootRunEvent *event, GError **error)
{
  const UnsootRig *rig = run->rig;

  if (!unsoot_run_needs_state (run, is_open (run), error) || !unsoot_run_has_text (event, error)
      || !unsoot_run_is_signed_for (event, error))
    return FALSE;
  if (rig->atomiser || unsoot_rig_engine_runs (rig) || rig->pump || rig->air_pa > 0)
    return unsoot_run_fail (
        error, UNSOOT_RUN_ERROR_REFUSED,
        _ ("It can't be left like this: atomiser, air, engine and pump go off first."));
  if (run->wanted == NULL)
    run->wanted = unsoot_rig_copy (rig);
  run->state = UNSOOT_RUN_STATE_RELEASED;
  return TRUE;
}
