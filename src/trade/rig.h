/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <math.h>

#include "procedure.h"

/* The simulated bay: vehicle and machine together. */

/* Atomiser air: 40 psi, and what counts as that on a gauge. Common practice, no
 * source. In Pa. */
#define UNSOOT_PSI_PA 6894.757293168361
#define UNSOOT_AIR_NOMINAL_PA (40.0 * UNSOOT_PSI_PA)
#define UNSOOT_AIR_LEAST_PA (36.0 * UNSOOT_PSI_PA)
#define UNSOOT_AIR_MOST_PA (44.0 * UNSOOT_PSI_PA)

typedef enum
{
  UNSOOT_ENGINE_OFF,
  UNSOOT_ENGINE_IDLE,
  UNSOOT_ENGINE_RAISED,
} UnsootEngine;

typedef enum
{
  UNSOOT_CONTENTS_UNKNOWN, /* the worst case: another vehicle's return */
  UNSOOT_CONTENTS_EMPTY,   /* drained, not flushed */
  UNSOOT_CONTENTS_CLEAN,   /* drained and flushed */
  UNSOOT_CONTENTS_FRESH,
  UNSOOT_CONTENTS_RETURNED, /* of this vehicle, with its fuel in it */
  UNSOOT_CONTENTS_HELD,     /* kept under a label */
} UnsootContents;

#define UNSOOT_CONTENTS_KINDS (UNSOOT_CONTENTS_HELD + 1)

const char *unsoot_contents_to_slug (UnsootContents contents);
gboolean unsoot_contents_from_slug (const char *slug, UnsootContents *contents);
const char *unsoot_contents_label (UnsootContents contents);

typedef struct
{
  UnsootContents contents;
  gint64 ml;
  gint64 lot_id;      /* of what was poured in last; 0: not known */
  gint64 capacity_ml; /* 0: not known */
  gboolean used;      /* filled or run in this job: has to be accounted for at the end */
} UnsootTank;

/* Something that is not as the vehicle came in: a part or lead off, a tool,
 * guard or adapter on, a heater disabled, a valve open, a low point to drain. */
typedef struct
{
  UnsootSubject subject;
  char *name; /* NULL for heater and regeneration */
  char *place;
  UnsootSide side;
  gboolean owes_gasket;
  gboolean closes;
} UnsootChange;

typedef struct
{
  gboolean key;
  UnsootEngine engine;
  gboolean pump;
  gboolean atomiser;
  double pressure_pa; /* as set; 0 is minimum */
  gboolean pressure_bled;
  gboolean primed;
  double air_pa; /* as set; 0 is none */
  gboolean air_bled;
  gboolean joined[UNSOOT_LINES];
  UnsootTank tank[UNSOOT_SIDES];
  double share[UNSOOT_SIDES];   /* of the dose, by the procedure's plan */
  gint64 used_ml[UNSOOT_SIDES]; /* as told by the runs */
  gboolean look_due[UNSOOT_SIDES];
  gboolean oil_due; /* level to be checked before the next start */
  gboolean oil_risen;
  gboolean idle_due;  /* since mist: a run at idle before any raise */
  gboolean raise_due; /* since mist: a raise before the road or load test */
  gboolean codes_due; /* a lead was off: codes to be cleared */
  gboolean driven;    /* road or load test done, nothing touched since */
  GPtrArray *changes; /* of UnsootChange */
} UnsootRig;

/* The vehicle as it came in; machine parted, everything off, tanks unknown. */
UnsootRig *unsoot_rig_new (void);
UnsootRig *unsoot_rig_copy (const UnsootRig *rig);
void unsoot_rig_free (UnsootRig *rig);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootRig, unsoot_rig_free)

/* What the person entered with a live step. UNSOOT_ENTRY_NONE: the plan's own values. */
typedef struct
{
  double value;     /* SI, overrides the step's; oil level: 1 where it has risen; NAN: none */
  gint64 ml;        /* poured, used or measured; -1: none */
  gint64 lot_id;    /* 0: none */
  UnsootSide fluid; /* the side that the lot's fluid is meant for; NONE: as the step says */
} UnsootEntry;

#define UNSOOT_ENTRY_NONE ((UnsootEntry){ (double) NAN, -1, 0, UNSOOT_SIDE_NONE })

/* Whether STEP may be done now; FAULT (may be NULL) says by which rule and why
 * not. The step's minutes and shares are not waited for: a run is done. */
gboolean unsoot_rig_allows (const UnsootRig *rig, const UnsootFamilyFacts *facts,
                            const UnsootStep *step, const UnsootEntry *entry, UnsootFault *fault);

/* Does STEP where it is allowed. A refused step leaves RIG as it was. ENTRY may be NULL. */
gboolean unsoot_rig_apply (UnsootRig *rig, const UnsootFamilyFacts *facts, const UnsootStep *step,
                           const UnsootEntry *entry, UnsootFault *fault);

/* What can happen against everyone's will, from any state. */
typedef enum
{
  UNSOOT_HAPPENING_NONE,
  UNSOOT_HAPPENING_STALL,
  UNSOOT_HAPPENING_RUNAWAY,
  UNSOOT_HAPPENING_BURST_HOSE, /* of the machine's fuel supply */
  UNSOOT_HAPPENING_LOST_AIR,
  UNSOOT_HAPPENING_CO_ALARM,
  UNSOOT_HAPPENING_LEAK_OR_FIRE,
  UNSOOT_HAPPENING_STOP, /* the ordinary one */
} UnsootHappening;

#define UNSOOT_HAPPENINGS (UNSOOT_HAPPENING_STOP + 1)

const char *unsoot_happening_to_slug (UnsootHappening happening);
gboolean unsoot_happening_from_slug (const char *slug, UnsootHappening *happening);
const char *unsoot_happening_label (UnsootHappening happening);

/* What HAPPENING leaves behind: never refused. */
void unsoot_rig_suffer (UnsootRig *rig, const UnsootFamilyFacts *facts, UnsootHappening happening);

/* Adds to FAULTS whatever forbids the job to be finished where RIG stands; TRUE: nothing. */
gboolean unsoot_rig_finish_faults (const UnsootRig *rig, const UnsootFamilyFacts *facts,
                                   const UnsootProcedure *procedure, GArray *faults);

/* Queries. */
gboolean unsoot_rig_engine_runs (const UnsootRig *rig);
gboolean unsoot_rig_on_machine (const UnsootRig *rig); /* the engine draws from the machine */
gboolean unsoot_rig_on_vehicle (const UnsootRig *rig); /* … from its own tank, lines whole */
gboolean unsoot_rig_lift_pump_live (const UnsootRig *rig, const UnsootFamilyFacts *facts);
gboolean unsoot_rig_fuel_under_pressure (const UnsootRig *rig, const UnsootFamilyFacts *facts);
gboolean unsoot_rig_air_charged (const UnsootRig *rig);
gboolean unsoot_rig_must_drain (const UnsootRig *rig); /* a low point or the oil bars a start */
/* NULL where nothing of that kind and name has changed; NULL NAME: any. */
const UnsootChange *unsoot_rig_change (const UnsootRig *rig, UnsootSubject subject,
                                       const char *name);

/* The whole state as one line of text: two rigs are equal when these are. */
char *unsoot_rig_digest (const UnsootRig *rig);
