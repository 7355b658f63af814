/* SPDX-License-Identifier: GPL-3.0-or-later */
/* May a part, fitting, lead, heater or valve of the vehicle be touched now? */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

static gboolean
is_named (const UnsootCheck *c)
{
  return unsoot_check_need (c, c->step->name != NULL && *c->step->name != '\0', UNSOOT_RULE_SENSE,
                            N_ ("The step doesn't say which one."));
}

/* A cover needs a stopped engine; the intake needs the machine off; fuel needs it bled. */
static gboolean
path_is_at_rest (const UnsootCheck *c, UnsootSide side)
{
  switch (side)
    {
    case UNSOOT_SIDE_NONE:
      return unsoot_check_stopped (c);
    case UNSOOT_SIDE_INTAKE:
      return unsoot_check_machine_off (c);
    case UNSOOT_SIDE_FUEL:
      return unsoot_check_at_rest (c);
    }
  g_assert_not_reached ();
}

static gboolean
may_take_off (const UnsootCheck *c)
{
  if (unsoot_rig_change (c->rig, UNSOOT_SUBJECT_PART, c->step->name) != NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is already off."),
                                      c->step->name);
  return path_is_at_rest (c, c->step->side);
}

static gboolean
carries_nothing (const UnsootCheck *c)
{
  static const UnsootSubject fittings[]
      = { UNSOOT_SUBJECT_TOOL, UNSOOT_SUBJECT_GUARD, UNSOOT_SUBJECT_ADAPTER };

  for (guint i = 0; i < G_N_ELEMENTS (fittings); i++)
    {
      const UnsootChange *fitting = unsoot_rig_at_place (c->rig, fittings[i], c->step->name);
      if (fitting != NULL)
        return unsoot_check_refuse_about (c, UNSOOT_RULE_EVERYTHING_BACK,
                                          _ ("“%s” still sits in its opening."), fitting->name);
    }
  return TRUE;
}

static gboolean
may_refit (const UnsootCheck *c)
{
  const UnsootChange *part = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_PART, c->step->name);

  if (part == NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is not off."), c->step->name);
  if (part->owes_gasket)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_EVERYTHING_BACK,
                                      _ ("“%s” needs its new gasket first."), c->step->name);
  return carries_nothing (c) && path_is_at_rest (c, part->side);
}

static gboolean
may_replace (const UnsootCheck *c)
{
  const char *part = c->step->place != NULL ? c->step->place : c->step->name;

  if (c->step->subject == UNSOOT_SUBJECT_OIL)
    return unsoot_check_stopped (c);
  if (!is_named (c))
    return FALSE;
  if (c->step->subject == UNSOOT_SUBJECT_FILTER)
    return path_is_at_rest (c, c->step->side);
  if (unsoot_rig_change (c->rig, UNSOOT_SUBJECT_PART, part) == NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE,
                                      _ ("“%s” is not off: its gasket can't be reached."), part);
  return TRUE;
}

/* Tools and guards ask for a stopped engine, adapters for everything their side has. */
static gboolean
fitting_is_at_rest (const UnsootCheck *c, UnsootSide side)
{
  if (c->step->subject != UNSOOT_SUBJECT_ADAPTER)
    return unsoot_check_stopped (c);
  return side == UNSOOT_SIDE_FUEL ? unsoot_check_at_rest (c) : unsoot_check_machine_off (c);
}

static gboolean
may_fit (const UnsootCheck *c)
{
  if (unsoot_rig_change (c->rig, c->step->subject, c->step->name) != NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is already on."),
                                      c->step->name);
  return fitting_is_at_rest (c, c->step->side);
}

static gboolean
may_remove (const UnsootCheck *c)
{
  const UnsootChange *fitting = unsoot_rig_change (c->rig, c->step->subject, c->step->name);

  if (fitting == NULL)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is not on."), c->step->name);
  return fitting_is_at_rest (c, fitting->side);
}

static gboolean
may_move_lead (const UnsootCheck *c)
{
  gboolean off = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_LEAD, c->step->name) != NULL;
  gboolean wanted_off = c->step->act == UNSOOT_ACT_RECONNECT;

  if (g_strcmp0 (c->step->name, UNSOOT_LEAD_LIFT_PUMP) == 0 && !c->facts->has_lift_pump)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("This family has no lift pump."));
  if (off != wanted_off)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE,
                                      off ? _ ("“%s” is already off.") : _ ("“%s” is not off."),
                                      c->step->name);
  return unsoot_check_stopped (c);
}

static gboolean
may_switch_burner (const UnsootCheck *c)
{
  UnsootSubject burner = c->step->subject;
  gboolean heater = burner == UNSOOT_SUBJECT_HEATER;
  gboolean has = heater ? c->facts->has_heater : c->facts->has_regeneration;
  gboolean disabled = unsoot_rig_change (c->rig, burner, NULL) != NULL;

  if (!has)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE,
                                heater ? N_ ("This family has no intake heater.")
                                       : N_ ("This family has no regeneration."));
  if (c->step->act == UNSOOT_ACT_DISABLE)
    return unsoot_check_need (c, !disabled, UNSOOT_RULE_SENSE, N_ ("It is already disabled."));
  return unsoot_check_need (c, disabled, UNSOOT_RULE_SENSE, N_ ("It is not disabled."))
         && unsoot_check_need (c, !c->rig->atomiser, UNSOOT_RULE_IGNITION_OUT,
                               N_ ("The atomiser is on: mist and an ignition source."));
}

static gboolean
may_turn_valve (const UnsootCheck *c)
{
  gboolean open = unsoot_rig_change (c->rig, UNSOOT_SUBJECT_VALVE, c->step->name) != NULL;

  if (c->step->act == UNSOOT_ACT_OPEN && open)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is already open."),
                                      c->step->name);
  if (c->step->act == UNSOOT_ACT_CLOSE && !open)
    return unsoot_check_refuse_about (c, UNSOOT_RULE_SENSE, _ ("“%s” is not open."), c->step->name);
  return TRUE;
}

gboolean
unsoot_check_vehicle (const UnsootCheck *c)
{
  UnsootAct act = c->step->act;

  if (act == UNSOOT_ACT_REPLACE)
    return may_replace (c);
  if (act == UNSOOT_ACT_DISABLE || act == UNSOOT_ACT_ENABLE)
    return may_switch_burner (c);
  if (!is_named (c))
    return FALSE;
  if (act == UNSOOT_ACT_TAKE_OFF)
    return may_take_off (c);
  if (act == UNSOOT_ACT_REFIT)
    return may_refit (c);
  if (act == UNSOOT_ACT_FIT)
    return may_fit (c);
  if (act == UNSOOT_ACT_REMOVE)
    return may_remove (c);
  if (act == UNSOOT_ACT_OPEN || act == UNSOOT_ACT_CLOSE)
    return may_turn_valve (c);
  return may_move_lead (c);
}
