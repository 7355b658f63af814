/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* A procedure carried out on a job. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 job_id;        /* of jobs */
  gint64 procedure_id;  /* of procedures */
  gint64 machine_id;    /* of machines */
  gint64 technician_id; /* of staff */
  gint64 began_at;      /* Unix seconds */
  gint64 ended_at;      /* Unix seconds */
  char *outcome;        /* finished or released; NULL: going on */
  char *signature;
  char *tag;            /* what the tag says of a vehicle released in pieces */
  gint64 fuel_lot_id;   /* of lots */
  gint64 intake_lot_id; /* of lots */
  char *start_tanks;    /* both at the start, a line each: side contents mL lot capacity */
  char *basis;          /* procedure and family facts as they were when it began */
} UnsootRunRow;
UNSOOT_DECLARE_RECORD (UnsootRunRow, unsoot_run_row)

/* Every confirmed step, value, timer and event, as it happens. */
typedef struct
{
  gint64 id;
  gint64 run_id; /* of runs */
  gint64 seq;    /* from 1 */
  char *kind;
  gint64 at;      /* when stored */
  gint64 done_at; /* when done: earlier where stamped late */
  gint64 step;    /* position in the procedure, of the phase for cautions; -1: none */
  char *happening;
  double value;    /* SI */
  gint64 ml;       /* -1: none */
  gint64 lot_id;   /* of lots */
  char *fluid;     /* the side that the lot's fluid is meant for */
  char *text;      /* reason; the step line of an act off the list */
  gint64 staff_id; /* of staff */
} UnsootRunEventRow;
UNSOOT_DECLARE_RECORD (UnsootRunEventRow, unsoot_run_event_row)

G_END_DECLS
