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
  gboolean look_now;
  GPtrArray *acts;
  guint put_off; /* looks that are left for later */
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

/* The halt has stopped atomiser and engine. */
static void
stop_machine (Plan *plan)
{
  const UnsootRig *rig = plan->rig;

  emit_set (plan, rig->air_pa > 0, UNSOOT_SUBJECT_AIR, 0);
  emit (plan, !rig->air_bled, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_AIR, NULL);
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

/* Where a step was passed over, the tank that is filled now is not clean: what is in it goes out
 * first. */
static void
clean_for_fill (Plan *plan, const UnsootStep *step)
{
  if (step == NULL || step->act != UNSOOT_ACT_FILL || step->side == UNSOOT_SIDE_NONE)
    return;
  const UnsootContents have = plan->rig->tank[step->side].contents;
  const gboolean dirty = have != UNSOOT_CONTENTS_CLEAN && have != UNSOOT_CONTENTS_FRESH;

  emit_side (plan, dirty && have != UNSOOT_CONTENTS_EMPTY, UNSOOT_ACT_DRAIN, UNSOOT_SUBJECT_TANK,
             step->side);
  emit_side (plan, dirty, UNSOOT_ACT_FLUSH, UNSOOT_SUBJECT_TANK, step->side);
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

/* The look is made good at once, even if the engine has to run for it. */
static gboolean
needs_look (const Plan *plan)
{
  return plan->look_now && plan->rig->look_due[UNSOOT_SIDE_FUEL];
}

static gboolean
needs_test (const Plan *plan)
{
  return plan->target->driven && !plan->rig->driven;
}

static void
test_again (Plan *plan)
{
  emit (plan, needs_test (plan), UNSOOT_ACT_DRIVE,
        plan->facts->has_road ? UNSOOT_SUBJECT_ROAD : UNSOOT_SUBJECT_LOAD, NULL);
}

static void
start_engine (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;
  gboolean runs = target->engine != UNSOOT_ENGINE_OFF || needs_test (plan);

  emit (plan, !rig->key && (target->key || runs || needs_look (plan)), UNSOOT_ACT_START,
        UNSOOT_SUBJECT_KEY, NULL);
  if (runs || needs_look (plan))
    look_at_fuel (plan);
  if (unsoot_rig_engine_runs (rig) || !(runs || needs_look (plan)))
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
lower_air (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  emit_set (plan, target->air_pa <= 0 && rig->air_pa > 0, UNSOOT_SUBJECT_AIR, 0);
  emit (plan, target->air_bled && !rig->air_bled, UNSOOT_ACT_BLEED, UNSOOT_SUBJECT_AIR, NULL);
}

static void
raise_air (Plan *plan)
{
  const UnsootRig *rig = plan->rig, *target = plan->target;

  emit_set (plan, target->air_pa > rig->air_pa, UNSOOT_SUBJECT_AIR, target->air_pa);
  emit_side (plan,
             rig->air_pa > 0 && rig->look_due[UNSOOT_SIDE_INTAKE]
                 && !target->look_due[UNSOOT_SIDE_INTAKE],
             UNSOOT_ACT_LOOK, UNSOOT_SUBJECT_LEAKS, UNSOOT_SIDE_INTAKE);
}

/* Something is to be drained or read that was not before the halt. */
static gboolean
has_newly_pooled (const Plan *plan)
{
  for (guint i = 0; i < plan->facts->low_points->len; i++)
    {
      const char *name = plan->facts->low_points->pdata[i];
      if (unsoot_rig_change (plan->rig, UNSOOT_SUBJECT_LOW_POINT, name) != NULL
          && unsoot_rig_change (plan->target, UNSOOT_SUBJECT_LOW_POINT, name) == NULL)
        return TRUE;
    }
  return plan->rig->oil_due && !plan->target->oil_due;
}

static gboolean
has_to_drain (const Plan *plan)
{
  gboolean starts = unsoot_rig_engine_runs (plan->target) || needs_test (plan)
                    || (needs_look (plan) && !plan->facts->has_lift_pump);

  return unsoot_rig_must_drain (plan->rig) && !unsoot_rig_engine_runs (plan->rig)
         && (starts || has_newly_pooled (plan));
}

/* @next: the step that the run then goes on with; NULL: it is at its end. */
static void
make_plan (Plan *plan, const UnsootStep *next)
{
  if (has_to_drain (plan))
    drain (plan);
  join_lines (plan);
  refill (plan, UNSOOT_SIDE_FUEL);
  refill (plan, UNSOOT_SIDE_INTAKE);
  clean_for_fill (plan, next);
  start_pump (plan);
  start_engine (plan);
  lower_air (plan);
  settle (plan);
  raise_air (plan);
  emit (plan, plan->target->atomiser && !plan->rig->atomiser, UNSOOT_ACT_START,
        UNSOOT_SUBJECT_ATOMISER, NULL);
}

static gboolean
are_already_so (const Plan *plan, const UnsootRun *run, int until)
{
  for (int i = run->cursor; i < until; i++)
    if (!unsoot_step_is_already_so (run->procedure->steps->pdata[i], plan->rig))
      return FALSE;
  return TRUE;
}

/* Whether STEP is accepted once the fuel lines are looked at. */
static gboolean
is_accepted_after_look (const UnsootRun *run, UnsootRig *rig, const UnsootStep *step)
{
  g_autoptr (UnsootStep) look = unsoot_step_new (UNSOOT_ACT_LOOK, UNSOOT_SUBJECT_LEAKS, NULL);

  look->side = UNSOOT_SIDE_FUEL;
  return unsoot_rig_apply (rig, run->facts, look, NULL, NULL)
         && unsoot_rig_apply (rig, run->facts, step, NULL, NULL);
}

/* What stops only what is stopped already is passed over when its turn comes. A
 * look that can't be had yet is had later, but never put off without need. */
static gboolean
rest_is_accepted (Plan *plan, const UnsootRun *run, UnsootRig *rig, int until)
{
  const GPtrArray *steps = run->procedure->steps;

  for (int i = until; i < (int) steps->len; i++)
    {
      const UnsootStep *step = steps->pdata[i];
      if (unsoot_step_is_already_so (step, rig)
          || unsoot_rig_apply (rig, run->facts, step, NULL, &plan->fault))
        continue;
      plan->fault.step = i;
      if (i == until || plan->fault.rule != UNSOOT_RULE_LEAK_LOOK
          || !is_accepted_after_look (run, rig, step))
        return FALSE;
      unsoot_fault_clear (&plan->fault);
      plan->put_off++;
    }
  return TRUE;
}

/* Whether the rest of the procedure, from UNTIL on, is accepted after PLAN. */
static void
check_rest (Plan *plan, const UnsootRun *run, int until)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_copy (plan->rig);
  g_autoptr (GArray) faults = unsoot_faults_new ();

  if (plan->fault.rule != UNSOOT_RULE_NONE)
    return;
  if (!are_already_so (plan, run, until))
    plan->fault.rule = UNSOOT_RULE_SENSE;
  else if (rest_is_accepted (plan, run, rig, until)
           && !unsoot_rig_finish_faults (rig, run->facts, run->procedure, faults))
    {
      plan->fault = g_array_index (faults, UnsootFault, 0);
      plan->fault.reason = g_strdup (plan->fault.reason);
    }
}

/* The best so far, while candidates are weighed. */
typedef struct
{
  UnsootRecovery *recovery;
  guint put_off;
} Best;

static gboolean
is_better (const Plan *plan, const Best *best)
{
  const UnsootRecovery *recovery = best->recovery;
  gboolean sound = plan->fault.rule == UNSOOT_RULE_NONE;
  gboolean best_sound = recovery->fault.rule == UNSOOT_RULE_NONE;

  if (recovery->acts == NULL || sound != best_sound)
    return recovery->acts == NULL || sound;
  if (plan->put_off != best->put_off)
    return sound && plan->put_off < best->put_off;
  return sound && plan->acts->len < recovery->acts->len;
}

static void
keep (Best *best, Plan *plan, int until)
{
  UnsootRecovery *recovery = best->recovery;

  g_clear_pointer (&recovery->acts, g_ptr_array_unref);
  unsoot_fault_clear (&recovery->fault);
  recovery->acts = g_steal_pointer (&plan->acts);
  recovery->fault = plan->fault;
  recovery->until = until;
  plan->fault = (UnsootFault) UNSOOT_FAULT_INIT;
  best->put_off = plan->put_off;
}

static void
consider (Best *best, const UnsootRun *run, const UnsootRig *target, int until, gboolean look_now)
{
  g_auto (Plan) plan = { unsoot_rig_copy (run->rig),
                         target,
                         run->facts,
                         look_now,
                         g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_step_free),
                         0,
                         UNSOOT_FAULT_INIT };

  make_plan (&plan,
             until < (int) run->procedure->steps->len ? run->procedure->steps->pdata[until] : NULL);
  check_rest (&plan, run, until);
  if (is_better (&plan, best))
    keep (best, &plan, until);
}

/* The same without mist, and with nothing running: for what has done its work. */
static UnsootRig *
without_mist (const UnsootRig *target)
{
  UnsootRig *calm = unsoot_rig_copy (target);

  calm->atomiser = FALSE;
  calm->air_pa = 0;
  calm->air_bled = TRUE;
  return calm;
}

static UnsootRig *
at_rest (const UnsootRig *target)
{
  UnsootRig *rest = without_mist (target);

  rest->key = rest->pump = FALSE;
  rest->engine = UNSOOT_ENGINE_OFF;
  rest->pressure_pa = 0;
  rest->pressure_bled = TRUE;
  return rest;
}

static void
consider_all (Best *best, const UnsootRun *run, const UnsootRig *target, int until)
{
  g_autoptr (UnsootRig) calm = without_mist (target), rest = at_rest (target);

  for (gboolean look_now = FALSE; look_now <= TRUE; look_now++)
    {
      consider (best, run, target, until, look_now);
      consider (best, run, calm, until, look_now);
      consider (best, run, rest, until, look_now);
    }
}

UnsootRecovery *
unsoot_run_recovery (const UnsootRun *run)
{
  UnsootRecovery *recovery = g_new0 (UnsootRecovery, 1);
  Best best = { recovery, 0 };
  const GPtrArray *steps = run->procedure->steps;
  g_autoptr (UnsootRig) target = unsoot_rig_copy (run->wanted != NULL ? run->wanted : run->rig);

  recovery->first = run->cursor;
  recovery->fault = (UnsootFault) UNSOOT_FAULT_INIT;
  for (int until = run->cursor;; until++)
    {
      consider_all (&best, run, target, until);
      if (until == (int) steps->len || !unsoot_step_only_stops (steps->pdata[until]))
        return recovery;
      unsoot_rig_apply (target, run->facts, steps->pdata[until], NULL, NULL);
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
