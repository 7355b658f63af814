/* SPDX-License-Identifier: GPL-3.0-or-later */
/* May key, engine, pump or atomiser be started or stopped now? */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

static gboolean
fuel_parts_are_on (const UnsootCheck *c)
{
  for (guint i = 0; i < c->rig->changes->len; i++)
    {
      const UnsootChange *change = c->rig->changes->pdata[i];
      if (change->subject == UNSOOT_SUBJECT_PART && change->side == UNSOOT_SIDE_FUEL)
        return unsoot_check_refuse_about (c, UNSOOT_RULE_FUEL_SUPPLY,
                                          _ ("The fuel path is open: “%s” is off."), change->name);
    }
  return TRUE;
}

static gboolean
may_start_key (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;
  gboolean plugged = unsoot_rig_change (rig, UNSOOT_SUBJECT_LEAD, UNSOOT_LEAD_LIFT_PUMP) == NULL;

  if (rig->key)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The key is already on."));
  if (!c->facts->has_lift_pump || !plugged)
    return TRUE;
  return unsoot_check_need (c, unsoot_rig_on_vehicle (rig) || rig->joined[UNSOOT_LINE_BYPASS],
                            UNSOOT_RULE_LIFT_PUMP,
                            N_ ("The lift pump would pump into an open or blocked line: join the "
                                "bypass, or unplug the pump."))
         && fuel_parts_are_on (c);
}

static gboolean
low_points_are_drained (const UnsootCheck *c)
{
  const UnsootChange *point = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_LOW_POINT, NULL);

  if (point != NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_DRAIN_BEFORE_START,
                                      _ ("“%s” is not drained: liquid may stand in it."),
                                      point->name);
  return unsoot_check_need (c, !c->rig->oil_risen, UNSOOT_RULE_DRAIN_BEFORE_START,
                            N_ ("The oil level has risen: change the oil first."))
         && unsoot_check_need (c, !c->rig->oil_due, UNSOOT_RULE_DRAIN_BEFORE_START,
                               N_ ("The oil level is not checked."));
}

static gboolean
machine_feeds (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  return unsoot_check_need (c, rig->pump, UNSOOT_RULE_FUEL_SUPPLY,
                            N_ ("The engine draws from the machine, and its pump is off."))
         && unsoot_check_need (c, rig->primed, UNSOOT_RULE_FUEL_SUPPLY,
                               N_ ("The machine's pump is not primed."))
         && unsoot_check_need (c, rig->pressure_pa > 0, UNSOOT_RULE_WINDOW,
                               N_ ("The fuel pressure is at its minimum, below the window."))
         && unsoot_check_need (c, rig->share[UNSOOT_SIDE_FUEL] < 1, UNSOOT_RULE_TANK_RUNS_DRY,
                               N_ ("The fuel side's dose is used up."));
}

static gboolean
vehicle_feeds (const UnsootCheck *c)
{
  gboolean unplugged
      = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_LEAD, UNSOOT_LEAD_LIFT_PUMP) != NULL;

  return unsoot_check_need (c, unsoot_rig_on_vehicle (c->rig), UNSOOT_RULE_FUEL_SUPPLY,
                            N_ ("The engine has no fuel: neither the vehicle's lines nor the "
                                "machine's are joined."))
         && unsoot_check_need (c, !unplugged, UNSOOT_RULE_FUEL_SUPPLY,
                               N_ ("The engine has no fuel: the lift pump is unplugged."));
}

static gboolean
is_fitted (const UnsootCheck *c, const char *opening)
{
  return unsoot_rig_at_place (c->rig, UNSOOT_SUBJECT_ADAPTER, opening) != NULL
         || unsoot_rig_at_place (c->rig, UNSOOT_SUBJECT_TOOL, opening) != NULL
         || unsoot_rig_at_place (c->rig, UNSOOT_SUBJECT_GUARD, opening) != NULL;
}

