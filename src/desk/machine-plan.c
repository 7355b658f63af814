/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machine-plan.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "format.h"
#include "unit.h"

enum
{
  EDGE = 6,
  TOUCH = 48
};

/* Three rows: tanks, what moves their fluid, the engine. Two columns: the sides; the air comes
 * in between. */
void
unsoot_machine_plan (float width, float height, UnsootMachinePlan *plan)
{
  const float w = MAX (width, UNSOOT_MACHINE_LEAST_WIDTH);
  const float h = MAX (height, UNSOOT_MACHINE_LEAST_HEIGHT);
  const float gap = (h - 3 * TOUCH - 2 * EDGE) / 2;
  const float tank_width = w * 0.36f;
  const float right = w - EDGE - tank_width;
  const float middle = EDGE + TOUCH + gap, low = h - EDGE - TOUCH;
  const float left_axis = EDGE + tank_width / 2, right_axis = right + tank_width / 2;
  const float tank_foot = EDGE + TOUCH + gap * 0.45f;

  plan->part[UNSOOT_PART_FUEL_TANK] = GRAPHENE_RECT_INIT (EDGE, EDGE, tank_width, tank_foot - EDGE);
  plan->part[UNSOOT_PART_INTAKE_TANK]
      = GRAPHENE_RECT_INIT (right, EDGE, tank_width, tank_foot - EDGE);
  plan->part[UNSOOT_PART_PUMP] = GRAPHENE_RECT_INIT (left_axis - TOUCH / 2, middle, TOUCH, TOUCH);
  plan->part[UNSOOT_PART_ATOMISER]
      = GRAPHENE_RECT_INIT (right_axis - TOUCH / 2, middle, TOUCH, TOUCH);
  plan->part[UNSOOT_PART_AIR] = GRAPHENE_RECT_INIT (w / 2 - TOUCH / 2, EDGE, TOUCH, TOUCH);
  plan->part[UNSOOT_PART_ENGINE] = GRAPHENE_RECT_INIT (EDGE + 18, low, w - 2 * EDGE - 36, TOUCH);

  const graphene_point_t hoses[UNSOOT_MACHINE_HOSES][UNSOOT_HOSE_POINTS] = {
    [UNSOOT_HOSE_SUPPLY] = { { left_axis, tank_foot },
                             { left_axis, middle },
                             { left_axis, middle + TOUCH },
                             { left_axis, low } },
    [UNSOOT_HOSE_RETURN] = { { left_axis + TOUCH / 2 + 12, low },
                             { left_axis + TOUCH / 2 + 12, (middle + low) / 2 },
                             { left_axis + TOUCH / 2 + 12, middle },
                             { left_axis + TOUCH / 2 + 12, tank_foot } },
    [UNSOOT_HOSE_MIST] = { { right_axis, tank_foot },
                           { right_axis, middle },
                           { right_axis, middle + TOUCH },
                           { right_axis, low } },
    [UNSOOT_HOSE_AIR] = { { w / 2, EDGE + TOUCH },
                          { w / 2, middle + TOUCH / 2 },
                          { (w / 2 + right_axis - TOUCH / 2) / 2, middle + TOUCH / 2 },
                          { right_axis - TOUCH / 2, middle + TOUCH / 2 } },
  };
  memcpy (plan->hose, hoses, sizeof hoses);
}

void
unsoot_machine_level (const graphene_rect_t *tank, const UnsootTank *what, graphene_rect_t *level)
{
  const gint64 whole = what->capacity_ml > 0 ? what->capacity_ml : 2 * what->ml;
  const float share = whole > 0 ? CLAMP ((float) what->ml / (float) whole, 0.0f, 1.0f) : 0.0f;
  const float height = tank->size.height * share;

  *level = GRAPHENE_RECT_INIT (tank->origin.x, tank->origin.y + tank->size.height - height,
                               tank->size.width, height);
}

void
unsoot_machine_state (const UnsootRig *rig, UnsootMachineState *state)
{
  const gboolean runs = unsoot_rig_engine_runs (rig);
  const gboolean adapter = unsoot_rig_change (rig, UNSOOT_SUBJECT_ADAPTER, NULL) != NULL;

  *state = (UnsootMachineState){ .raised = rig->engine == UNSOOT_ENGINE_RAISED,
                                 .pressure_pa = rig->pressure_pa,
                                 .air_pa = rig->air_pa };
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    state->tank[side] = rig->tank[side];
  state->on[UNSOOT_PART_PUMP] = rig->pump;
  state->on[UNSOOT_PART_ATOMISER] = rig->atomiser;
  state->on[UNSOOT_PART_AIR] = rig->air_pa > 0;
  state->on[UNSOOT_PART_ENGINE] = runs;
  state->joined[UNSOOT_HOSE_SUPPLY] = rig->joined[UNSOOT_LINE_MACHINE_SUPPLY];
  state->joined[UNSOOT_HOSE_RETURN] = rig->joined[UNSOOT_LINE_MACHINE_RETURN];
  state->joined[UNSOOT_HOSE_MIST] = state->joined[UNSOOT_HOSE_AIR] = adapter;
  state->flows[UNSOOT_HOSE_SUPPLY] = rig->pump && state->joined[UNSOOT_HOSE_SUPPLY];
  state->flows[UNSOOT_HOSE_RETURN] = rig->pump && state->joined[UNSOOT_HOSE_RETURN];
  state->flows[UNSOOT_HOSE_MIST] = rig->atomiser;
  state->flows[UNSOOT_HOSE_AIR] = rig->atomiser && rig->air_pa > 0;
}

