/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "act.h"
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
