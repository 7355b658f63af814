/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "rig.h"
#include "unit.h"

/* What a person enters with a step at the machine. */
typedef enum
{
  UNSOOT_ASK_NOTHING,
  UNSOOT_ASK_PRESSURE, /* value: what the gauge says, within the window */
  UNSOOT_ASK_LOT,      /* lot, and ml: how much was poured */
  UNSOOT_ASK_LEFT,     /* ml: what is left in the tank */
  UNSOOT_ASK_USED,     /* ml: what a run has used */
  UNSOOT_ASK_OIL,      /* value: 1 where the level has risen, else 0 */
  UNSOOT_ASK_LABEL,    /* text: what the label on a held tank says */
  UNSOOT_ASK_NOTE,     /* text, and value where it is a number: what was read or noticed */
} UnsootAskKind;

#define UNSOOT_ASKS (UNSOOT_ASK_NOTE + 1)

/* What is proposed, and within what it has to stay. */
typedef struct
{
  UnsootAskKind kind;
  UnsootSide side;
  UnsootUnit unit;  /* of a pressure: as the step was written */
  double preset_pa; /* pressures, NAN otherwise */
  double least_pa;
  double most_pa;
  gint64 preset_ml; /* volumes, -1 otherwise */
  gint64 most_ml;   /* what the tank holds or can hold; -1: not known */
} UnsootAsk;

/* STEP need not be a step of a procedure: the way back asks too. */
UnsootAsk unsoot_step_ask (const UnsootStep *step, const UnsootFamilyFacts *facts,
                           const UnsootRig *rig);
