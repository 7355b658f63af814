/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "act.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

static const UnsootSlug acts[] = {
  { UNSOOT_ACT_TAKE_OFF, "take-off", N_ ("Take off") },
  { UNSOOT_ACT_REFIT, "refit", N_ ("Refit") },
  { UNSOOT_ACT_REPLACE, "replace", N_ ("Replace") },
  { UNSOOT_ACT_FIT, "fit", N_ ("Fit") },
  { UNSOOT_ACT_REMOVE, "remove", N_ ("Remove") },
  { UNSOOT_ACT_JOIN, "join", N_ ("Join") },
  { UNSOOT_ACT_PART, "part", N_ ("Part") },
  { UNSOOT_ACT_BLEED, "bleed", N_ ("Bleed") },
  { UNSOOT_ACT_PRIME, "prime", N_ ("Prime") },
  { UNSOOT_ACT_FILL, "fill", N_ ("Fill") },
  { UNSOOT_ACT_DRAIN, "drain", N_ ("Drain") },
  { UNSOOT_ACT_FLUSH, "flush", N_ ("Flush") },
  { UNSOOT_ACT_HOLD, "hold", N_ ("Keep, labelled") },
  { UNSOOT_ACT_DISCONNECT, "disconnect", N_ ("Disconnect") },
  { UNSOOT_ACT_RECONNECT, "reconnect", N_ ("Reconnect") },
  { UNSOOT_ACT_DISABLE, "disable", N_ ("Disable") },
  { UNSOOT_ACT_ENABLE, "enable", N_ ("Enable") },
  { UNSOOT_ACT_START, "start", N_ ("Start") },
  { UNSOOT_ACT_STOP, "stop", N_ ("Stop") },
  { UNSOOT_ACT_OPEN, "open", N_ ("Open") },
  { UNSOOT_ACT_CLOSE, "close", N_ ("Close") },
  { UNSOOT_ACT_SET, "set", N_ ("Set") },
  { UNSOOT_ACT_RUN, "run", N_ ("Run") },
  { UNSOOT_ACT_SOAK, "soak", N_ ("Soak") },
  { UNSOOT_ACT_LOOK, "look", N_ ("Look for") },
  { UNSOOT_ACT_MEASURE, "measure", N_ ("Measure") },
  { UNSOOT_ACT_CLEAR, "clear", N_ ("Clear") },
  { UNSOOT_ACT_DRIVE, "drive", N_ ("Test on") },
  { 0, NULL, NULL },
};

static const UnsootSlug subjects[] = {
  { UNSOOT_SUBJECT_PART, "part", N_ ("part") },
  { UNSOOT_SUBJECT_GASKET, "gasket", N_ ("gasket") },
  { UNSOOT_SUBJECT_FILTER, "filter", N_ ("filter") },
  { UNSOOT_SUBJECT_TOOL, "tool", N_ ("tool") },
  { UNSOOT_SUBJECT_GUARD, "guard", N_ ("guard") },
  { UNSOOT_SUBJECT_ADAPTER, "adapter", N_ ("adapter") },
  { UNSOOT_SUBJECT_LINE, "line", N_ ("line") },
  { UNSOOT_SUBJECT_TANK, "tank", N_ ("tank") },
  { UNSOOT_SUBJECT_LOW_POINT, "low-point", N_ ("low point") },
  { UNSOOT_SUBJECT_LEAD, "lead", N_ ("lead") },
  { UNSOOT_SUBJECT_HEATER, "heater", N_ ("intake heater") },
  { UNSOOT_SUBJECT_REGENERATION, "regeneration", N_ ("regeneration") },
  { UNSOOT_SUBJECT_KEY, "key", N_ ("key") },
  { UNSOOT_SUBJECT_ENGINE, "engine", N_ ("engine") },
  { UNSOOT_SUBJECT_PUMP, "pump", N_ ("pump") },
  { UNSOOT_SUBJECT_ATOMISER, "atomiser", N_ ("atomiser") },
  { UNSOOT_SUBJECT_VALVE, "valve", N_ ("valve") },
  { UNSOOT_SUBJECT_PRESSURE, "pressure", N_ ("fuel pressure") },
  { UNSOOT_SUBJECT_AIR, "air", N_ ("air") },
  { UNSOOT_SUBJECT_SPEED, "speed", N_ ("engine speed") },
  { UNSOOT_SUBJECT_LEAKS, "leaks", N_ ("leaks") },
  { UNSOOT_SUBJECT_OIL, "oil", N_ ("engine oil") },
  { UNSOOT_SUBJECT_READING, "reading", N_ ("reading") },
  { UNSOOT_SUBJECT_CODES, "codes", N_ ("codes") },
  { UNSOOT_SUBJECT_ROAD, "road", N_ ("the road") },
  { UNSOOT_SUBJECT_LOAD, "load", N_ ("a load") },
  { 0, NULL, NULL },
};

