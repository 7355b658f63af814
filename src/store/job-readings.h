/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reading-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* UnsootReadingRow of a job, by kind, before first. */
GPtrArray *unsoot_job_readings (UnsootDb *db, gint64 job_id, GError **error);

/* Of all of a vehicle's jobs, oldest first. */
GPtrArray *unsoot_vehicle_readings (UnsootDb *db, gint64 vehicle_id, GError **error);

/**
 * unsoot_reading_add:
 * @reading: job_id, stage, kind, typed, unit, its condition; value where nothing was typed.
 *   id, at and staff are set, the value is the typed one in SI
 *
 * Errors: NOT_ALLOWED; INVALID for an unknown kind or unit, or a value outside what such a
 * thing can be; CONSTRAINT for an after that was taken under another condition than its
 * before: the pair would show nothing, and the sentence says what differs.
 */
gboolean unsoot_reading_add (UnsootDb *db, const UnsootActing *who, UnsootReadingRow *reading,
                             GError **error);

/* Corrects or takes out a reading, until the job is invoiced. */
gboolean unsoot_reading_save (UnsootDb *db, const UnsootActing *who, UnsootReadingRow *reading,
                              GError **error);
gboolean unsoot_reading_remove (UnsootDb *db, const UnsootActing *who, gint64 reading_id,
                                GError **error);

G_END_DECLS
