/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "family-row.h"
#include "procedure-row.h"
#include "procedure.h"
#include "rows.h"

G_BEGIN_DECLS

/* The rows of families and procedures as the trade's own values, and back. */

/* What @family says as far as safety depends on it; doses of 0 are left to the caller. */
UnsootFamilyFacts *unsoot_family_row_facts (const UnsootFamilyRow *family);

/* The procedure with its phases and steps. Errors: NOT_FOUND; INVALID for a row that names
 * an act or subject that this program doesn't know. */
UnsootProcedure *unsoot_procedure_load (UnsootDb *db, gint64 procedure_id, GError **error);

/* UnsootProcedureRow of a family, newest version first. */
GPtrArray *unsoot_procedure_list (UnsootDb *db, gint64 family_id, GError **error);

/* UnsootPhaseRow and UnsootStepRow by position. */
GPtrArray *unsoot_procedure_phases (UnsootDb *db, gint64 procedure_id, GError **error);
GPtrArray *unsoot_procedure_steps (UnsootDb *db, gint64 procedure_id, GError **error);

/* The version in use for a family and sides, NULL without an error where there is none. */
UnsootProcedureRow *unsoot_procedure_in_use (UnsootDb *db, gint64 family_id, const char *sides,
                                             GError **error);

/* "fuel", "intake" or "both": what a procedure cleans. */
const char *unsoot_procedure_sides (const UnsootProcedure *procedure);

/**
 * unsoot_procedure_save:
 *
 * Checks @procedure against the family's facts, stores it as the next version for its
 * sides and retires the one before. Jobs keep the version they were run by.
 *
 * Errors: NOT_ALLOWED; UNSOOT_TRADE_ERROR_REFUSED with the first rule that it breaks, the
 * step and the reason.
 *
 * Returns: the new version's id, 0 on error.
 */
gint64 unsoot_procedure_save (UnsootDb *db, const UnsootActing *who, gint64 family_id,
                              const UnsootProcedure *procedure, GError **error);

/* A stop-use with its reason: not to be run from now on. %NULL lifts it. */
gboolean unsoot_procedure_stop (UnsootDb *db, const UnsootActing *who, gint64 procedure_id,
                                const char *reason, GError **error);

G_END_DECLS
