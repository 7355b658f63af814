/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What happens against everyone's will, and what STOP leaves behind. Nothing
 * here is refused; in doubt the rig is left at its worst. */
#include <glib/gi18n-lib.h>

#include "rig-check.h"
#include "slug.h"

static const UnsootSlug happenings[] = {
  { UNSOOT_HAPPENING_NONE, "none", N_ ("Nothing") },
  { UNSOOT_HAPPENING_STALL, "stall", N_ ("Engine stalled") },
  { UNSOOT_HAPPENING_RUNAWAY, "runaway", N_ ("Engine ran away") },
  { UNSOOT_HAPPENING_BURST_HOSE, "burst-hose", N_ ("Fuel hose burst") },
  { UNSOOT_HAPPENING_LOST_AIR, "lost-air", N_ ("Shop air lost") },
  { UNSOOT_HAPPENING_CO_ALARM, "co-alarm", N_ ("Carbon monoxide alarm") },
  { UNSOOT_HAPPENING_LEAK_OR_FIRE, "leak-or-fire", N_ ("Leak or fire") },
  { UNSOOT_HAPPENING_STOP, "stop", N_ ("Ordinary stop") },
  { 0, NULL, NULL },
};

const char *
unsoot_happening_to_slug (UnsootHappening happening)
{
  return unsoot_slug_of (happenings, (int) happening);
}

gboolean
unsoot_happening_from_slug (const char *slug, UnsootHappening *happening)
{
  int value;

  if (!unsoot_slug_find (happenings, slug, &value))
    return FALSE;
  *happening = (UnsootHappening) value;
  return TRUE;
}

const char *
unsoot_happening_label (UnsootHappening happening)
{
  return unsoot_slug_words (happenings, (int) happening);
}

static void
everything_off (UnsootRig *rig)
{
  rig->atomiser = FALSE;
  rig->engine = UNSOOT_ENGINE_OFF;
  rig->pump = FALSE;
  rig->key = FALSE;
}

/* The burst hose counts as parted: it is joined again when the new one is on. */
static void
burst_hose (UnsootRig *rig)
{
  everything_off (rig);
  if (!rig->joined[UNSOOT_LINE_MACHINE_SUPPLY])
    return;
  rig->joined[UNSOOT_LINE_MACHINE_SUPPLY] = FALSE;
  rig->primed = FALSE;
  rig->pressure_bled = FALSE;
  rig->look_due[UNSOOT_SIDE_FUEL] = TRUE;
  rig->driven = FALSE;
}

static void
lost_air (UnsootRig *rig)
{
  rig->atomiser = FALSE;
  rig->air_pa = 0;
  rig->air_bled = FALSE;
  rig->look_due[UNSOOT_SIDE_INTAKE] = unsoot_rig_has_intake_adapter (rig);
}

static void
leak_or_fire (UnsootRig *rig)
{
  everything_off (rig);
  rig->look_due[UNSOOT_SIDE_FUEL] = TRUE;
  rig->look_due[UNSOOT_SIDE_INTAKE] = unsoot_rig_has_intake_adapter (rig);
  rig->driven = FALSE;
}

void
unsoot_rig_suffer (UnsootRig *rig, const UnsootFamilyFacts *facts, UnsootHappening happening)
{
  switch (happening)
    {
    case UNSOOT_HAPPENING_NONE:
      return;
    case UNSOOT_HAPPENING_STALL:
      rig->atomiser = FALSE;
      rig->engine = UNSOOT_ENGINE_OFF;
      unsoot_rig_pool (rig, facts);
      return;
    case UNSOOT_HAPPENING_RUNAWAY:
      everything_off (rig);
      unsoot_rig_pool (rig, facts);
      return;
    case UNSOOT_HAPPENING_BURST_HOSE:
      burst_hose (rig);
      return;
    case UNSOOT_HAPPENING_LOST_AIR:
      lost_air (rig);
      return;
    case UNSOOT_HAPPENING_CO_ALARM:
      everything_off (rig);
      return;
    case UNSOOT_HAPPENING_LEAK_OR_FIRE:
      leak_or_fire (rig);
      return;
    case UNSOOT_HAPPENING_STOP:
      everything_off (rig);
      rig->air_pa = 0;
      rig->pressure_pa = 0;
      return;
    }
}
