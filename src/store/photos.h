/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reading-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A picture of a job: job_id, stage, angle, width, height and jpeg, which the caller has
 * decoded and encoded afresh; id, at and staff are set. Errors: NOT_ALLOWED; INVALID for
 * bytes that are no JPEG. */
gboolean unsoot_photo_add (UnsootDb *db, const UnsootActing *who, UnsootPhotoRow *photo,
                           GError **error);

/* UnsootPhotoRow of a job, before first. */
GPtrArray *unsoot_job_photos (UnsootDb *db, gint64 job_id, GError **error);

/* Takes a picture out of the book. Errors: CONSTRAINT once the job is invoiced. */
gboolean unsoot_photo_remove (UnsootDb *db, const UnsootActing *who, gint64 photo_id,
                              GError **error);

G_END_DECLS
