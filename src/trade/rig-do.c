/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a step changes, once it may be done. */
#include "rig-check.h"

void
unsoot_rig_pool (UnsootRig *rig, const UnsootFamilyFacts *facts)
{
  for (guint i = 0; i < facts->low_points->len; i++)
    if (unsoot_rig_change (rig, UNSOOT_SUBJECT_LOW_POINT, facts->low_points->pdata[i]) == NULL)
      unsoot_rig_add_change (rig, UNSOOT_SUBJECT_LOW_POINT, facts->low_points->pdata[i]);
  rig->oil_due = TRUE;
  rig->driven = FALSE;
}

/* Cleaner in the intake: beside the drain, idle first and a gentle raise. */
static void
wet_intake (UnsootRig *rig, const UnsootFamilyFacts *facts)
{
  unsoot_rig_pool (rig, facts);
  rig->idle_due = TRUE;
  rig->raise_due = TRUE;
}

/* Takes away what was put on or off; returns the side it belonged to. */
static UnsootSide
undo_change (UnsootRig *rig, const UnsootStep *step)
{
  UnsootSide side = unsoot_rig_change (rig, step->subject, step->name)->side;

  unsoot_rig_drop_change (rig, step->subject, step->name);
  return side;
}

static void
do_fitting (UnsootRig *rig, const UnsootStep *step)
{
  UnsootSide side = step->side;

  if (step->act == UNSOOT_ACT_FIT)
    {
      UnsootChange *change = unsoot_rig_add_change (rig, step->subject, step->name);
      change->place = g_strdup (step->place);
      change->side = side;
      change->closes = step->closes;
    }
  else
    side = undo_change (rig, step);
  if (step->subject != UNSOOT_SUBJECT_ADAPTER)
    return;
  if (side == UNSOOT_SIDE_FUEL)
    rig->look_due[side] = TRUE;
  else if (side == UNSOOT_SIDE_INTAKE)
    rig->look_due[side] = unsoot_rig_has_intake_adapter (rig);
}

static void
do_part (UnsootRig *rig, const UnsootStep *step)
{
  UnsootSide side = step->side;

  if (step->act == UNSOOT_ACT_TAKE_OFF)
    {
      UnsootChange *change = unsoot_rig_add_change (rig, step->subject, step->name);
      change->side = side;
      change->owes_gasket = step->new_gasket;
    }
  else
    side = undo_change (rig, step);
  if (side == UNSOOT_SIDE_FUEL)
    rig->look_due[side] = TRUE;
}

static void
do_replace (UnsootRig *rig, const UnsootStep *step)
{
  const char *part = step->place != NULL ? step->place : step->name;

  if (step->subject == UNSOOT_SUBJECT_OIL)
    {
      rig->oil_risen = FALSE;
      rig->oil_due = TRUE;
    }
  else if (step->subject == UNSOOT_SUBJECT_FILTER)
    rig->look_due[step->side] |= step->side == UNSOOT_SIDE_FUEL;
  else
    ((UnsootChange *) unsoot_rig_change (rig, UNSOOT_SUBJECT_PART, part))->owes_gasket = FALSE;
}

static void
do_line (UnsootRig *rig, const UnsootStep *step)
{
  UnsootLine line = UNSOOT_LINE_HIGH_PRESSURE;

  unsoot_line_from_slug (step->name, &line);
  rig->joined[line] = step->act == UNSOOT_ACT_JOIN;
  rig->look_due[UNSOOT_SIDE_FUEL] = TRUE;
  if (line == UNSOOT_LINE_MACHINE_SUPPLY || line == UNSOOT_LINE_MACHINE_RETURN)
    rig->primed = FALSE;
}

static void
do_mark (UnsootRig *rig, const UnsootStep *step, gboolean changed)
{
  if (changed)
    unsoot_rig_add_change (rig, step->subject, step->name);
  else
    unsoot_rig_drop_change (rig, step->subject, step->name);
}

static void
do_fill (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
         const UnsootEntry *entry)
{
  UnsootTank *tank = &rig->tank[step->side];

  if (tank->contents == UNSOOT_CONTENTS_CLEAN)
    rig->share[step->side] = 0;
  tank->contents = UNSOOT_CONTENTS_FRESH;
  tank->ml += unsoot_fill_ml (facts, step, entry);
  tank->used = TRUE;
  if (entry->lot_id != 0)
    tank->lot_id = entry->lot_id;
}