gboolean
unsoot_machine_state_moves (const UnsootMachineState *state)
{
  for (int hose = 0; hose < UNSOOT_MACHINE_HOSES; hose++)
    if (state->flows[hose])
      return TRUE;
  return state->on[UNSOOT_PART_ENGINE];
}

static gboolean
same_tank (const UnsootTank *a, const UnsootTank *b)
{
  return a->contents == b->contents && a->ml == b->ml && a->capacity_ml == b->capacity_ml;
}

gboolean
unsoot_machine_state_equal (const UnsootMachineState *a, const UnsootMachineState *b)
{
  return same_tank (&a->tank[UNSOOT_SIDE_FUEL], &b->tank[UNSOOT_SIDE_FUEL])
         && same_tank (&a->tank[UNSOOT_SIDE_INTAKE], &b->tank[UNSOOT_SIDE_INTAKE])
         && memcmp (a->on, b->on, sizeof a->on) == 0
         && memcmp (a->joined, b->joined, sizeof a->joined) == 0
         && memcmp (a->flows, b->flows, sizeof a->flows) == 0 && a->raised == b->raised
         && fabs (a->pressure_pa - b->pressure_pa) < 1 && fabs (a->air_pa - b->air_pa) < 1;
}

/* The act that would switch the part over; NULL for what is not switched. */
static UnsootStep *
switching (const UnsootRig *rig, UnsootMachinePart part)
{
  UnsootStep *step;

  switch (part)
    {
    case UNSOOT_PART_PUMP:
      return unsoot_step_new (rig->pump ? UNSOOT_ACT_STOP : UNSOOT_ACT_START, UNSOOT_SUBJECT_PUMP,
                              NULL);
    case UNSOOT_PART_ATOMISER:
      return unsoot_step_new (rig->atomiser ? UNSOOT_ACT_STOP : UNSOOT_ACT_START,
                              UNSOOT_SUBJECT_ATOMISER, NULL);
    case UNSOOT_PART_ENGINE:
      return unsoot_step_new (unsoot_rig_engine_runs (rig) ? UNSOOT_ACT_STOP : UNSOOT_ACT_START,
                              UNSOOT_SUBJECT_ENGINE, NULL);
    case UNSOOT_PART_AIR:
      step = unsoot_step_new (UNSOOT_ACT_SET, UNSOOT_SUBJECT_AIR, NULL);
      step->value = rig->air_pa > 0 ? 0 : UNSOOT_AIR_NOMINAL_PA;
      return step;
    case UNSOOT_PART_FUEL_TANK:
    case UNSOOT_PART_INTAKE_TANK:
      return NULL;
    }
  g_return_val_if_reached (NULL);
}

char *
unsoot_machine_lock (const UnsootRun *run, UnsootMachinePart part)
{
  g_autoptr (UnsootStep) step = switching (unsoot_run_rig (run), part);
  g_auto (UnsootFault) fault = UNSOOT_FAULT_INIT;

  if (step == NULL || unsoot_run_allows (run, step, NULL, &fault))
    return NULL;
  return unsoot_fault_sentence (&fault);
}

static char *
tank_words (const char *name, const UnsootTank *tank)
{
  g_autofree char *litres = unsoot_format_litres (tank->ml);

  if (tank->ml <= 0)
    return g_strdup_printf ("%s, %s", name, unsoot_contents_label (tank->contents));
  return g_strdup_printf ("%s, %s, %s", name, litres, unsoot_contents_label (tank->contents));
}

/* A gauge as the bay reads it, where it shows anything. */
static char *
gauge_words (const char *name, double pa)
{
  g_autofree char *psi = unsoot_format_number (unsoot_unit_from_si (UNSOOT_UNIT_PSI, pa), 1);

  if (pa <= 0)
    return g_strdup_printf (_ ("%s, off"), name);
  return g_strdup_printf ("%s, %s psi", name, psi);
}

char *
unsoot_machine_part_words (const UnsootMachineState *state, UnsootMachinePart part)
{
  switch (part)
    {
    case UNSOOT_PART_FUEL_TANK:
      return tank_words (_ ("Fuel tank"), &state->tank[UNSOOT_SIDE_FUEL]);
    case UNSOOT_PART_INTAKE_TANK:
      return tank_words (_ ("Intake tank"), &state->tank[UNSOOT_SIDE_INTAKE]);
    case UNSOOT_PART_PUMP:
      if (state->on[part] && state->pressure_pa > 0)
        return gauge_words (_ ("Pump"), state->pressure_pa);
      return g_strdup (state->on[part] ? _ ("Pump, on") : _ ("Pump, off"));
    case UNSOOT_PART_ATOMISER:
      return g_strdup (state->on[part] ? _ ("Atomiser, on") : _ ("Atomiser, off"));
    case UNSOOT_PART_AIR:
      return gauge_words (_ ("Air"), state->air_pa);
    case UNSOOT_PART_ENGINE:
      if (state->raised)
        return g_strdup (_ ("Engine, speed raised"));
      return g_strdup (state->on[part] ? _ ("Engine, idling") : _ ("Engine, off"));
    }
  g_return_val_if_reached (g_strdup (""));
}
