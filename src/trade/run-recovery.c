/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The way back after a halt: from the rig as it is to the rig as it was. */
#include "run-recovery.h"

#include "run-private.h"

#define IDLE_MINUTES 2

/* A plan is worked out on a copy, so that each act is checked where it stands. */
typedef struct
{
  UnsootRig *rig;
  const UnsootRig *target;
  const UnsootFamilyFacts *facts;
  GPtrArray *acts;
  UnsootFault fault;
} Plan;

static void
plan_clear (Plan *plan)
{
  g_clear_pointer (&plan->rig, unsoot_rig_free);
  g_clear_pointer (&plan->acts, g_ptr_array_unref);
  unsoot_fault_clear (&plan->fault);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Plan, plan_clear)

/* Takes STEP. After the first refusal nothing is added any more. */
static void
emit_step (Plan *plan, UnsootStep *step)
{
  if (plan->fault.rule == UNSOOT_RULE_NONE
      && unsoot_rig_apply (plan->rig, plan->facts, step, NULL, &plan->fault))
    g_ptr_array_add (plan->acts, step);
  else
    unsoot_step_free (step);
}

static void
emit (Plan *plan, gboolean needed, UnsootAct act, UnsootSubject subject, const char *name)
{
  if (needed)
    emit_step (plan, unsoot_step_new (act, subject, name));
}

static void
emit_side (Plan *plan, gboolean needed, UnsootAct act, UnsootSubject subject, UnsootSide side)
{
  UnsootStep *step;

  if (!needed)
    return;
  step = unsoot_step_new (act, subject, NULL);
  step->side = side;
  emit_step (plan, step);
}

static void
emit_set (Plan *plan, gboolean needed, UnsootSubject subject, double pa)
{
  UnsootStep *step;

  if (!needed)
    return;
  step = unsoot_step_new (UNSOOT_ACT_SET, subject, NULL);
  step->value = pa;
  if (pa > 0)
    step->unit = g_strdup ("Pa");
  emit_step (plan, step);
}

static void
stop_machine (Plan *plan)
{
  const UnsootRig *rig = plan->rig;

  emit (plan, rig->atomiser, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_ATOMISER, NULL);
  emit_set (plan, rig->air_pa > 0, UNSOOT_SUBJECT_AIR, 0);
  emit (plan, !rig->air_bled, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_AIR, NULL);
  emit (plan, unsoot_rig_engine_runs (rig), UNSOOT_ACT_STOP, UNSOOT_SUBJECT_ENGINE, NULL);
  emit (plan, rig->key, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_KEY, NULL);
  emit (plan, rig->pump, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_PUMP, NULL);
}

static void
bleed_fuel (Plan *plan)
{
  emit_set (plan, plan->rig->pressure_pa > 0, UNSOOT_SUBJECT_PRESSURE, 0);
  emit (plan, !plan->rig->pressure_bled, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_PRESSURE, NULL);
}

static void
drain (Plan *plan)
{
  const UnsootChange *point;

  stop_machine (plan);
  while (plan->fault.rule == UNSOOT_RULE_NONE
         && (point = unsoot_rig_change (plan->rig, UNSOOT_SUBJECT_LOW_POINT, NULL)) != NULL)
    {
      g_autofree char *name = g_strdup (point->name);
      emit (plan, TRUE, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_LOW_POINT, name);
    }
  emit (plan, plan->rig->oil_risen, UNSOOT_ACT_REPLACE, UNSOOT_SUBJECT_OIL, NULL);
  emit (plan, plan->rig->oil_due, UNSOOT_ACT_MEASURE, UNSOOT_SUBJECT_OIL, NULL);
}

static gboolean
line_is_missing (const Plan *plan, int line)
{
  return plan->target->joined[line] && !plan->rig->joined[line];
}

static void
join_lines (Plan *plan)
{
  for (int line = 0; line < UNSOOT_LINES; line++)
    if (line_is_missing (plan, line))
      {
        stop_machine (plan);
        bleed_fuel (plan);
        emit (plan, TRUE, UNSOOT_ACT_JOIN, UNSOOT_SUBJECT_LINE,
              unsoot_line_to_slug ((UnsootLine) line));
      }
}

/* A tank that was in use and is in doubt now starts over. */
static void
refill (Plan *plan, UnsootSide side)
{
  UnsootContents wanted = plan->target->tank[side].contents;
  UnsootContents have = plan->rig->tank[side].contents;

  if (have == wanted || have != UNSOOT_CONTENTS_UNKNOWN)
    return;
  emit_side (plan, TRUE, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_TANK, side);
  emit_side (plan, wanted != UNSOOT_CONTENTS_EMPTY, UNSOOT_ACT_FLUSH, UNSOOT_SUBJECT_TANK, side);
  emit_side (plan, wanted == UNSOOT_CONTENTS_FRESH || wanted == UNSOOT_CONTENTS_RETURNED,
             UNSOOT_ACT_FILL, UNSOOT_SUBJECT_TANK, side);
}

