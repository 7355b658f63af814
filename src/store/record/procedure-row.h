/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Versions of procedures. One in use is never edited: a new version is made. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 family_id; /* of families */
  char *sides;      /* fuel, intake or both */
  char *title;
  gint64 number;     /* version, from 1 for each family and sides */
  char *state;       /* draft, in-use or retired */
  gint64 made_at;    /* Unix seconds */
  gint64 made_by;    /* of staff */
  char *stop_reason; /* a stop-use: not to be run, and why */
} UnsootProcedureRow;
UNSOOT_DECLARE_RECORD (UnsootProcedureRow, unsoot_procedure_row)

/* Phases of a procedure, each with the cautions that stand above its first step. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 procedure_id; /* of procedures */
  gint64 position;     /* from 0 */
  char *title;
  char *cautions; /* names of cautions, a space between */
} UnsootPhaseRow;
UNSOOT_DECLARE_RECORD (UnsootPhaseRow, unsoot_phase_row)

/* Steps: wording is the shop's, act and subject are typed. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 procedure_id; /* of procedures */
  gint64 position;     /* from 0, over all phases */
  gint64 phase;        /* position of its phase */
  char *act;
  char *subject;
  char *name;  /* which part, line or tool */
  char *place; /* where a tool, guard or adapter sits */
  char *side;
  char *fluid;  /* of a fill: the side that the fluid is meant for; NULL: the tank's own */
  double value; /* SI */
  char *unit;   /* as typed */
  double share; /* of the dose, 0 to 1 */
  double minutes;
  gboolean low_level;
  gboolean until_clear;
  gboolean new_gasket;
  gboolean closes; /* a guard that shuts its opening */
  char *wording;
  char *why;
} UnsootStepRow;
UNSOOT_DECLARE_RECORD (UnsootStepRow, unsoot_step_row)

G_END_DECLS
