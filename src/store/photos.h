/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reading-row.h"
#include "rows.h"

G_BEGIN_DECLS

/* A picture of a job: job_id, stage, angle, width, height and jpeg, which the caller has
 * decoded and encoded afresh; id, at and staff are set, and it is chosen over what shows the
 * same at the same stage. Errors: NOT_ALLOWED; INVALID for bytes that are no JPEG; CONSTRAINT
 * once the job is invoiced, as of all deeds here. */
gboolean unsoot_photo_add (UnsootDb *db, const UnsootActing *who, UnsootPhotoRow *photo,
                           GError **error);

/* UnsootPhotoRow of a job, before first. */
GPtrArray *unsoot_job_photos (UnsootDb *db, gint64 job_id, GError **error);

/* That one is shown and printed, of those that show the same at the same stage. */
gboolean unsoot_photo_choose (UnsootDb *db, const UnsootActing *who, gint64 photo_id,
                              GError **error);

/* It shows something else, or was taken at the other stage. It is chosen there, and the newest of
 * those it leaves in its place. Errors: CONFLICT, INVALID. */
gboolean unsoot_photo_tell (UnsootDb *db, const UnsootActing *who, gint64 photo_id, gint64 version,
                            const char *stage, const char *angle, GError **error);

/* Takes a picture out of the book; the newest of those like it stands in its place. */
gboolean unsoot_photo_remove (UnsootDb *db, const UnsootActing *who, gint64 photo_id,
                              GError **error);

G_END_DECLS
