/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Carts with two tanks each. */
typedef struct
{
  gint64 id;
  gint64 version;
  char *name;
  char *serial;
  char *hoses_due_on; /* hoses to be replaced */
  gboolean active;
} UnsootMachineRow;
UNSOOT_DECLARE_RECORD (UnsootMachineRow, unsoot_machine_row)

typedef struct
{
  gint64 id;
  gint64 version;
  gint64 machine_id; /* of machines */
  char *side;
  gint64 capacity_ml;
  gint64 low_ml; /* what the low-level switch leaves */
} UnsootTankRow;
UNSOOT_DECLARE_RECORD (UnsootTankRow, unsoot_tank_row)

/* What each tank holds is its last event. */
typedef struct
{
  gint64 id;
  gint64 tank_id; /* of tanks */
  char *kind;
  gint64 ml;       /* what is in the tank afterwards */
  char *contents;  /* unknown, empty, clean, fresh, returned or held */
  gint64 fluid_id; /* of fluids */
  gint64 lot_id;   /* of lots */
  gint64 job_id;   /* of jobs */
  char *label;
  gint64 at;          /* Unix seconds */
  gint64 staff_id;    /* of staff */
  gint64 reverses_id; /* of tank events */
  char *reason;       /* why a correction was made */
} UnsootTankEventRow;
UNSOOT_DECLARE_RECORD (UnsootTankEventRow, unsoot_tank_event_row)

/* A machine's gauge against a reference. */
typedef struct
{
  gint64 id;
  gint64 machine_id; /* of machines */
  char *gauge;
  double reads_pa;
  double reference_pa;
  gboolean passed;
  char *next_on;   /* ISO date */
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
} UnsootGaugeCheckRow;
UNSOOT_DECLARE_RECORD (UnsootGaugeCheckRow, unsoot_gauge_check_row)

G_END_DECLS