/* A blank on the intake starves the engine; a bare opening lets anything in. */
static gboolean
intake_breathes (const UnsootCheck *c)
{
  for (guint i = 0; i < c->rig->changes->len; i++)
    {
      const UnsootChange *change = c->rig->changes->pdata[i];
      if (change->side != UNSOOT_SIDE_INTAKE)
        continue;
      if (change->subject == UNSOOT_SUBJECT_GUARD && change->closes)
        return unsoot_check_refuse_about (c, UNSOOT_RULE_AIR_PATH,
                                          _ ("“%s” still shuts the intake."), change->name);
      if (change->subject == UNSOOT_SUBJECT_PART && !is_fitted (c, change->name))
        return unsoot_check_refuse_about (c, UNSOOT_RULE_AIR_PATH,
                                          _ ("“%s” is off and nothing guards its opening."),
                                          change->name);
    }
  return TRUE;
}

/* Pressure may be on before the engine runs, so the look can't wait until after. */
static gboolean
fuel_is_looked_at (const UnsootCheck *c)
{
  gboolean due = c->rig->look_due[UNSOOT_SIDE_FUEL];

  return unsoot_check_need (
      c, !due || !(c->rig->pump || unsoot_rig_lift_pump_live (c->rig, c->facts)),
      UNSOOT_RULE_LEAK_LOOK,
      N_ ("The fuel lines have not been looked at since they were touched, or the pressure was "
          "raised."));
}

static gboolean
may_start_engine (const UnsootCheck *c)
{
  return unsoot_check_need (c, !unsoot_rig_engine_runs (c->rig), UNSOOT_RULE_SENSE,
                            N_ ("The engine is already running."))
         && unsoot_check_need (c, c->rig->key, UNSOOT_RULE_SENSE, N_ ("The key is off."))
         && low_points_are_drained (c)
         && (unsoot_rig_on_machine (c->rig) ? machine_feeds (c) : vehicle_feeds (c))
         && fuel_parts_are_on (c) && fuel_is_looked_at (c) && intake_breathes (c);
}

static gboolean
may_start_pump (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;
  UnsootContents contents = rig->tank[UNSOOT_SIDE_FUEL].contents;

  if (rig->pump)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The pump is already on."));
  if (contents == UNSOOT_CONTENTS_UNKNOWN || contents == UNSOOT_CONTENTS_HELD)
    return unsoot_check_refuse (c, UNSOOT_RULE_FLUIDS_APART,
                                N_ ("The fuel tank was not filled for this job."));
  return unsoot_check_need (c, unsoot_rig_on_machine (rig), UNSOOT_RULE_FUEL_SUPPLY,
                            N_ ("The machine's hoses are not both joined."))
         && unsoot_check_need (
             c, contents == UNSOOT_CONTENTS_FRESH || contents == UNSOOT_CONTENTS_RETURNED,
             UNSOOT_RULE_TANK_RUNS_DRY, N_ ("The fuel tank is empty."))
         && unsoot_check_need (c, rig->share[UNSOOT_SIDE_FUEL] < 1, UNSOOT_RULE_TANK_RUNS_DRY,
                               N_ ("The fuel side's dose is used up."))
         && unsoot_check_need (c, rig->pressure_pa <= 0, UNSOOT_RULE_WINDOW,
                               N_ ("Turn the fuel pressure to its minimum before the pump starts."))
         && fuel_parts_are_on (c);
}

static gboolean
ignition_is_out (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  return unsoot_check_need (c,
                            !c->facts->has_heater
                                || unsoot_rig_change (rig, UNSOOT_SUBJECT_HEATER, NULL) != NULL,
                            UNSOOT_RULE_IGNITION_OUT, N_ ("The intake heater is not disabled."))
         && unsoot_check_need (c,
                               !c->facts->has_regeneration
                                   || unsoot_rig_change (rig, UNSOOT_SUBJECT_REGENERATION, NULL)
                                          != NULL,
                               UNSOOT_RULE_IGNITION_OUT, N_ ("Regeneration is not disabled."));
}

