/* SPDX-License-Identifier: GPL-3.0-or-later */
/* May a line be parted, joined, bled or primed now? */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

/* Which lines have to be parted before LINE finds its port free. */
static gboolean
port_is_free (const UnsootCheck *c, UnsootLine line)
{
  const gboolean *joined = c->rig->joined;
  gboolean is_free = FALSE;

  switch (line)
    {
    case UNSOOT_LINE_VEHICLE_SUPPLY:
      is_free = !joined[UNSOOT_LINE_MACHINE_SUPPLY] && !joined[UNSOOT_LINE_BYPASS];
      break;
    case UNSOOT_LINE_VEHICLE_RETURN:
      is_free = !joined[UNSOOT_LINE_MACHINE_RETURN] && !joined[UNSOOT_LINE_BYPASS];
      break;
    case UNSOOT_LINE_MACHINE_SUPPLY:
      is_free = !joined[UNSOOT_LINE_VEHICLE_SUPPLY];
      break;
    case UNSOOT_LINE_MACHINE_RETURN:
      is_free = !joined[UNSOOT_LINE_VEHICLE_RETURN];
      break;
    case UNSOOT_LINE_BYPASS:
      is_free = !joined[UNSOOT_LINE_VEHICLE_SUPPLY] && !joined[UNSOOT_LINE_VEHICLE_RETURN];
      break;
    case UNSOOT_LINE_HIGH_PRESSURE:
      break;
    }
  return unsoot_check_need (c, is_free, UNSOOT_RULE_SENSE,
                            N_ ("Another line is still on that connection."));
}

static gboolean
bypass_is_allowed (const UnsootCheck *c)
{
  return unsoot_check_need (c, c->facts->has_lift_pump, UNSOOT_RULE_SENSE,
                            N_ ("This family has no lift pump to bypass."))
         && unsoot_check_need (c, c->facts->lift_pump_bypass_allowed, UNSOOT_RULE_LIFT_PUMP,
                               N_ ("The maker forbids bypassing the lift pump: unplug it."));
}

static gboolean
may_touch (const UnsootCheck *c)
{
  UnsootLine line;
  gboolean joining = c->step->act == UNSOOT_ACT_JOIN;

  if (!unsoot_line_from_slug (c->step->name, &line))
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The step names no line that is known."));
  if (line == UNSOOT_LINE_HIGH_PRESSURE)
    return unsoot_check_refuse (c, UNSOOT_RULE_HIGH_PRESSURE,
                                N_ ("A high-pressure line must not be touched."));
  if (!unsoot_check_at_rest (c))
    return FALSE;
  if (joining && line == UNSOOT_LINE_BYPASS && !bypass_is_allowed (c))
    return FALSE;
  if (joining)
    return unsoot_check_need (c, !c->rig->joined[line], UNSOOT_RULE_SENSE,
                              N_ ("That line is already joined."))
           && port_is_free (c, line);
  return unsoot_check_need (c, c->rig->joined[line], UNSOOT_RULE_SENSE,
                            N_ ("That line is already parted."));
}

static gboolean
may_bleed (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  if (c->step->subject == UNSOOT_SUBJECT_AIR)
    return unsoot_check_need (c, !rig->atomiser, UNSOOT_RULE_STOP_ORDER,
                              N_ ("The atomiser is still on."))
           && unsoot_check_need (c, rig->air_pa <= 0, UNSOOT_RULE_STOP_ORDER,
                                 N_ ("Turn the air to zero, then bleed it."));
  return unsoot_check_need (c, !unsoot_rig_engine_runs (rig) && !rig->key, UNSOOT_RULE_STOP_ORDER,
                            N_ ("Engine and key go off before the fuel line is bled."))
         && unsoot_check_need (c, !rig->pump, UNSOOT_RULE_STOP_ORDER,
                               N_ ("The machine's pump goes off before the fuel line is bled."))
         && unsoot_check_need (c, rig->pressure_pa <= 0, UNSOOT_RULE_STOP_ORDER,
                               N_ ("Turn the fuel pressure to its minimum, then bleed it."));
}

static gboolean
may_prime (const UnsootCheck *c)
{
  UnsootLine line;

  if (c->step->subject == UNSOOT_SUBJECT_PUMP)
    return unsoot_check_need (c, c->rig->pump, UNSOOT_RULE_SENSE,
                              N_ ("The pump has to be on to be primed."));
  if (!unsoot_line_from_slug (c->step->name, &line))
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The step names no line that is known."));
  if (line == UNSOOT_LINE_HIGH_PRESSURE)
    return unsoot_check_refuse (c, UNSOOT_RULE_HIGH_PRESSURE,
                                N_ ("A high-pressure line must not be touched."));
  return unsoot_check_need (c, c->rig->joined[line], UNSOOT_RULE_SENSE,
                            N_ ("That line is parted: there is nothing to prime."))
         && unsoot_check_need (c, !unsoot_rig_engine_runs (c->rig), UNSOOT_RULE_SENSE,
                               N_ ("A line is primed by hand before the engine runs."));
}

gboolean
unsoot_check_line (const UnsootCheck *c)
{
  if (c->step->act == UNSOOT_ACT_BLEED)
    return may_bleed (c);
  return c->step->act == UNSOOT_ACT_PRIME ? may_prime (c) : may_touch (c);
}