static void
start_pump (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  if (target->pump && !rig->pump)
    {
      emit_set (plan, rig->pressure_pa > 0, UNSOOT_SUBJECT_PRESSURE, 0);
      emit (plan, TRUE, UNSOOT_ACT_START, UNSOOT_SUBJECT_PUMP, NULL);
    }
  emit (plan, rig->pump && target->primed && !rig->primed, UNSOOT_ACT_PRIME, UNSOOT_SUBJECT_PUMP,
        NULL);
  emit_set (plan, rig->pump && target->pressure_pa > rig->pressure_pa, UNSOOT_SUBJECT_PRESSURE,
            target->pressure_pa);
}

static void
look_at_fuel (Plan *plan)
{
  emit_side (plan,
             plan->rig->look_due[UNSOOT_SIDE_FUEL]
                 && unsoot_rig_fuel_under_pressure (plan->rig, plan->facts),
             UNSOOT_ACT_LOOK, UNSOOT_SUBJECT_LEAKS, UNSOOT_SIDE_FUEL);
}

static void
idle_and_raise (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  if (rig->idle_due && !target->idle_due)
    {
      UnsootStep *step = unsoot_step_new (UNSOOT_ACT_RUN, UNSOOT_SUBJECT_ENGINE, NULL);
      step->minutes = IDLE_MINUTES;
      step->low_level = TRUE;
      emit_step (plan, step);
    }
  emit (plan, (rig->raise_due && !target->raise_due) || target->engine == UNSOOT_ENGINE_RAISED,
        UNSOOT_ACT_SET, UNSOOT_SUBJECT_SPEED, UNSOOT_SPEED_RAISED);
}

static void
test_again (Plan *plan)
{
  emit (plan, plan->target->driven && !plan->rig->driven, UNSOOT_ACT_DRIVE,
        plan->facts->has_road ? UNSOOT_SUBJECT_ROAD : UNSOOT_SUBJECT_LOAD, NULL);
}

/* LOOK_NOW: the look is made good at once, even if the engine has to run for it. */
static void
start_engine (Plan *plan, gboolean look_now)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;
  gboolean tests = target->driven && !rig->driven;
  gboolean looks = look_now && rig->look_due[UNSOOT_SIDE_FUEL];
  gboolean runs = target->engine != UNSOOT_ENGINE_OFF || tests;

  emit (plan, !rig->key && (target->key || runs || looks), UNSOOT_ACT_START, UNSOOT_SUBJECT_KEY,
        NULL);
  if (runs || looks)
    look_at_fuel (plan);
  runs |= looks && rig->look_due[UNSOOT_SIDE_FUEL];
  if (!runs || unsoot_rig_engine_runs (rig))
    return;
  emit (plan, TRUE, UNSOOT_ACT_START, UNSOOT_SUBJECT_ENGINE, NULL);
  look_at_fuel (plan);
  idle_and_raise (plan);
  test_again (plan);
}

/* What ran only for a look or a test goes off again. */
static void
settle (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  emit (plan, rig->engine == UNSOOT_ENGINE_RAISED && target->engine == UNSOOT_ENGINE_IDLE,
        UNSOOT_ACT_SET, UNSOOT_SUBJECT_SPEED, UNSOOT_SPEED_IDLE);
  if (target->engine == UNSOOT_ENGINE_OFF)
    emit (plan, unsoot_rig_engine_runs (rig), UNSOOT_ACT_STOP, UNSOOT_SUBJECT_ENGINE, NULL);
  emit (plan, rig->key && !target->key, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_KEY, NULL);
  emit (plan, rig->pump && !target->pump, UNSOOT_ACT_STOP, UNSOOT_SUBJECT_PUMP, NULL);
  if (target->pressure_bled)
    bleed_fuel (plan);
  emit_set (plan, !rig->pump && target->pressure_pa <= 0 && rig->pressure_pa > 0,
            UNSOOT_SUBJECT_PRESSURE, 0);
}

static void
restore_air (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  emit_set (plan, target->air_pa > rig->air_pa, UNSOOT_SUBJECT_AIR, target->air_pa);
  emit_set (plan, target->air_pa <= 0 && rig->air_pa > 0, UNSOOT_SUBJECT_AIR, 0);
  emit (plan, target->air_bled && !rig->air_bled, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_AIR, NULL);
  emit_side (plan,
             rig->air_pa > 0 && rig->look_due[UNSOOT_SIDE_INTAKE]
                 && !target->look_due[UNSOOT_SIDE_INTAKE],
             UNSOOT_ACT_LOOK, UNSOOT_SUBJECT_LEAKS, UNSOOT_SIDE_INTAKE);
}

static gboolean
has_to_drain (const Plan *plan)
{
  return unsoot_rig_must_drain (plan->rig) && !unsoot_rig_engine_runs (plan->rig)
         && (unsoot_rig_engine_runs (plan->target) || !unsoot_rig_must_drain (plan->target));
}

