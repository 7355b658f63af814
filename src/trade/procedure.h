/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "caution.h"
#include "family-facts.h"
#include "rules.h"
#include "step.h"

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

/* Simulates PROCEDURE on a vehicle as it came in and a machine whose tanks are
 * unknown. Returns TRUE where no rule is broken. Otherwise FAULTS (from
 * unsoot_faults_new(), or NULL) receives the refusals: steps that were refused
 * are left undone and the walk goes on, so later ones may follow from the
 * first; what is wrong at the end is added only when no step was refused. */
gboolean unsoot_procedure_check (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                                 GArray *faults);