static void
do_drain (UnsootRig *rig, const UnsootStep *step)
{
  UnsootTank *tank = &rig->tank[step->side];

  if (step->subject == UNSOOT_SUBJECT_LOW_POINT)
    {
      unsoot_rig_drop_change (rig, step->subject, step->name);
      return;
    }
  if (tank->contents != UNSOOT_CONTENTS_CLEAN)
    tank->contents = UNSOOT_CONTENTS_EMPTY;
  tank->ml = 0;
  tank->lot_id = 0;
  if (step->side == UNSOOT_SIDE_FUEL)
    rig->primed = FALSE;
}

/* As soon as the engine runs on the machine, what comes back has its fuel in it. */
static void
start_engine (UnsootRig *rig)
{
  rig->engine = UNSOOT_ENGINE_IDLE;
  rig->pressure_bled = FALSE;
  if (!unsoot_rig_on_machine (rig))
    return;
  rig->tank[UNSOOT_SIDE_FUEL].contents = UNSOOT_CONTENTS_RETURNED;
  rig->tank[UNSOOT_SIDE_FUEL].used = TRUE;
}

static void
do_start (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step)
{
  if (step->subject == UNSOOT_SUBJECT_KEY)
    {
      rig->key = TRUE;
      rig->pressure_bled &= !unsoot_rig_lift_pump_live (rig, facts);
    }
  else if (step->subject == UNSOOT_SUBJECT_ENGINE)
    start_engine (rig);
  else if (step->subject == UNSOOT_SUBJECT_PUMP)
    {
      rig->pump = TRUE;
      rig->pressure_bled = FALSE;
      rig->look_due[UNSOOT_SIDE_FUEL] = TRUE;
      rig->tank[UNSOOT_SIDE_FUEL].used = TRUE;
    }
  else
    {
      rig->atomiser = TRUE;
      rig->tank[UNSOOT_SIDE_INTAKE].used = TRUE;
      wet_intake (rig, facts);
    }
}

static void
do_stop (UnsootRig *rig, const UnsootStep *step)
{
  if (step->subject == UNSOOT_SUBJECT_KEY)
    rig->key = FALSE;
  else if (step->subject == UNSOOT_SUBJECT_ENGINE)
    rig->engine = UNSOOT_ENGINE_OFF;
  else if (step->subject == UNSOOT_SUBJECT_PUMP)
    rig->pump = FALSE;
  else
    rig->atomiser = FALSE;
}

static void
do_set (UnsootRig *rig, const UnsootStep *step, double value)
{
  if (step->subject == UNSOOT_SUBJECT_SPEED)
    {
      gboolean raised = g_strcmp0 (step->name, UNSOOT_SPEED_RAISED) == 0;
      rig->engine = raised ? UNSOOT_ENGINE_RAISED : UNSOOT_ENGINE_IDLE;
      rig->raise_due &= !raised;
    }
  else if (step->subject == UNSOOT_SUBJECT_AIR)
    {
      rig->look_due[UNSOOT_SIDE_INTAKE] |= value > rig->air_pa;
      rig->air_bled &= value <= 0;
      rig->air_pa = MAX (value, 0);
    }
  else
    {
      rig->look_due[UNSOOT_SIDE_FUEL] |= value > rig->pressure_pa;
      rig->pressure_pa = MAX (value, 0);
    }
}

static void
do_run (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
        const UnsootEntry *entry)
{
  UnsootSide side = step->side;
  gint64 ml = entry->ml >= 0 ? entry->ml : unsoot_run_ml (rig, facts, step);

  if (side == UNSOOT_SIDE_NONE)
    {
      rig->idle_due &= rig->engine != UNSOOT_ENGINE_IDLE || unsoot_rig_must_drain (rig);
      return;
    }
  rig->used_ml[side] += ml;
  rig->tank[side].ml = MAX (rig->tank[side].ml - ml, 0);
  rig->share[side] = step->share;
}

static void
do_measure (UnsootRig *rig, const UnsootStep *step, const UnsootEntry *entry)
{
  if (step->subject == UNSOOT_SUBJECT_OIL)
    {
      rig->oil_due = FALSE;
      rig->oil_risen = entry->value >= 1;
    }
  else if (step->subject == UNSOOT_SUBJECT_TANK && entry->ml >= 0)
    rig->tank[step->side].ml = entry->ml;
}

static void
do_tank (UnsootRig *rig, const UnsootStep *step)
{
  rig->tank[step->side].contents
      = step->act == UNSOOT_ACT_FLUSH ? UNSOOT_CONTENTS_CLEAN : UNSOOT_CONTENTS_HELD;
}

