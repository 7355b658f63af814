/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What forbids a job to be finished. */
#include <glib/gi18n-lib.h>

#include "rig-check.h"

typedef struct
{
  const UnsootRig *rig;
  int step;
  GArray *faults;
  gboolean clean;
} Finish;

static void
blame (Finish *finish, gboolean wrong, UnsootRule rule, const char *reason)
{
  UnsootFault fault = { finish->step, rule, NULL };

  if (!wrong)
    return;
  finish->clean = FALSE;
  if (finish->faults == NULL)
    return;
  fault.reason = g_strdup (reason);
  g_array_append_val (finish->faults, fault);
}

static void
check_machine (Finish *finish)
{
  const UnsootRig *rig = finish->rig;

  blame (finish, rig->atomiser, UNSOOT_RULE_STOP_ORDER, _ ("The atomiser is still on."));
  blame (finish, unsoot_rig_air_charged (rig), UNSOOT_RULE_STOP_ORDER,
         _ ("The atomiser's air is still charged."));
  blame (finish, unsoot_rig_engine_runs (rig), UNSOOT_RULE_STOP_ORDER,
         _ ("The engine is still running."));
  blame (finish, rig->key, UNSOOT_RULE_STOP_ORDER, _ ("The key is still on."));
  blame (finish, rig->pump, UNSOOT_RULE_STOP_ORDER, _ ("The machine's pump is still on."));
  blame (finish, rig->pressure_pa > 0, UNSOOT_RULE_STOP_ORDER,
         _ ("The machine's fuel pressure is not at its minimum."));
}

static void
check_changes (Finish *finish)
{
  for (guint i = 0; i < finish->rig->changes->len; i++)
    {
      const UnsootChange *change = finish->rig->changes->pdata[i];
      gboolean low_point = change->subject == UNSOOT_SUBJECT_LOW_POINT;
      g_autofree char *reason = unsoot_rig_change_words (change);
      blame (finish, TRUE, low_point ? UNSOOT_RULE_DRAIN_BEFORE_START : UNSOOT_RULE_EVERYTHING_BACK,
             reason);
    }
}

static void
check_lines (Finish *finish)
{
  for (int line = 0; line < UNSOOT_LINES; line++)
    {
      g_autofree char *reason = unsoot_rig_line_words (finish->rig, (UnsootLine) line);
      blame (finish, reason != NULL, UNSOOT_RULE_EVERYTHING_BACK, reason);
    }
}

static gboolean
is_unaccounted (const UnsootTank *tank)
{
  return tank->used && tank->contents != UNSOOT_CONTENTS_EMPTY
         && tank->contents != UNSOOT_CONTENTS_CLEAN && tank->contents != UNSOOT_CONTENTS_HELD;
}

static void
check_tanks (Finish *finish)
{
  blame (finish, is_unaccounted (&finish->rig->tank[UNSOOT_SIDE_FUEL]), UNSOOT_RULE_FLUIDS_APART,
         _ ("What is left in the fuel tank is neither drained nor kept under a label."));
  blame (finish, is_unaccounted (&finish->rig->tank[UNSOOT_SIDE_INTAKE]), UNSOOT_RULE_FLUIDS_APART,
         _ ("What is left in the intake tank is neither drained nor kept under a label."));
}

static void
check_engine (Finish *finish, const UnsootFamilyFacts *facts)
{
  const UnsootRig *rig = finish->rig;

  blame (finish, rig->look_due[UNSOOT_SIDE_FUEL], UNSOOT_RULE_LEAK_LOOK,
         _ ("The fuel lines have not been looked at since they were last touched."));
  blame (finish, rig->look_due[UNSOOT_SIDE_INTAKE], UNSOOT_RULE_LEAK_LOOK,
         _ ("The air hose has not been looked at since it was last touched."));
  blame (finish, rig->codes_due, UNSOOT_RULE_EVERYTHING_BACK,
         _ ("A lead was off: its codes are not cleared."));
  blame (finish, rig->oil_due, UNSOOT_RULE_DRAIN_BEFORE_START, _ ("The oil level is not checked."));
  blame (finish, rig->oil_risen, UNSOOT_RULE_DRAIN_BEFORE_START,
         _ ("The oil level has risen and the oil is not changed."));
  blame (finish, rig->idle_due || rig->raise_due, UNSOOT_RULE_IDLE_FIRST,
         _ ("The engine has not idled, and then been raised, since the mist or the stall."));
  blame (finish, !rig->driven, UNSOOT_RULE_ROAD_TEST_LAST,
         facts->has_road ? _ ("The road test is missing, or something was touched after it.")
                         : _ ("The run under load is missing, or something was touched after it."));
}

gboolean
unsoot_rig_finish_faults (const UnsootRig *rig, const UnsootFamilyFacts *facts,
                          const UnsootProcedure *procedure, GArray *faults)
{
  Finish finish = { rig, (int) procedure->steps->len, faults, TRUE };

  check_machine (&finish);
  check_changes (&finish);
  check_lines (&finish);
  check_tanks (&finish);
  check_engine (&finish, facts);
  return finish.clean;
}
