/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-view-file.h"
#include "lots.h"
#include "machines.h"
#include "runs.h"

/* A machine that a run could be begun on. */
typedef struct
{
  UnsootMachineRow *row;
  GPtrArray *tanks; /* UnsootTankState, fuel first */
  gboolean busy;    /* with another run */
} UnsootBayMachine;

/* What the bay shows of one job. */
typedef struct
{
  UnsootJobViewFile *view;
  UnsootRun *run; /* NULL: none begun yet */
  gint64 run_id;
  UnsootRunEventKind last; /* event */
  gint64 last_at;
  UnsootHappening happening;     /* the last that stopped it */
  GPtrArray *lots[UNSOOT_SIDES]; /* UnsootLotStock of the fluid meant, first to expire first */
  GPtrArray *machines;           /* UnsootBayMachine; empty while a run goes on */
} UnsootBayFile;

/* Errors: NOT_FOUND; DAMAGED where the run does not replay. */
UnsootBayFile *unsoot_bay_file_load (UnsootDb *db, gint64 job_id, gint64 now, GError **error);
void unsoot_bay_file_free (UnsootBayFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootBayFile, unsoot_bay_file_free)

/* Whether the run, and with it the bay, is not yet over. */
gboolean unsoot_bay_file_goes_on (const UnsootBayFile *file);

/* Whether the vehicle is there and nothing was begun on it yet. */
gboolean unsoot_bay_file_may_begin (const UnsootBayFile *file);
