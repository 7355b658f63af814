/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rig.h"

/* Internal to the rig: one question whether a step may be done. A check
 * returns TRUE, or refuses and returns FALSE; it never changes the rig. */
typedef struct
{
  const UnsootRig *rig;
  const UnsootFamilyFacts *facts;
  const UnsootStep *step;
  const UnsootEntry *entry;
  UnsootFault *fault; /* may be NULL */
} UnsootCheck;

/* Both return FALSE; REASON is marked with N_ (), FORMAT is translated already. */
gboolean unsoot_check_refuse (const UnsootCheck *c, UnsootRule rule, const char *reason);
gboolean unsoot_check_refuse_about (const UnsootCheck *c, UnsootRule rule, const char *format, ...)
    G_GNUC_PRINTF (3, 4);

/* Refuses unless HOLDS. */
gboolean unsoot_check_need (const UnsootCheck *c, gboolean holds, UnsootRule rule,
                            const char *reason);

/* Three depths of rest. STOPPED: engine, atomiser, key. MACHINE_OFF: pump and air too.
 * AT_REST: the fuel supply at minimum and bled too. */
gboolean unsoot_check_stopped (const UnsootCheck *c);
gboolean unsoot_check_machine_off (const UnsootCheck *c);
gboolean unsoot_check_at_rest (const UnsootCheck *c);

/* No look is due at the fuel lines, nor, where air is on, at the air hose. */
gboolean unsoot_check_looked (const UnsootCheck *c);

/* One file for each part of the rig: FALSE refuses. */
gboolean unsoot_check_vehicle (const UnsootCheck *c); /* parts, fittings, leads, burners, valves */
gboolean unsoot_check_line (const UnsootCheck *c);    /* lines, bleeding, priming */
gboolean unsoot_check_tank (const UnsootCheck *c);
gboolean unsoot_check_set (const UnsootCheck *c);   /* pressure, air, speed */
gboolean unsoot_check_start (const UnsootCheck *c); /* key, engine, pump, atomiser */
gboolean unsoot_check_stop (const UnsootCheck *c);
gboolean unsoot_check_run (const UnsootCheck *c);    /* run, soak */
gboolean unsoot_check_others (const UnsootCheck *c); /* look, measure, codes, road */

/* The value that counts: what was entered, else what the step says. */
double unsoot_check_value (const UnsootStep *step, const UnsootEntry *entry);

/* mL that a fill pours: entered, else the step's share of the dose (all of it
 * where none is given); 0 where no dose is known. */
gint64 unsoot_fill_ml (const UnsootFamilyFacts *facts, const UnsootStep *step,
                       const UnsootEntry *entry);

/* mL that a run to STEP's share takes from the tank. */
gint64 unsoot_run_ml (const UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step);

/* Does what STEP says, unasked (rig-do.c). */
void unsoot_rig_do (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
                    const UnsootEntry *entry);

/* After mist, a soak in place, a stall: every low point and the oil bar the start. */
void unsoot_rig_pool (UnsootRig *rig, const UnsootFamilyFacts *facts);

UnsootChange *unsoot_rig_add_change (UnsootRig *rig, UnsootSubject subject, const char *name);
void unsoot_rig_drop_change (UnsootRig *rig, UnsootSubject subject, const char *name);
gboolean unsoot_rig_has_intake_adapter (const UnsootRig *rig);
/* Something of SUBJECT that sits at PLACE; NULL: nothing. */
const UnsootChange *unsoot_rig_at_place (const UnsootRig *rig, UnsootSubject subject,
                                         const char *place);

/* "“EGR pipe” is still off.": one change in words, translated. */
char *unsoot_rig_change_words (const UnsootChange *change);

/* "Still joined: bypass hose."; NULL where LINE is as it came in. */
char *unsoot_rig_line_words (const UnsootRig *rig, UnsootLine line);
