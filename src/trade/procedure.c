/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedure.h"

#include <glib/gi18n-lib.h>

#include "rig.h"

static void
free_phase (gpointer data)
{
  UnsootPhase *phase = data;

  g_free (phase->title);
  g_free (phase);
}

UnsootProcedure *
unsoot_procedure_new (const char *title)
{
  UnsootProcedure *procedure = g_new0 (UnsootProcedure, 1);

  procedure->title = g_strdup (title);
  procedure->phases = g_ptr_array_new_with_free_func (free_phase);
  procedure->steps = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_step_free);
  return procedure;
}

int
unsoot_procedure_add_phase (UnsootProcedure *procedure, const char *title, guint cautions)
{
  UnsootPhase *phase = g_new0 (UnsootPhase, 1);

  phase->title = g_strdup (title);
  phase->cautions = cautions;
  g_ptr_array_add (procedure->phases, phase);
  return (int) procedure->phases->len - 1;
}

void
unsoot_procedure_add_step (UnsootProcedure *procedure, UnsootStep *step)
{
  if (step->phase < 0)
    step->phase = (int) procedure->phases->len - 1;
  g_ptr_array_add (procedure->steps, step);
}

UnsootProcedure *
unsoot_procedure_copy (const UnsootProcedure *procedure)
{
  UnsootProcedure *copy = unsoot_procedure_new (procedure->title);

  for (int side = 0; side < UNSOOT_SIDES; side++)
    copy->cleans[side] = procedure->cleans[side];
  for (guint i = 0; i < procedure->phases->len; i++)
    {
      const UnsootPhase *phase = procedure->phases->pdata[i];
      unsoot_procedure_add_phase (copy, phase->title, phase->cautions);
    }
  for (guint i = 0; i < procedure->steps->len; i++)
    g_ptr_array_add (copy->steps, unsoot_step_copy (procedure->steps->pdata[i]));
  return copy;
}

static gboolean
same_phases (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const UnsootPhase *one = a->pdata[i], *other = b->pdata[i];
      if (g_strcmp0 (one->title, other->title) != 0 || one->cautions != other->cautions)
        return FALSE;
    }
  return TRUE;
}

static gboolean
same_steps (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (!unsoot_step_equal (a->pdata[i], b->pdata[i]))
      return FALSE;
  return TRUE;
}

gboolean
unsoot_procedure_equal (const UnsootProcedure *a, const UnsootProcedure *b)
{
  return g_strcmp0 (a->title, b->title) == 0
         && !a->cleans[UNSOOT_SIDE_FUEL] == !b->cleans[UNSOOT_SIDE_FUEL]
         && !a->cleans[UNSOOT_SIDE_INTAKE] == !b->cleans[UNSOOT_SIDE_INTAKE]
         && same_phases (a->phases, b->phases) && same_steps (a->steps, b->steps);
}

void
unsoot_procedure_free (UnsootProcedure *procedure)
{
  if (procedure == NULL)
    return;
  g_free (procedure->title);
  g_ptr_array_unref (procedure->phases);
  g_ptr_array_unref (procedure->steps);
  g_free (procedure);
}

const UnsootStep *
unsoot_procedure_step (const UnsootProcedure *procedure, int step)
{
  g_return_val_if_fail (step >= 0 && step < (int) procedure->steps->len, NULL);
  return procedure->steps->pdata[step];
}

const UnsootPhase *
unsoot_procedure_phase (const UnsootProcedure *procedure, int phase)
{
  g_return_val_if_fail (phase >= 0 && phase < (int) procedure->phases->len, NULL);
  return procedure->phases->pdata[phase];
}

/* Takes what FAULT holds. */
static void
add_fault (GArray *faults, UnsootFault *fault, int step)
{
  fault->step = step;
  if (faults != NULL)
    g_array_append_val (faults, *fault);
  else
    g_free (fault->reason);
  *fault = (UnsootFault) UNSOOT_FAULT_INIT;
}

/* A side that is named but never run would be sold and not done. */
static gboolean
sides_are_run (const UnsootProcedure *procedure, const UnsootRig *rig, GArray *faults)
{
  gboolean all = TRUE;

  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    if (procedure->cleans[side] && !(rig->share[side] > 0))
      {
        UnsootFault fault = { -1, UNSOOT_RULE_SENSE, NULL };
        fault.reason
            = g_strdup (side == UNSOOT_SIDE_FUEL
                            ? _ ("It says that it cleans the fuel side, and never runs it.")
                            : _ ("It says that it cleans the intake, and never runs it."));
        add_fault (faults, &fault, (int) procedure->steps->len);
        all = FALSE;
      }
  return all;
}

gboolean
unsoot_procedure_check (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                        GArray *faults)
{
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  gboolean passed = TRUE;

  for (guint i = 0; i < procedure->steps->len; i++)
    {
      UnsootFault fault = UNSOOT_FAULT_INIT;
      if (unsoot_rig_apply (rig, facts, procedure->steps->pdata[i], NULL, &fault))
        continue;
      add_fault (faults, &fault, (int) i);
      passed = FALSE;
    }
  if (!passed)
    return FALSE;
  passed = unsoot_rig_finish_faults (rig, facts, procedure, faults);
  return sides_are_run (procedure, rig, faults) && passed;
}
