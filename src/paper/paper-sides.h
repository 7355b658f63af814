/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "job-file.h"
#include "page-kit.h"
#include "side.h"

G_BEGIN_DECLS

/* What one side of the job is about. Strings and rows are borrowed from the file. */
typedef struct
{
  UnsootSide side;
  gint64 dose_ml;
  const UnsootFluidRow *fluid;
  const UnsootLotRow *lot;
} UnsootPaperSide;

/* The sides that the job cleans, fuel first; gives their number, 0 to 2. */
guint unsoot_paper_sides (const UnsootJobFile *file, UnsootPaperSide sides[2]);

/* A panel a side, beside each other: mark, name, dose, fluid; with lots and pressure window
 * where @for_work. The reason of each dose stands in its
 * panel, or of all below. */
void unsoot_paper_sides_draw (UnsootPageKit *kit, const UnsootJobFile *file, gboolean for_work);

G_END_DECLS
