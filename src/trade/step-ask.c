/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "step-ask.h"

#include "rig-check.h"

static void
ask_pressure (UnsootAsk *ask, const UnsootStep *step, const UnsootFamilyFacts *facts)
{
  const gboolean air = step->subject == UNSOOT_SUBJECT_AIR;
  const UnsootUnit typed
      = step->unit != NULL ? unsoot_unit_from_words (step->unit) : UNSOOT_UNIT_NONE;

  ask->kind = UNSOOT_ASK_PRESSURE;
  /* The way back writes its pressures in Pa, which no gauge shows. */
  ask->unit = typed == UNSOOT_UNIT_NONE || typed == UNSOOT_UNIT_PA ? UNSOOT_UNIT_PSI : typed;
  ask->preset_pa = step->value;
  ask->least_pa = air ? UNSOOT_AIR_LEAST_PA : facts->window_min_pa;
  ask->most_pa = air ? UNSOOT_AIR_MOST_PA : facts->window_max_pa;
}

static void
ask_volume (UnsootAsk *ask, UnsootAskKind kind, gint64 preset_ml, gint64 most_ml)
{
  ask->kind = kind;
  ask->preset_ml = preset_ml;
  ask->most_ml = most_ml;
}

static void
ask_fill (UnsootAsk *ask, const UnsootStep *step, const UnsootFamilyFacts *facts,
          const UnsootRig *rig)
{
  const UnsootEntry none = UNSOOT_ENTRY_NONE;
  const UnsootTank *tank = &rig->tank[step->side];
  const gint64 room = tank->capacity_ml > 0 ? MAX (tank->capacity_ml - tank->ml, 0) : -1;

  ask_volume (ask, UNSOOT_ASK_LOT, unsoot_fill_ml (facts, step, &none), room);
}

static void
ask_measure (UnsootAsk *ask, const UnsootStep *step, const UnsootRig *rig)
{
  const UnsootTank *tank = &rig->tank[step->side];

  if (step->subject == UNSOOT_SUBJECT_OIL)
    ask->kind = UNSOOT_ASK_OIL;
  else if (step->subject == UNSOOT_SUBJECT_TANK)
    ask_volume (ask, UNSOOT_ASK_LEFT, MAX (tank->ml, 0),
                tank->capacity_ml > 0 ? tank->capacity_ml : -1);
  else
    ask->kind = UNSOOT_ASK_NOTE;
}

UnsootAsk
unsoot_step_ask (const UnsootStep *step, const UnsootFamilyFacts *facts, const UnsootRig *rig)
{
  UnsootAsk ask = { .kind = UNSOOT_ASK_NOTHING,
                    .side = step->side,
                    .preset_pa = (double) NAN,
                    .least_pa = (double) NAN,
                    .most_pa = (double) NAN,
                    .preset_ml = -1,
                    .most_ml = -1 };
  const gboolean gauge
      = step->subject == UNSOOT_SUBJECT_PRESSURE || step->subject == UNSOOT_SUBJECT_AIR;

  if (step->act == UNSOOT_ACT_SET && gauge && step->value > 0)
    ask_pressure (&ask, step, facts);
  else if (step->act == UNSOOT_ACT_FILL)
    ask_fill (&ask, step, facts, rig);
  else if (step->act == UNSOOT_ACT_MEASURE)
    ask_measure (&ask, step, rig);
  else if (step->act == UNSOOT_ACT_HOLD)
    ask.kind = UNSOOT_ASK_LABEL;
  else if (step->act == UNSOOT_ACT_RUN && step->side != UNSOOT_SIDE_NONE)
    ask_volume (&ask, UNSOOT_ASK_USED, unsoot_run_ml (rig, facts, step),
                MAX (rig->tank[step->side].ml, 0));
  return ask;
}
