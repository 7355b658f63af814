/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "machines.h"

G_BEGIN_DECLS

/* A machine with all that hangs on it. */
typedef struct
{
  UnsootMachineRow *machine;
  GPtrArray *tanks;  /* UnsootTankState, fuel first */
  GPtrArray *gauges; /* UnsootGaugeCheckRow: the last check of each gauge, next due first */
  GPtrArray *checks; /* UnsootGaugeCheckRow, all, newest first */
  GPtrArray *events; /* of both tanks: UnsootTankEventRow, newest first */
  GArray *standing;  /* gint64: the events that may be taken back, one of a tank */
} UnsootMachineFile;

void unsoot_machine_file_free (UnsootMachineFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootMachineFile, unsoot_machine_file_free)

UnsootMachineFile *unsoot_machine_file_load (UnsootDb *db, gint64 id, GError **error);

/* UnsootMachineFile of all machines in use, by name. */
GPtrArray *unsoot_machine_files (UnsootDb *db, GError **error);

/* A line about the hoses and one about the gauges, as far as something is to be said; @late
 * (nullable) is set where a day is past. The caller frees. */
char *unsoot_machine_hoses_words (const UnsootMachineFile *file, const char *today, gboolean *late);
char *unsoot_machine_gauge_words (const UnsootMachineFile *file, const char *today, gboolean *late);

/* Whether that is to be done now: past its day, or so near that Today speaks of it. */
gboolean unsoot_machine_hoses_due (const UnsootMachineFile *file, const char *today);
gboolean unsoot_machine_gauge_due (const UnsootMachineFile *file, const char *today);

G_END_DECLS