static const UnsootSlug lines[] = {
  { UNSOOT_LINE_VEHICLE_SUPPLY, "vehicle-supply", N_ ("vehicle's supply line") },
  { UNSOOT_LINE_VEHICLE_RETURN, "vehicle-return", N_ ("vehicle's return line") },
  { UNSOOT_LINE_MACHINE_SUPPLY, "machine-supply", N_ ("machine's supply hose") },
  { UNSOOT_LINE_MACHINE_RETURN, "machine-return", N_ ("machine's return hose") },
  { UNSOOT_LINE_BYPASS, "bypass", N_ ("bypass hose") },
  { UNSOOT_LINE_HIGH_PRESSURE, "high-pressure", N_ ("high-pressure line") },
  { 0, NULL, NULL },
};

#define BIT(name) (1u << UNSOOT_SUBJECT_##name)
#define RUNNERS (BIT (KEY) | BIT (ENGINE) | BIT (PUMP) | BIT (ATOMISER))
#define FITTINGS (BIT (TOOL) | BIT (GUARD) | BIT (ADAPTER))
#define BURNERS (BIT (HEATER) | BIT (REGENERATION))

static const guint takes[UNSOOT_ACTS] = {
  [UNSOOT_ACT_TAKE_OFF] = BIT (PART),
  [UNSOOT_ACT_REFIT] = BIT (PART),
  [UNSOOT_ACT_REPLACE] = BIT (GASKET) | BIT (FILTER) | BIT (OIL),
  [UNSOOT_ACT_FIT] = FITTINGS,
  [UNSOOT_ACT_REMOVE] = FITTINGS,
  [UNSOOT_ACT_JOIN] = BIT (LINE),
  [UNSOOT_ACT_PART] = BIT (LINE),
  [UNSOOT_ACT_BLEED] = BIT (PRESSURE) | BIT (AIR),
  [UNSOOT_ACT_PRIME] = BIT (PUMP) | BIT (LINE),
  [UNSOOT_ACT_FILL] = BIT (TANK),
  [UNSOOT_ACT_DRAIN] = BIT (TANK) | BIT (LOW_POINT),
  [UNSOOT_ACT_FLUSH] = BIT (TANK),
  [UNSOOT_ACT_HOLD] = BIT (TANK),
  [UNSOOT_ACT_DISCONNECT] = BIT (LEAD),
  [UNSOOT_ACT_RECONNECT] = BIT (LEAD),
  [UNSOOT_ACT_DISABLE] = BURNERS,
  [UNSOOT_ACT_ENABLE] = BURNERS,
  [UNSOOT_ACT_START] = RUNNERS,
  [UNSOOT_ACT_STOP] = RUNNERS,
  [UNSOOT_ACT_OPEN] = BIT (VALVE),
  [UNSOOT_ACT_CLOSE] = BIT (VALVE),
  [UNSOOT_ACT_SET] = BIT (PRESSURE) | BIT (AIR) | BIT (SPEED),
  [UNSOOT_ACT_RUN] = BIT (ENGINE),
  [UNSOOT_ACT_SOAK] = BIT (PART),
  [UNSOOT_ACT_LOOK] = BIT (LEAKS),
  [UNSOOT_ACT_MEASURE] = BIT (OIL) | BIT (TANK) | BIT (READING),
  [UNSOOT_ACT_CLEAR] = BIT (CODES),
  [UNSOOT_ACT_DRIVE] = BIT (ROAD) | BIT (LOAD),
};

const char *
unsoot_act_to_slug (UnsootAct act)
{
  return unsoot_slug_of (acts, (int) act);
}

gboolean
unsoot_act_from_slug (const char *slug, UnsootAct *act)
{
  int value;

  if (!unsoot_slug_find (acts, slug, &value))
    return FALSE;
  *act = (UnsootAct) value;
  return TRUE;
}

const char *
unsoot_act_label (UnsootAct act)
{
  return unsoot_slug_words (acts, (int) act);
}

const char *
unsoot_subject_to_slug (UnsootSubject subject)
{
  return unsoot_slug_of (subjects, (int) subject);
}

gboolean
unsoot_subject_from_slug (const char *slug, UnsootSubject *subject)
{
  int value;

  if (!unsoot_slug_find (subjects, slug, &value))
    return FALSE;
  *subject = (UnsootSubject) value;
  return TRUE;
}

const char *
unsoot_subject_label (UnsootSubject subject)
{
  return unsoot_slug_words (subjects, (int) subject);
}

const char *
unsoot_line_to_slug (UnsootLine line)
{
  return unsoot_slug_of (lines, (int) line);
}

gboolean
unsoot_line_from_slug (const char *slug, UnsootLine *line)
{
  int value;

  if (!unsoot_slug_find (lines, slug, &value))
    return FALSE;
  *line = (UnsootLine) value;
  return TRUE;
}

const char *
unsoot_line_label (UnsootLine line)
{
  return unsoot_slug_words (lines, (int) line);
}

gboolean
unsoot_act_takes (UnsootAct act, UnsootSubject subject)
{
  return (guint) act < UNSOOT_ACTS && (guint) subject < UNSOOT_SUBJECTS
         && (takes[act] & (1u << subject)) != 0;
}
