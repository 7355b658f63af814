/* SPDX-License-Identifier: GPL-3.0-or-later */
/* May pressures and speed be set, may the engine run on, may the rest be done? */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

/* A gauge is read to about a thousandth; a window typed in psi must not refuse its own edge. */
#define EDGE_PA 1.0

static gboolean
within (double value, double least, double most)
{
  return value >= least - EDGE_PA && value <= most + EDGE_PA;
}

static gboolean
may_set_pressure (const UnsootCheck *c, double pa)
{
  const UnsootFamilyFacts *facts = c->facts;

  if (pa <= 0)
    return unsoot_check_need (
        c, !(unsoot_rig_engine_runs (c->rig) && unsoot_rig_on_machine (c->rig)), UNSOOT_RULE_WINDOW,
        N_ ("The engine runs on the machine: its pressure stays in the window."));
  return unsoot_check_need (c, !isnan (facts->window_min_pa) && !isnan (facts->window_max_pa),
                            UNSOOT_RULE_WINDOW,
                            N_ ("No pressure window is entered for this engine family."))
         && unsoot_check_need (c, within (pa, facts->window_min_pa, facts->window_max_pa),
                               UNSOOT_RULE_WINDOW,
                               N_ ("That pressure is outside this engine family's window."))
         && unsoot_check_need (c, c->rig->pump, UNSOOT_RULE_SENSE,
                               N_ ("Pressure is raised only with the pump on."));
}

static gboolean
may_set_air (const UnsootCheck *c, double pa)
{
  if (pa <= 0)
    return unsoot_check_need (c, !c->rig->atomiser, UNSOOT_RULE_STOP_ORDER,
                              N_ ("The atomiser goes off before its air."));
  return unsoot_check_need (c, within (pa, UNSOOT_AIR_LEAST_PA, UNSOOT_AIR_MOST_PA),
                            UNSOOT_RULE_WINDOW, N_ ("The atomiser's air is set to about 40 psi."));
}

static gboolean
may_set_speed (const UnsootCheck *c)
{
  gboolean raised = g_strcmp0 (c->step->name, UNSOOT_SPEED_RAISED) == 0;

  if (!raised && g_strcmp0 (c->step->name, UNSOOT_SPEED_IDLE) != 0)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("Speed is set to idle or raised."));
  if (!unsoot_rig_engine_runs (c->rig))
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The engine is not running."));
  if (!raised)
    return TRUE;
  return unsoot_check_need (c, !unsoot_rig_must_drain (c->rig), UNSOOT_RULE_IDLE_FIRST,
                            N_ ("Liquid may stand in the low points: no raise before they are "
                                "drained."))
         && unsoot_check_need (c, !c->rig->idle_due, UNSOOT_RULE_IDLE_FIRST,
                               N_ ("Let it idle first."))
         && unsoot_check_looked (c);
}

gboolean
unsoot_check_set (const UnsootCheck *c)
{
  double value = unsoot_check_value (c->step, c->entry);

  if (c->step->subject == UNSOOT_SUBJECT_SPEED)
    return may_set_speed (c);
  if (isnan (value))
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The step doesn't say how much."));
  return c->step->subject == UNSOOT_SUBJECT_AIR ? may_set_air (c, value)
                                                : may_set_pressure (c, value);
}

gint64
unsoot_run_ml (const UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step)
{
  double share = step->share - rig->share[step->side];

  return isnan (share) ? 0 : (gint64) lround (share * (double) facts->dose_ml[step->side]);
}

static gboolean
tank_lasts (const UnsootCheck *c)
{
  UnsootSide side = c->step->side;
  double share = c->step->share;

  if (isnan (share))
    return unsoot_check_refuse (c, UNSOOT_RULE_TANK_RUNS_DRY,
                                N_ ("The run doesn't say at which share of the dose it ends."));
  return unsoot_check_need (c, share > c->rig->share[side] && share <= 1, UNSOOT_RULE_SENSE,
                            N_ ("That share of the dose is already used."))
         && unsoot_check_need (c,
                               unsoot_run_ml (c->rig, c->facts, c->step) <= c->rig->tank[side].ml,
                               UNSOOT_RULE_TANK_RUNS_DRY, N_ ("The tank doesn't hold that much."));
}

/* On the machine's tank every run is limited, whichever side it is for. */
static gboolean
machine_lasts (const UnsootCheck *c)
{
  if (!unsoot_rig_on_machine (c->rig))
    return TRUE;
  return unsoot_check_need (c, c->rig->share[UNSOOT_SIDE_FUEL] < 1, UNSOOT_RULE_TANK_RUNS_DRY,
                            N_ ("The fuel side's dose is used up: stop the engine."))
         && unsoot_check_need (
             c, c->step->low_level && c->step->minutes > 0, UNSOOT_RULE_TANK_RUNS_DRY,
             N_ ("The engine draws from the machine: the run has to end at a time "
                 "and at the low level too."));
}

static gboolean
may_run_fuel (const UnsootCheck *c)
{
  gboolean to_the_end = c->step->share >= 1;

  return unsoot_check_need (c, unsoot_rig_on_machine (c->rig), UNSOOT_RULE_FUEL_SUPPLY,
                            N_ ("The engine doesn't draw from the machine."))
         && machine_lasts (c) && tank_lasts (c)
         && unsoot_check_need (c, !(to_the_end && c->rig->atomiser),
                               UNSOOT_RULE_ATOMISER_NEEDS_ENGINE,
                               N_ ("The fuel side would end, and the engine stop, under mist."));
}