static gboolean
intake_tank_feeds (const UnsootCheck *c)
{
  switch (c->rig->tank[UNSOOT_SIDE_INTAKE].contents)
    {
    case UNSOOT_CONTENTS_FRESH:
      return unsoot_check_need (c, c->rig->share[UNSOOT_SIDE_INTAKE] < 1, UNSOOT_RULE_TANK_RUNS_DRY,
                                N_ ("The intake side's dose is used up."));
    case UNSOOT_CONTENTS_EMPTY:
    case UNSOOT_CONTENTS_CLEAN:
      return unsoot_check_refuse (c, UNSOOT_RULE_TANK_RUNS_DRY, N_ ("The intake tank is empty."));
    case UNSOOT_CONTENTS_UNKNOWN:
    case UNSOOT_CONTENTS_RETURNED:
    case UNSOOT_CONTENTS_HELD:
      return unsoot_check_refuse (c, UNSOOT_RULE_FLUIDS_APART,
                                  N_ ("The intake tank was not filled for this job."));
    }
  g_assert_not_reached ();
}

static gboolean
may_start_atomiser (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  return unsoot_check_need (c, !rig->atomiser, UNSOOT_RULE_SENSE,
                            N_ ("The atomiser is already on."))
         && unsoot_check_need (c, unsoot_rig_engine_runs (rig), UNSOOT_RULE_ATOMISER_NEEDS_ENGINE,
                               N_ ("The engine is not running: never mist into a stopped engine."))
         && unsoot_check_need (c, rig->engine == UNSOOT_ENGINE_IDLE, UNSOOT_RULE_IDLE_FIRST,
                               N_ ("Mist is made into an idling engine: back to idle first."))
         && ignition_is_out (c)
         && unsoot_check_need (c, unsoot_rig_has_intake_adapter (rig), UNSOOT_RULE_AIR_PATH,
                               N_ ("No adapter is fitted to the intake."))
         && intake_tank_feeds (c)
         && unsoot_check_need (c, rig->air_pa > 0, UNSOOT_RULE_WINDOW,
                               N_ ("The atomiser's air is not set."))
         && unsoot_check_looked (c)
         && unsoot_check_need (c, !unsoot_rig_on_machine (rig) || rig->share[UNSOOT_SIDE_FUEL] < 1,
                               UNSOOT_RULE_ATOMISER_NEEDS_ENGINE,
                               N_ ("The fuel side is used up: the engine would stop under mist."));
}

gboolean
unsoot_check_start (const UnsootCheck *c)
{
  if (c->step->subject == UNSOOT_SUBJECT_KEY)
    return may_start_key (c);
  if (c->step->subject == UNSOOT_SUBJECT_ENGINE)
    return may_start_engine (c);
  return c->step->subject == UNSOOT_SUBJECT_PUMP ? may_start_pump (c) : may_start_atomiser (c);
}

static gboolean
may_stop_engine (const UnsootCheck *c)
{
  return unsoot_check_need (c, unsoot_rig_engine_runs (c->rig), UNSOOT_RULE_SENSE,
                            N_ ("The engine is already off."))
         && unsoot_check_need (c, !c->rig->atomiser, UNSOOT_RULE_STOP_ORDER,
                               N_ ("The atomiser goes off before the engine."))
         && unsoot_check_need (c, !unsoot_rig_air_charged (c->rig), UNSOOT_RULE_STOP_ORDER,
                               N_ ("The air goes to zero and is bled before the engine stops."));
}

gboolean
unsoot_check_stop (const UnsootCheck *c)
{
  gboolean runs = unsoot_rig_engine_runs (c->rig);

  if (c->step->subject == UNSOOT_SUBJECT_ENGINE)
    return may_stop_engine (c);
  if (c->step->subject == UNSOOT_SUBJECT_KEY)
    return unsoot_check_need (c, c->rig->key, UNSOOT_RULE_SENSE, N_ ("The key is already off."))
           && unsoot_check_need (c, !runs, UNSOOT_RULE_STOP_ORDER,
                                 N_ ("The engine stops before the key goes off."));
  if (c->step->subject == UNSOOT_SUBJECT_PUMP)
    return unsoot_check_need (c, c->rig->pump, UNSOOT_RULE_SENSE, N_ ("The pump is already off."))
           && unsoot_check_need (c, !runs, UNSOOT_RULE_STOP_ORDER,
                                 N_ ("The pump never stops under a running engine."));
  return unsoot_check_need (c, c->rig->atomiser, UNSOOT_RULE_SENSE,
                            N_ ("The atomiser is already off."));
}
