/* SPDX-License-Identifier: GPL-3.0-or-later */
/* May a tank be filled, drained, flushed or kept; may a low point be drained? */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

gint64
unsoot_fill_ml (const UnsootFamilyFacts *facts, const UnsootStep *step, const UnsootEntry *entry)
{
  double share = isnan (step->share) ? 1.0 : step->share;

  if (entry->ml >= 0)
    return entry->ml;
  return (gint64) lround (share * (double) facts->dose_ml[step->side]);
}

static const UnsootTank *
tank_of (const UnsootCheck *c)
{
  return &c->rig->tank[c->step->side];
}

/* Nothing is poured into or let out of a tank that is being drawn from. */
static gboolean
tank_is_still (const UnsootCheck *c)
{
  if (c->step->side == UNSOOT_SIDE_FUEL)
    return unsoot_check_need (c, !c->rig->pump, UNSOOT_RULE_STOP_ORDER,
                              N_ ("The pump still draws from that tank."));
  return unsoot_check_need (c, !c->rig->atomiser, UNSOOT_RULE_STOP_ORDER,
                            N_ ("The atomiser still draws from that tank."));
}

static gboolean
fluid_belongs (const UnsootCheck *c)
{
  UnsootSide side = c->step->side;
  gboolean wrong = (c->step->fluid != UNSOOT_SIDE_NONE && c->step->fluid != side)
                   || (c->entry->fluid != UNSOOT_SIDE_NONE && c->entry->fluid != side);

  return unsoot_check_need (c, !wrong, UNSOOT_RULE_FLUIDS_APART,
                            side == UNSOOT_SIDE_FUEL
                                ? N_ ("An intake fluid must not enter the fuel side's tank.")
                                : N_ ("A fuel fluid must not enter the intake side's tank."));
}

static gboolean
contents_take_more (const UnsootCheck *c)
{
  switch (tank_of (c)->contents)
    {
    case UNSOOT_CONTENTS_CLEAN:
    case UNSOOT_CONTENTS_FRESH:
      return TRUE;
    case UNSOOT_CONTENTS_EMPTY:
      return unsoot_check_refuse (c, UNSOOT_RULE_FLUIDS_APART,
                                  N_ ("The tank is drained but not flushed."));
    case UNSOOT_CONTENTS_UNKNOWN:
      return unsoot_check_refuse (
          c, UNSOOT_RULE_FLUIDS_APART,
          N_ ("What is in the tank is not known: it may be another vehicle's return."));
    case UNSOOT_CONTENTS_RETURNED:
      return unsoot_check_refuse (
          c, UNSOOT_RULE_FLUIDS_APART,
          N_ ("The tank holds returned fluid: nothing is topped up on it."));
    case UNSOOT_CONTENTS_HELD:
      return unsoot_check_refuse (c, UNSOOT_RULE_FLUIDS_APART,
                                  N_ ("The tank holds fluid that is kept under a label."));
    }
  g_assert_not_reached ();
}

static gboolean
may_fill (const UnsootCheck *c)
{
  const UnsootTank *tank = tank_of (c);
  gint64 ml = unsoot_fill_ml (c->facts, c->step, c->entry);

  return fluid_belongs (c) && tank_is_still (c) && contents_take_more (c)
         && unsoot_check_need (c, ml > 0, UNSOOT_RULE_TANK_RUNS_DRY,
                               N_ ("No dose is entered: the lead technician has to enter it."))
         && unsoot_check_need (c, tank->capacity_ml <= 0 || tank->ml + ml <= tank->capacity_ml,
                               UNSOOT_RULE_SENSE, N_ ("The tank doesn't hold that much."));
}

static gboolean
may_flush (const UnsootCheck *c)
{
  UnsootContents contents = tank_of (c)->contents;

  return tank_is_still (c)
         && unsoot_check_need (
             c, contents == UNSOOT_CONTENTS_EMPTY || contents == UNSOOT_CONTENTS_CLEAN,
             UNSOOT_RULE_FLUIDS_APART, N_ ("Drain the tank before it is flushed."));
}

static gboolean
may_hold (const UnsootCheck *c)
{
  UnsootContents contents = tank_of (c)->contents;

  return tank_is_still (c)
         && unsoot_check_need (
             c, contents == UNSOOT_CONTENTS_FRESH || contents == UNSOOT_CONTENTS_RETURNED,
             UNSOOT_RULE_SENSE, N_ ("There is nothing of this job in the tank to keep."));
}

static gboolean
may_drain_low_point (const UnsootCheck *c)
{
  for (guint i = 0; i < c->facts->low_points->len; i++)
    if (g_strcmp0 (c->facts->low_points->pdata[i], c->step->name) == 0)
      return unsoot_check_machine_off (c);
  return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("This family has no such low point."));
}

gboolean
unsoot_check_tank (const UnsootCheck *c)
{
  if (c->step->subject == UNSOOT_SUBJECT_LOW_POINT)
    return may_drain_low_point (c);
  if (c->step->side == UNSOOT_SIDE_NONE)
    return unsoot_check_refuse (c, UNSOOT_RULE_SENSE, N_ ("The step doesn't say which tank."));
  if (c->step->act == UNSOOT_ACT_FILL)
    return may_fill (c);
  if (c->step->act == UNSOOT_ACT_FLUSH)
    return may_flush (c);
  return c->step->act == UNSOOT_ACT_HOLD ? may_hold (c) : tank_is_still (c);
}
