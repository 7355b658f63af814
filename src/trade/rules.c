/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rules.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

static const UnsootSlug rules[] = {
  { UNSOOT_RULE_NONE, "none", N_ ("No rule is broken.") },
  { UNSOOT_RULE_FLUIDS_APART, "fluids-apart",
    N_ ("The two fluids never mix and never enter the other tank: in doubt, drain and flush.") },
  { UNSOOT_RULE_ATOMISER_NEEDS_ENGINE, "atomiser-needs-engine",
    N_ ("The engine runs whenever the atomiser is on.") },
  { UNSOOT_RULE_LINES_AT_REST, "lines-at-rest",
    N_ ("Nothing is opened or joined before everything is off, bled and still.") },
  { UNSOOT_RULE_HIGH_PRESSURE, "high-pressure", N_ ("High-pressure lines are never opened.") },
  { UNSOOT_RULE_LEAK_LOOK, "leak-look",
    N_ ("Look for leaks under pressure, again after every touch and every raise.") },
  { UNSOOT_RULE_WINDOW, "window", N_ ("Pressure stays inside the window that was entered.") },
  { UNSOOT_RULE_LIFT_PUMP, "lift-pump",
    N_ ("The vehicle's lift pump circulates through the bypass, or is unplugged.") },
  { UNSOOT_RULE_EVERYTHING_BACK, "everything-back",
    N_ ("Whatever came off goes back on, and whatever was put on comes off again.") },
  { UNSOOT_RULE_AIR_PATH, "air-path",
    N_ ("Air and mist enter the engine only through an opening that is fitted for it.") },
  { UNSOOT_RULE_STOP_ORDER, "stop-order",
    N_ ("Stop in this order: atomiser, air to zero and bled, engine, pump, line.") },
  { UNSOOT_RULE_FUEL_SUPPLY, "fuel-supply",
    N_ ("A running engine has its fuel: lines joined, pump on and primed.") },
  { UNSOOT_RULE_TANK_RUNS_DRY, "tank-runs-dry",
    N_ ("A tank never runs dry: a run ends at the first of volume, time and low level.") },
  { UNSOOT_RULE_DRAIN_BEFORE_START, "drain-before-start",
    N_ ("After mist, a soak in place or a stall: drain low points and check the oil, then start.") },
  { UNSOOT_RULE_IDLE_FIRST, "idle-first",
    N_ ("After mist the engine idles first; then its speed is raised gently.") },
  { UNSOOT_RULE_IGNITION_OUT, "ignition-out",
    N_ ("Intake heater and regeneration are disabled while mist is made.") },
  { UNSOOT_RULE_ROAD_TEST_LAST, "road-test-last",
    N_ ("A road test, or a run under load where there is no road, ends the job.") },
  { UNSOOT_RULE_SENSE, "sense", N_ ("A step has to make sense where things stand.") },
  { 0, NULL, NULL },
};

/* The numbers are those of the eight rules that protect people and engines. */
static const int numbers[UNSOOT_RULES] = {
  [UNSOOT_RULE_FLUIDS_APART] = 1,  [UNSOOT_RULE_ATOMISER_NEEDS_ENGINE] = 2,
  [UNSOOT_RULE_LINES_AT_REST] = 3, [UNSOOT_RULE_HIGH_PRESSURE] = 3,
  [UNSOOT_RULE_LEAK_LOOK] = 3,     [UNSOOT_RULE_WINDOW] = 3,
  [UNSOOT_RULE_LIFT_PUMP] = 3,     [UNSOOT_RULE_EVERYTHING_BACK] = 4,
  [UNSOOT_RULE_AIR_PATH] = 4,      [UNSOOT_RULE_STOP_ORDER] = 5,
  [UNSOOT_RULE_FUEL_SUPPLY] = 5,   [UNSOOT_RULE_TANK_RUNS_DRY] = 5,
  [UNSOOT_RULE_IDLE_FIRST] = 6,    [UNSOOT_RULE_DRAIN_BEFORE_START] = 6,
  [UNSOOT_RULE_IGNITION_OUT] = 7,  [UNSOOT_RULE_ROAD_TEST_LAST] = 8,
};

const char *
unsoot_rule_to_slug (UnsootRule rule)
{
  return unsoot_slug_of (rules, (int) rule);
}

gboolean
unsoot_rule_from_slug (const char *slug, UnsootRule *rule)
{
  int value;

  if (!unsoot_slug_find (rules, slug, &value))
    return FALSE;
  *rule = (UnsootRule) value;
  return TRUE;
}

const char *
unsoot_rule_text (UnsootRule rule)
{
  return unsoot_slug_words (rules, (int) rule);
}

int
unsoot_rule_number (UnsootRule rule)
{
  return numbers[rule];
}

void
unsoot_fault_clear (UnsootFault *fault)
{
  fault->step = -1;
  fault->rule = UNSOOT_RULE_NONE;
  g_clear_pointer (&fault->reason, g_free);
}

GArray *
unsoot_faults_new (void)
{
  GArray *faults = g_array_new (FALSE, TRUE, sizeof (UnsootFault));

  g_array_set_clear_func (faults, (GDestroyNotify) unsoot_fault_clear);
  return faults;
}

char *
unsoot_fault_sentence (const UnsootFault *fault)
{
  int number = unsoot_rule_number (fault->rule);

  if (number == 0)
    return g_strdup (fault->reason);
  /* Translators: the reason, the number of the rule, the rule itself */
  return g_strdup_printf (_ ("%s Rule %d: %s"), fault->reason, number,
                          unsoot_rule_text (fault->rule));
}