static gboolean
may_run_intake (const UnsootCheck *c)
{
  return unsoot_check_need (c, c->rig->atomiser, UNSOOT_RULE_SENSE, N_ ("The atomiser is off."))
         && machine_lasts (c) && tank_lasts (c);
}

static gboolean
may_run_on (const UnsootCheck *c)
{
  return unsoot_check_need (c, !c->rig->atomiser, UNSOOT_RULE_SENSE,
                            N_ ("The atomiser is on: the run has to say that it is the intake's."))
         && unsoot_check_need (c, c->step->minutes > 0 || c->step->until_clear, UNSOOT_RULE_SENSE,
                               N_ ("The run doesn't say when it ends."))
         && machine_lasts (c);
}

static gboolean
may_run (const UnsootCheck *c)
{
  if (!unsoot_rig_engine_runs (c->rig))
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The engine is not running."));
  if (!unsoot_check_looked (c))
    return FALSE;
  switch (c->step->side)
    {
    case UNSOOT_SIDE_FUEL:
      return may_run_fuel (c);
    case UNSOOT_SIDE_INTAKE:
      return may_run_intake (c);
    case UNSOOT_SIDE_NONE:
      return may_run_on (c);
    }
  g_assert_not_reached ();
}

gboolean
unsoot_check_run (const UnsootCheck *c)
{
  if (c->step->act == UNSOOT_ACT_RUN)
    return may_run (c);
  return unsoot_check_need (c, c->step->name != NULL && *c->step->name != '\0', UNSOOT_RULE_SENSE,
                            N_ ("The step doesn't say which one."))
         && unsoot_check_need (c, c->step->minutes > 0, UNSOOT_RULE_SENSE,
                               N_ ("The step doesn't say how long."))
         && unsoot_check_stopped (c);
}

static gboolean
may_look (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  if (c->step->side == UNSOOT_SIDE_NONE)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE,
                                N_ ("The step doesn't say which side to look at."));
  if (c->step->side == UNSOOT_SIDE_FUEL)
    return unsoot_check_need (c, unsoot_rig_fuel_under_pressure (rig, c->facts),
                              UNSOOT_RULE_LEAK_LOOK,
                              N_ ("The fuel lines are not all under pressure: a look would show "
                                  "nothing."));
  return unsoot_check_need (c, rig->air_pa > 0, UNSOOT_RULE_LEAK_LOOK,
                            N_ ("The air is not on: a look would show nothing."));
}

static gboolean
may_measure (const UnsootCheck *c)
{
  if (c->step->subject == UNSOOT_SUBJECT_OIL)
    return unsoot_check_need (c, !unsoot_rig_engine_runs (c->rig), UNSOOT_RULE_SENSE,
                              N_ ("The oil level is read with the engine off."));
  if (c->step->subject == UNSOOT_SUBJECT_TANK)
    return unsoot_check_need (c, c->step->side != UNSOOT_SIDE_NONE, UNSOOT_RULE_SENSE,
                              N_ ("The step doesn't say which tank."));
  return unsoot_check_need (c, c->step->name != NULL && *c->step->name != '\0', UNSOOT_RULE_SENSE,
                            N_ ("The step doesn't say which one."));
}

static gboolean
may_clear (const UnsootCheck *c)
{
  const UnsootChange *lead = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_LEAD, NULL);

  if (lead != NULL)
    return unsoot_check_refuse_about (
        c, UNSOOT_RULE_SENSE, _ ("“%s” is still off: its code would come back."), lead->name);
  return unsoot_check_need (c, c->rig->key, UNSOOT_RULE_SENSE, N_ ("The key is off."));
}

static gboolean
everything_is_back (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  if (rig->changes->len > 0)
    {
      const UnsootChange *change = rig->changes->pdata[0];
      return unsoot_check_refuse_about (
          c, UNSOOT_RULE_EVERYTHING_BACK, _ ("“%s” is not back as it came in."),
          change->name != NULL ? change->name : unsoot_subject_label (change->subject));
    }
  return unsoot_check_need (c, unsoot_rig_on_vehicle (rig), UNSOOT_RULE_EVERYTHING_BACK,
                            N_ ("The engine is not back on the vehicle's own lines."));
}

static gboolean
may_drive (const UnsootCheck *c)
{
  gboolean road = c->step->subject == UNSOOT_SUBJECT_ROAD;

  if (road != !!c->facts->has_road)
    return unsoot_check_refuse (c, UNSOOT_RULE_ROAD_TEST_LAST,
                                road ? N_ ("This machine has no road: run it under load.")
                                     : N_ ("This vehicle is tested on the road."));
  return everything_is_back (c)
         && unsoot_check_need (c, unsoot_rig_engine_runs (c->rig), UNSOOT_RULE_SENSE,
                               N_ ("The engine is not running."))
         && unsoot_check_looked (c)
         && unsoot_check_need (c, !c->rig->idle_due && !c->rig->raise_due,
                               UNSOOT_RULE_ROAD_TEST_LAST,
                               N_ ("Idle and raised speed come before the road or the load."));
}

gboolean
unsoot_check_others (const UnsootCheck *c)
{
  if (c->step->act == UNSOOT_ACT_LOOK)
    return may_look (c);
  if (c->step->act == UNSOOT_ACT_MEASURE)
    return may_measure (c);
  return c->step->act == UNSOOT_ACT_CLEAR ? may_clear (c) : may_drive (c);
}
