/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "act.h"
#include "rules.h"
#include "side.h"

/* One step. Strings may be NULL where they don't apply. */
typedef struct
{
  int phase; /* index into the procedure's phases */
  UnsootAct act;
  UnsootSubject subject;
  char *name;           /* which part, line, tool, lead, low point, reading; "idle" or "raised" */
  char *place;          /* opening or part where a tool, guard, adapter or gasket sits */
  UnsootSide side;      /* of the tank, the run, the look; the path that a part belongs to */
  UnsootSide fluid;     /* fill: the side the fluid is meant for; NONE: the tank's own */
  double value;         /* SI: pressure in Pa, 0 is minimum; NAN: none */
  double share;         /* run: of the dose used by its end, 0…1; fill: of the dose; NAN: none */
  double minutes;       /* run, soak: at most; NAN: none */
  gboolean low_level;   /* run: ends at the tank's low mark too */
  gboolean until_clear; /* run: ends when the exhaust is clear */
  gboolean new_gasket;  /* take off: the part goes back with a new one */
  gboolean closes;      /* guard: shuts its opening, rather than screening it */
  char *unit;           /* of value, as typed ("psi"); NULL: none */
  char *wording;        /* the shop's words */
  char *why;            /* one line, where it matters */
} UnsootStep;

/* A step of ACT on SUBJECT named NAME (may be NULL), everything else unset.
 * Free with unsoot_step_free(). */
UnsootStep *unsoot_step_new (UnsootAct act, UnsootSubject subject, const char *name);
UnsootStep *unsoot_step_copy (const UnsootStep *step);
gboolean unsoot_step_equal (const UnsootStep *a, const UnsootStep *b);
void unsoot_step_free (UnsootStep *step);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootStep, unsoot_step_free)

/* Its wording; without one, made from act, subject, name and place ("Take off:
 * EGR pipe"). Free with g_free(). */
char *unsoot_step_words (const UnsootStep *step);

/* The cautions a phase opens with. */
typedef enum
{
  UNSOOT_CAUTION_MAKER = 1 << 0,       /* the maker's information comes first */
  UNSOOT_CAUTION_VENTILATION = 1 << 1, /* exhaust gas, carbon monoxide */
  UNSOOT_CAUTION_EYES_SKIN = 1 << 2,
  UNSOOT_CAUTION_FUEL_FIRE = 1 << 3, /* fuel under pressure; mist burns below the flash point */
  UNSOOT_CAUTION_IN_REACH = 1 << 4,  /* extinguisher and intake plate */
  UNSOOT_CAUTION_HOT_PARTS = 1 << 5,
  UNSOOT_CAUTION_MOVING = 1 << 6,
  UNSOOT_CAUTION_CHOCKS = 1 << 7,
  UNSOOT_CAUTION_DISPOSAL = 1 << 8,
} UnsootCaution;

#define UNSOOT_CAUTIONS 9

const char *unsoot_caution_to_slug (UnsootCaution caution);
gboolean unsoot_caution_from_slug (const char *slug, UnsootCaution *caution);
/* The caution in full, translated. */
const char *unsoot_caution_text (UnsootCaution caution);

typedef struct
{
  char *title;
  guint cautions; /* UnsootCaution bits */
} UnsootPhase;

typedef struct
{
  char *title;
  gboolean cleans[UNSOOT_SIDES]; /* indexed by UnsootSide */
  GPtrArray *phases;             /* of UnsootPhase */
  GPtrArray *steps;              /* of UnsootStep */
} UnsootProcedure;

UnsootProcedure *unsoot_procedure_new (const char *title);
/* Returns the new phase's index. */
int unsoot_procedure_add_phase (UnsootProcedure *procedure, const char *title, guint cautions);
/* Takes STEP and puts it into the latest phase, unless its phase is already set (≥ 0). */
void unsoot_procedure_add_step (UnsootProcedure *procedure, UnsootStep *step);
UnsootProcedure *unsoot_procedure_copy (const UnsootProcedure *procedure);
gboolean unsoot_procedure_equal (const UnsootProcedure *a, const UnsootProcedure *b);
void unsoot_procedure_free (UnsootProcedure *procedure);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootProcedure, unsoot_procedure_free)

const UnsootStep *unsoot_procedure_step (const UnsootProcedure *procedure, int step);
const UnsootPhase *unsoot_procedure_phase (const UnsootProcedure *procedure, int phase);

/* What the engine family says, as far as safety depends on it. */
typedef struct
{
  char *name;
  gboolean has_lift_pump;
  gboolean lift_pump_bypass_allowed; /* else its lead is unplugged */
  double window_min_pa;              /* supply pressure while running; NAN: none entered */
  double window_max_pa;
  gboolean has_egr;
  gboolean has_egr_cooler;
  gboolean has_heater;          /* intake heater */
  gboolean has_regeneration;    /* particulate filter that burns itself free */
  gboolean has_road;            /* else a run under load ends the job */
  GPtrArray *low_points;        /* of char *: every low pipe and charge cooler that is drained */
  gint64 dose_ml[UNSOOT_SIDES]; /* indexed by side; 0: none entered */
} UnsootFamilyFacts;

UnsootFamilyFacts *unsoot_family_facts_new (const char *name);
void unsoot_family_facts_add_low_point (UnsootFamilyFacts *facts, const char *name);
UnsootFamilyFacts *unsoot_family_facts_copy (const UnsootFamilyFacts *facts);
gboolean unsoot_family_facts_equal (const UnsootFamilyFacts *a, const UnsootFamilyFacts *b);
void unsoot_family_facts_free (UnsootFamilyFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFamilyFacts, unsoot_family_facts_free)

/* Simulates PROCEDURE on a vehicle as it came in and a machine whose tanks are
 * unknown. Returns TRUE where no rule is broken. Otherwise FAULTS (from
 * unsoot_faults_new(), or NULL) receives the refusals: steps that were refused
 * are left undone and the walk goes on, so later ones may follow from the
 * first; what is wrong at the end is added only when no step was refused. */
gboolean unsoot_procedure_check (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                                 GArray *faults);
