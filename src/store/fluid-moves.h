/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "lot-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A stock move as it is read: with the words of what it points to. */
typedef struct
{
  UnsootStockMoveRow *move;
  char *lot;         /* its code */
  char *staff;       /* initials; NULL: the program itself */
  gint64 job_number; /* 0: none */
  gboolean taken_back;
} UnsootMoveLine;

void unsoot_move_line_free (UnsootMoveLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootMoveLine, unsoot_move_line_free)

/* UnsootMoveLine of a fluid since @from (Unix seconds), or of one lot where @lot_id is not 0;
 * oldest first. @before_ml (nullable): what was there until then. */
GPtrArray *unsoot_move_lines (UnsootDb *db, gint64 fluid_id, gint64 lot_id, gint64 from,
                              gint64 *before_ml, GError **error);

/* What a job took of a fluid beside the dose it was to have. */
typedef struct
{
  gint64 job_id;
  gint64 job_number;
  char *vehicle;
  gint64 at; /* of the last move */
  gint64 dose_ml;
  gint64 used_ml;
} UnsootFluidUse;

void unsoot_fluid_use_free (UnsootFluidUse *use);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFluidUse, unsoot_fluid_use_free)

/* UnsootFluidUse, newest first, @limit of them. */
GPtrArray *unsoot_fluid_uses (UnsootDb *db, gint64 fluid_id, guint limit, GError **error);

/* A booked job whose dose of a fluid is not there. */
typedef struct
{
  gint64 fluid_id;
  char *fluid;
  char *side;
  gint64 job_id;
  gint64 job_number;
  char *vehicle;
  gint64 starts_at;
  gint64 dose_ml;
  gint64 short_ml;
} UnsootShortJob;

void unsoot_short_job_free (UnsootShortJob *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootShortJob, unsoot_short_job_free)

/* UnsootShortJob by start; of every fluid where @fluid_id is 0. */
GPtrArray *unsoot_short_jobs (UnsootDb *db, gint64 fluid_id, gint64 now, GError **error);

G_END_DECLS
