/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <graphene.h>

#include "run.h"

/* Where the parts of the drawn machine lie, and what they show: pure figures, no widget. */

typedef enum
{
  UNSOOT_PART_FUEL_TANK,
  UNSOOT_PART_INTAKE_TANK,
  UNSOOT_PART_PUMP,
  UNSOOT_PART_ATOMISER,
  UNSOOT_PART_AIR,
  UNSOOT_PART_ENGINE,
} UnsootMachinePart;

#define UNSOOT_MACHINE_PARTS (UNSOOT_PART_ENGINE + 1)

typedef enum
{
  UNSOOT_HOSE_SUPPLY, /* fuel tank, pump, engine */
  UNSOOT_HOSE_RETURN, /* engine, fuel tank */
  UNSOOT_HOSE_MIST,   /* intake tank, atomiser, engine */
  UNSOOT_HOSE_AIR,    /* shop air, atomiser */
} UnsootMachineHose;

#define UNSOOT_MACHINE_HOSES (UNSOOT_HOSE_AIR + 1)
#define UNSOOT_HOSE_POINTS 4

typedef struct
{
  graphene_rect_t part[UNSOOT_MACHINE_PARTS];
  graphene_point_t hose[UNSOOT_MACHINE_HOSES][UNSOOT_HOSE_POINTS];
} UnsootMachinePlan;

typedef struct
{
  UnsootTank tank[UNSOOT_SIDES];
  gboolean on[UNSOOT_MACHINE_PARTS];
  gboolean raised; /* the engine */
  double pressure_pa;
  double air_pa;
  gboolean joined[UNSOOT_MACHINE_HOSES];
  gboolean flows[UNSOOT_MACHINE_HOSES];
} UnsootMachineState;

/* The room needed so that each part can be touched with a glove, and what looks well. */
#define UNSOOT_MACHINE_LEAST_WIDTH 224
#define UNSOOT_MACHINE_LEAST_HEIGHT 196

/* The plan that fills @width by @height; smaller rooms get the least plan. */
void unsoot_machine_plan (float width, float height, UnsootMachinePlan *plan);

/* The filled part of a tank's rectangle. What is not known shows as empty; a tank of unknown
 * capacity is drawn as if it held twice what is in it. */
void unsoot_machine_level (const graphene_rect_t *tank, const UnsootTank *what,
                           graphene_rect_t *level);

/* What @rig is doing. */
void unsoot_machine_state (const UnsootRig *rig, UnsootMachineState *state);
gboolean unsoot_machine_state_moves (const UnsootMachineState *state);
gboolean unsoot_machine_state_equal (const UnsootMachineState *a, const UnsootMachineState *b);

/* Why the part must not be switched over now, as the trade says it; NULL: it may be, or it is
 * nothing that is switched. */
char *unsoot_machine_lock (const UnsootRun *run, UnsootMachinePart part);

/* "Pump, on", "Fuel tank, 0.4 L, fresh fluid": in words. */
char *unsoot_machine_part_words (const UnsootMachineState *state, UnsootMachinePart part);
