/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "fluid-moves.h"
#include "fluid-supply.h"
#include "lots.h"

G_BEGIN_DECLS

/* All that the page of a fluid shows, read in one go. */
typedef struct
{
  UnsootFluidSupply *supply;
  GPtrArray *lots;       /* UnsootLotStock */
  GPtrArray *containers; /* UnsootContainerRow that are open, of all lots */
  GPtrArray *moves;      /* UnsootMoveLine of the picture's days, oldest first */
  gint64 before_ml;      /* what there was before them */
  GPtrArray *uses;       /* UnsootFluidUse */
  GPtrArray *shorts;     /* UnsootShortJob */
  GPtrArray *suppliers;  /* UnsootSupplierRow, all */
  GPtrArray *past;       /* UnsootSupplyOrder of the last, newest first, open ones too */
} UnsootFluidFile;

void unsoot_fluid_file_free (UnsootFluidFile *file);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFluidFile, unsoot_fluid_file_free)

/* @today: ISO date; @id 0: the first fluid. */
UnsootFluidFile *unsoot_fluid_file_load (UnsootDb *db, gint64 id, const char *today, gint64 now,
                                         GError **error);

G_END_DECLS