/* Whether the vehicle is touched, so that a test before it no longer counts. */
static gboolean
undoes_test (const UnsootStep *step)
{
  switch (step->act)
    {
    case UNSOOT_ACT_START:
      return step->subject == UNSOOT_SUBJECT_PUMP || step->subject == UNSOOT_SUBJECT_ATOMISER;
    case UNSOOT_ACT_TAKE_OFF:
    case UNSOOT_ACT_REFIT:
    case UNSOOT_ACT_REPLACE:
    case UNSOOT_ACT_FIT:
    case UNSOOT_ACT_REMOVE:
    case UNSOOT_ACT_JOIN:
    case UNSOOT_ACT_PART:
    case UNSOOT_ACT_DISCONNECT:
    case UNSOOT_ACT_RECONNECT:
    case UNSOOT_ACT_DISABLE:
    case UNSOOT_ACT_ENABLE:
    case UNSOOT_ACT_OPEN:
    case UNSOOT_ACT_CLOSE:
    case UNSOOT_ACT_SOAK:
      return TRUE;
    case UNSOOT_ACT_DRAIN:
      return step->subject == UNSOOT_SUBJECT_LOW_POINT;
    case UNSOOT_ACT_BLEED:
    case UNSOOT_ACT_PRIME:
    case UNSOOT_ACT_FILL:
    case UNSOOT_ACT_FLUSH:
    case UNSOOT_ACT_HOLD:
    case UNSOOT_ACT_STOP:
    case UNSOOT_ACT_SET:
    case UNSOOT_ACT_RUN:
    case UNSOOT_ACT_LOOK:
    case UNSOOT_ACT_MEASURE:
    case UNSOOT_ACT_CLEAR:
    case UNSOOT_ACT_DRIVE:
      return FALSE;
    }
  g_assert_not_reached ();
}

void
unsoot_rig_do (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
               const UnsootEntry *entry)
{
  rig->driven &= !undoes_test (step);
  switch (step->act)
    {
    case UNSOOT_ACT_TAKE_OFF:
    case UNSOOT_ACT_REFIT:
      do_part (rig, step);
      break;
    case UNSOOT_ACT_REPLACE:
      do_replace (rig, step);
      break;
    case UNSOOT_ACT_FIT:
    case UNSOOT_ACT_REMOVE:
      do_fitting (rig, step);
      break;
    case UNSOOT_ACT_JOIN:
    case UNSOOT_ACT_PART:
      do_line (rig, step);
      break;
    case UNSOOT_ACT_BLEED:
      *(step->subject == UNSOOT_SUBJECT_AIR ? &rig->air_bled : &rig->pressure_bled) = TRUE;
      break;
    case UNSOOT_ACT_PRIME:
      rig->primed |= step->subject == UNSOOT_SUBJECT_PUMP;
      break;
    case UNSOOT_ACT_FILL:
      do_fill (rig, facts, step, entry);
      break;
    case UNSOOT_ACT_DRAIN:
      do_drain (rig, step);
      break;
    case UNSOOT_ACT_FLUSH:
    case UNSOOT_ACT_HOLD:
      do_tank (rig, step);
      break;
    case UNSOOT_ACT_DISCONNECT:
      rig->codes_due = TRUE;
      do_mark (rig, step, TRUE);
      break;
    case UNSOOT_ACT_RECONNECT:
      do_mark (rig, step, FALSE);
      break;
    case UNSOOT_ACT_DISABLE:
    case UNSOOT_ACT_OPEN:
      do_mark (rig, step, TRUE);
      break;
    case UNSOOT_ACT_ENABLE:
    case UNSOOT_ACT_CLOSE:
      do_mark (rig, step, FALSE);
      break;
    case UNSOOT_ACT_START:
      do_start (rig, facts, step);
      break;
    case UNSOOT_ACT_STOP:
      do_stop (rig, step);
      break;
    case UNSOOT_ACT_SET:
      do_set (rig, step, unsoot_check_value (step, entry));
      break;
    case UNSOOT_ACT_RUN:
      do_run (rig, facts, step, entry);
      break;
    case UNSOOT_ACT_SOAK:
      if (unsoot_rig_change (rig, UNSOOT_SUBJECT_PART, step->name) == NULL)
        wet_intake (rig, facts);
      break;
    case UNSOOT_ACT_LOOK:
      rig->look_due[step->side] = FALSE;
      break;
    case UNSOOT_ACT_MEASURE:
      do_measure (rig, step, entry);
      break;
    case UNSOOT_ACT_CLEAR:
      rig->codes_due = FALSE;
      break;
    case UNSOOT_ACT_DRIVE:
      rig->driven = TRUE;
      break;
    }
}
