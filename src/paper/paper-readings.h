/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "page-kit.h"
#include "reading-change.h"

G_BEGIN_DECLS

/* Before and after of one kind; either may be NULL. Rows are borrowed. */
typedef struct
{
  UnsootReadingKind kind;
  const UnsootReadingRow *before;
  const UnsootReadingRow *after;
} UnsootReadingPair;

/* The job's readings by kind, in the trade's order: the latest of each stage. Readings of a
 * kind that this program doesn't know are left out. Array of UnsootReadingPair. */
GArray *unsoot_paper_reading_pairs (const UnsootJobFile *file);

/* A record as the trade reads it. */
UnsootReading unsoot_paper_reading (const UnsootReadingRow *row);

/* Room to write readings before and after with the condition they were taken under; what is
 * known is filled in. */
void unsoot_paper_readings_to_fill (UnsootPageKit *kit, const UnsootJobFile *file);

/* Bars for each pair with the instrument's tolerance and the verdict's sentence; then what the
 * readings can't show. */
void unsoot_paper_readings_shown (UnsootPageKit *kit, const UnsootJobFile *file);

G_END_DECLS
