/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "procedure-row.h"
#include "procedure.h"
#include "rows.h"

G_BEGIN_DECLS

/* Steps and phases as rows, and back: reading what was written gives an equal procedure. */

/* Errors: DAMAGED for a slug that this program doesn't know, naming the step. */
UnsootProcedure *unsoot_procedure_from_rows (const UnsootProcedureRow *row, GPtrArray *phases,
                                             GPtrArray *steps, GError **error);

/* Part of the caller's deed. */
gboolean unsoot_procedure_rows_insert (UnsootDb *db, const UnsootActing *who, gint64 procedure_id,
                                       const UnsootProcedure *procedure, GError **error);

G_END_DECLS
