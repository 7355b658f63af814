/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "photos.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "job-status.h"
#include "jobs.h"

GPtrArray *
unsoot_job_photos (UnsootDb *db, gint64 job_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_photo_row_type, error,
                           "WHERE job_id = $1 ORDER BY angle, stage DESC, id", unsoot_int (job_id));
}

/* Start and end of image, ISO/IEC 10918-1: what else is in it was encoded by the caller. */
static gboolean
is_jpeg (GBytes *bytes)
{
  gsize size = 0;
  const guint8 *data = bytes != NULL ? g_bytes_get_data (bytes, &size) : NULL;

  return size > 4 && data[0] == 0xFF && data[1] == 0xD8 && data[size - 2] == 0xFF
         && data[size - 1] == 0xD9;
}

static gboolean
check_job (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, job_id, error);

  return job != NULL && unsoot_job_check_open (job, error);
}

gboolean
unsoot_photo_add (UnsootDb *db, const UnsootActing *who, UnsootPhotoRow *photo, GError **error)
{
  if (!is_jpeg (photo->jpeg) || photo->width <= 0 || photo->height <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("That is not a picture."));
  if (unsoot_deed_blank (photo->angle))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say what the picture shows: before and after are paired by it."));
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  if (deed == NULL)
    return FALSE;
  photo->id = 0;
  photo->version = 0;
  photo->at = who->now;
  photo->staff_id = who->staff_id;
  gboolean done = check_job (db, photo->job_id, error)
                  && unsoot_rows_insert (db, &unsoot_photo_row_type, photo, who, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  photo->id = 0;
  return FALSE;
}

gboolean
unsoot_photo_remove (UnsootDb *db, const UnsootActing *who, gint64 photo_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  g_autoptr (UnsootPhotoRow) photo
      = deed != NULL ? unsoot_rows_get (db, &unsoot_photo_row_type, photo_id, error) : NULL;

  if (photo == NULL || !check_job (db, photo->job_id, error))
    return FALSE;
  return unsoot_deed_end (&deed, unsoot_rows_delete (db, &unsoot_photo_row_type, photo, who, error),
                          error);
}