static void
make_plan (Plan *plan, gboolean look_now)
{
  if (has_to_drain (plan))
    drain (plan);
  join_lines (plan);
  refill (plan, UNSOOT_SIDE_FUEL);
  refill (plan, UNSOOT_SIDE_INTAKE);
  start_pump (plan);
  start_engine (plan, look_now);
  settle (plan);
  restore_air (plan);
  emit (plan, plan->target->atomiser && !plan->rig->atomiser, UNSOOT_ACT_START,
        UNSOOT_SUBJECT_ATOMISER, NULL);
}

/* A step that only takes something away, and so may be done already. */
static gboolean
only_stops (const UnsootStep *step)
{
  if (step->act == UNSOOT_ACT_SET)
    return step->subject == UNSOOT_SUBJECT_SPEED ? g_strcmp0 (step->name, UNSOOT_SPEED_IDLE) == 0
                                                 : step->value <= 0;
  return step->act == UNSOOT_ACT_STOP || step->act == UNSOOT_ACT_BLEED;
}

static gboolean
is_already_so (const UnsootRig *rig, const UnsootStep *step)
{
  if (step->act == UNSOOT_ACT_BLEED)
    return step->subject == UNSOOT_SUBJECT_AIR ? rig->air_bled : rig->pressure_bled;
  if (step->subject == UNSOOT_SUBJECT_KEY)
    return !rig->key;
  if (step->subject == UNSOOT_SUBJECT_ENGINE)
    return rig->engine == UNSOOT_ENGINE_OFF;
  if (step->subject == UNSOOT_SUBJECT_SPEED)
    return rig->engine != UNSOOT_ENGINE_RAISED;
  if (step->subject == UNSOOT_SUBJECT_PUMP)
    return !rig->pump;
  if (step->subject == UNSOOT_SUBJECT_ATOMISER)
    return !rig->atomiser;
  return step->subject == UNSOOT_SUBJECT_AIR ? rig->air_pa <= 0 : rig->pressure_pa <= 0;
}

/* Whether the rest of the procedure, from UNTIL on, is accepted after PLAN. */
static void
check_rest (Plan *plan, const UnsootRun *run, int until)
{
  g_autoptr (UnsootRig) rig = NULL;
  g_autoptr (GArray) faults = unsoot_faults_new ();
  const GPtrArray *steps = run->procedure->steps;

  if (plan->fault.rule != UNSOOT_RULE_NONE)
    return;
  for (int i = run->cursor; i < until; i++)
    if (!is_already_so (plan->rig, steps->pdata[i]))
      {
        plan->fault.rule = UNSOOT_RULE_SENSE;
        return;
      }
  rig = unsoot_rig_copy (plan->rig);
  for (int i = until; i < (int) steps->len; i++)
    if (!unsoot_rig_apply (rig, run->facts, steps->pdata[i], NULL, &plan->fault))
      {
        plan->fault.step = i;
        return;
      }
  if (unsoot_rig_finish_faults (rig, run->facts, run->procedure, faults))
    return;
  plan->fault = g_array_index (faults, UnsootFault, 0);
  plan->fault.reason = g_strdup (plan->fault.reason);
}

static gboolean
is_better (const Plan *plan, const UnsootRecovery *best)
{
  gboolean sound = plan->fault.rule == UNSOOT_RULE_NONE;
  gboolean best_sound = best->fault.rule == UNSOOT_RULE_NONE;

  if (best->acts == NULL || sound != best_sound)
    return best->acts == NULL || sound;
  return sound && plan->acts->len < best->acts->len;
}

static void
consider (UnsootRecovery *best, const UnsootRun *run, const UnsootRig *target, int until,
          gboolean look_now)
{
  g_auto (Plan) plan
      = { unsoot_rig_copy (run->rig), target, run->facts,
          g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_step_free), UNSOOT_FAULT_INIT };

  make_plan (&plan, look_now);
  check_rest (&plan, run, until);
  if (!is_better (&plan, best))
    return;
  g_clear_pointer (&best->acts, g_ptr_array_unref);
  unsoot_fault_clear (&best->fault);
  best->acts = g_steal_pointer (&plan.acts);
  best->fault = plan.fault;
  plan.fault = (UnsootFault) UNSOOT_FAULT_INIT;
  best->until = until;
}

UnsootRecovery *
unsoot_run_recovery (const UnsootRun *run)
{
  UnsootRecovery *best = g_new0 (UnsootRecovery, 1);
  const GPtrArray *steps = run->procedure->steps;
  g_autoptr (UnsootRig) target = unsoot_rig_copy (run->wanted != NULL ? run->wanted : run->rig);

  best->first = run->cursor;
  best->fault = (UnsootFault) UNSOOT_FAULT_INIT;
  for (int until = run->cursor;; until++)
    {
      consider (best, run, target, until, FALSE);
      consider (best, run, target, until, TRUE);
      if (until == (int) steps->len || !only_stops (steps->pdata[until])
          || !unsoot_rig_apply (target, run->facts, steps->pdata[until], NULL, NULL))
        return best;
    }
}

void
unsoot_recovery_free (UnsootRecovery *recovery)
{
  if (recovery == NULL)
    return;
  g_ptr_array_unref (recovery->acts);
  unsoot_fault_clear (&recovery->fault);
  g_free (recovery);
}
