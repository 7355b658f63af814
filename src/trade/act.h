/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* What a step does. Wording belongs to the shop; the act is typed, so that a
 * machine can reason about it. */
typedef enum
{
  UNSOOT_ACT_TAKE_OFF,   /* a part */
  UNSOOT_ACT_REFIT,      /* a part */
  UNSOOT_ACT_REPLACE,    /* a gasket, a filter, the oil */
  UNSOOT_ACT_FIT,        /* a tool, a guard, an adapter */
  UNSOOT_ACT_REMOVE,     /* a tool, a guard, an adapter */
  UNSOOT_ACT_JOIN,       /* a line */
  UNSOOT_ACT_PART,       /* a line */
  UNSOOT_ACT_BLEED,      /* pressure (the fuel line) or air (the air line) */
  UNSOOT_ACT_PRIME,      /* the pump, or a line by hand */
  UNSOOT_ACT_FILL,       /* a tank */
  UNSOOT_ACT_DRAIN,      /* a tank or a low point */
  UNSOOT_ACT_FLUSH,      /* a tank */
  UNSOOT_ACT_HOLD,       /* a tank: what is left is kept under a label */
  UNSOOT_ACT_DISCONNECT, /* a lead */
  UNSOOT_ACT_RECONNECT,  /* a lead */
  UNSOOT_ACT_DISABLE,    /* heater, regeneration */
  UNSOOT_ACT_ENABLE,     /* heater, regeneration */
  UNSOOT_ACT_START,      /* key, engine, pump, atomiser */
  UNSOOT_ACT_STOP,       /* key, engine, pump, atomiser */
  UNSOOT_ACT_OPEN,       /* a valve */
  UNSOOT_ACT_CLOSE,      /* a valve */
  UNSOOT_ACT_SET,        /* pressure, air, speed */
  UNSOOT_ACT_RUN,        /* the engine, until … */
  UNSOOT_ACT_SOAK,       /* a part: on the bench when it is off, else in place */
  UNSOOT_ACT_LOOK,       /* for leaks */
  UNSOOT_ACT_MEASURE,    /* oil level, tank level, a reading */
  UNSOOT_ACT_CLEAR,      /* codes */
  UNSOOT_ACT_DRIVE,      /* the road, or a load */
} UnsootAct;

#define UNSOOT_ACTS (UNSOOT_ACT_DRIVE + 1)

/* What a step does it to. */
typedef enum
{
  UNSOOT_SUBJECT_PART,
  UNSOOT_SUBJECT_GASKET, /* gasket, seal, O-ring: place names the part it seals */
  UNSOOT_SUBJECT_FILTER,
  UNSOOT_SUBJECT_TOOL,
  UNSOOT_SUBJECT_GUARD,
  UNSOOT_SUBJECT_ADAPTER,
  UNSOOT_SUBJECT_LINE,
  UNSOOT_SUBJECT_TANK, /* of the machine; the step's side says which */
  UNSOOT_SUBJECT_LOW_POINT,
  UNSOOT_SUBJECT_LEAD,
  UNSOOT_SUBJECT_HEATER,
  UNSOOT_SUBJECT_REGENERATION,
  UNSOOT_SUBJECT_KEY,
  UNSOOT_SUBJECT_ENGINE,
  UNSOOT_SUBJECT_PUMP,
  UNSOOT_SUBJECT_ATOMISER,
  UNSOOT_SUBJECT_VALVE,
  UNSOOT_SUBJECT_PRESSURE, /* of the fuel supply */
  UNSOOT_SUBJECT_AIR,      /* of the atomiser */
  UNSOOT_SUBJECT_SPEED,    /* of the engine: name is "idle" or "raised" */
  UNSOOT_SUBJECT_LEAKS,
  UNSOOT_SUBJECT_OIL,
  UNSOOT_SUBJECT_READING,
  UNSOOT_SUBJECT_CODES,
  UNSOOT_SUBJECT_ROAD,
  UNSOOT_SUBJECT_LOAD,
} UnsootSubject;

#define UNSOOT_SUBJECTS (UNSOOT_SUBJECT_LOAD + 1)

/* The lines a procedure may name. */
typedef enum
{
  UNSOOT_LINE_VEHICLE_SUPPLY,
  UNSOOT_LINE_VEHICLE_RETURN,
  UNSOOT_LINE_MACHINE_SUPPLY,
  UNSOOT_LINE_MACHINE_RETURN,
  UNSOOT_LINE_BYPASS,
  UNSOOT_LINE_HIGH_PRESSURE, /* named only to be refused: it is never opened */
} UnsootLine;

#define UNSOOT_LINES 6

/* The lead that stills the lift pump when it is unplugged. */
#define UNSOOT_LEAD_LIFT_PUMP "lift-pump"
#define UNSOOT_SPEED_IDLE "idle"
#define UNSOOT_SPEED_RAISED "raised"

/* Lower-case slugs with hyphens ("take-off", "low-point", "machine-supply"),
 * for storage and for a procedure's text. The way back is FALSE, and the
 * result untouched, for NULL or an unknown slug. */
const char *unsoot_act_to_slug (UnsootAct act);
gboolean unsoot_act_from_slug (const char *slug, UnsootAct *act);
const char *unsoot_subject_to_slug (UnsootSubject subject);
gboolean unsoot_subject_from_slug (const char *slug, UnsootSubject *subject);
const char *unsoot_line_to_slug (UnsootLine line);
gboolean unsoot_line_from_slug (const char *slug, UnsootLine *line);

/* "Take off", "Look for": the act as a person reads it, capitalised, translated. */
const char *unsoot_act_label (UnsootAct act);

/* "part", "low point": the subject as a person reads it, translated. */
const char *unsoot_subject_label (UnsootSubject subject);

/* "machine supply hose": a known line as a person reads it, translated. */
const char *unsoot_line_label (UnsootLine line);

/* Whether ACT can be done to SUBJECT at all (a tank can be filled, a key can't). */
gboolean unsoot_act_takes (UnsootAct act, UnsootSubject subject);
