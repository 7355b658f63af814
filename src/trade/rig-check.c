/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rig-check.h"

#include <glib/gi18n-lib.h>

gboolean
unsoot_check_refuse (const UnsootCheck *c, UnsootRule rule, const char *reason)
{
  if (c->fault != NULL)
    {
      g_free (c->fault->reason);
      c->fault->rule = rule;
      c->fault->reason = g_strdup (_ (reason));
    }
  return FALSE;
}

gboolean
unsoot_check_refuse_about (const UnsootCheck *c, UnsootRule rule, const char *format, ...)
{
  va_list names;

  if (c->fault == NULL)
    return FALSE;
  va_start (names, format);
  g_free (c->fault->reason);
  c->fault->rule = rule;
  c->fault->reason = g_strdup_vprintf (format, names);
  va_end (names);
  return FALSE;
}

gboolean
unsoot_check_need (const UnsootCheck *c, gboolean holds, UnsootRule rule, const char *reason)
{
  return holds || unsoot_check_refuse (c, rule, reason);
}

gboolean
unsoot_check_stopped (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  return unsoot_check_need (c, !rig->atomiser, UNSOOT_RULE_LINES_AT_REST,
                            N_ ("The atomiser is still on."))
         && unsoot_check_need (c, !unsoot_rig_engine_runs (rig), UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The engine is still running."))
         && unsoot_check_need (c, !rig->key, UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The key is still on."));
}

gboolean
unsoot_check_machine_off (const UnsootCheck *c)
{
  const UnsootRig *rig = c->rig;

  return unsoot_check_stopped (c)
         && unsoot_check_need (c, !rig->pump, UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The machine's pump is still on."))
         && unsoot_check_need (c, !unsoot_rig_air_charged (rig), UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The atomiser's air is still charged: to zero, and bled."));
}

gboolean
unsoot_check_at_rest (const UnsootCheck *c)
{
  return unsoot_check_machine_off (c)
         && unsoot_check_need (c, c->rig->pressure_pa <= 0, UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The fuel pressure is not at its minimum."))
         && unsoot_check_need (c, c->rig->pressure_bled, UNSOOT_RULE_LINES_AT_REST,
                               N_ ("The fuel line is not bled."));
}

gboolean
unsoot_check_looked (const UnsootCheck *c)
{
  return unsoot_check_need (c, !c->rig->look_due[UNSOOT_SIDE_FUEL], UNSOOT_RULE_LEAK_LOOK,
                            N_ ("The fuel lines have not been looked at since they were touched, "
                                "or the pressure was raised."))
         && unsoot_check_need (c, !(c->rig->look_due[UNSOOT_SIDE_INTAKE] && c->rig->air_pa > 0),
                               UNSOOT_RULE_LEAK_LOOK,
                               N_ ("Air hose and adapter have not been looked at since they were "
                                   "touched, or the air was raised."));
}

double
unsoot_check_value (const UnsootStep *step, const UnsootEntry *entry)
{
  return isnan (entry->value) ? step->value : entry->value;
}
