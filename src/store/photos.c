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

static gboolean
set_chosen (UnsootDb *db, const UnsootActing *who, UnsootPhotoRow *photo, gboolean chosen,
            GError **error)
{
  if (photo->chosen == chosen)
    return TRUE;
  photo->chosen = chosen;
  return unsoot_rows_update (db, &unsoot_photo_row_type, photo, who, error);
}

/* Of those that show the same at the same stage, the one with @id is chosen; 0: the newest. */
static gboolean
choose_among (UnsootDb *db, const UnsootActing *who, const UnsootPhotoRow *like, gint64 id,
              GError **error)
{
  g_autoptr (GPtrArray) all = unsoot_rows_list (
      db, &unsoot_photo_row_type, error,
      "WHERE job_id = $1 AND angle = $2 AND stage = $3 ORDER BY id DESC", unsoot_int (like->job_id),
      unsoot_text (like->angle), unsoot_text (like->stage));

  for (guint i = 0; all != NULL && i < all->len; i++)
    {
      UnsootPhotoRow *photo = all->pdata[i];
      if (!set_chosen (db, who, photo, id != 0 ? photo->id == id : i == 0, error))
        return FALSE;
    }
  return all != NULL;
}

static gboolean
check_angle (UnsootPhotoRow *photo, GError **error)
{
  if (photo->angle != NULL)
    g_strstrip (photo->angle);
  if (unsoot_deed_blank (photo->angle))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say what the picture shows: before and after are paired by it."));
  return TRUE;
}

gboolean
unsoot_photo_add (UnsootDb *db, const UnsootActing *who, UnsootPhotoRow *photo, GError **error)
{
  if (!is_jpeg (photo->jpeg) || photo->width <= 0 || photo->height <= 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("That is not a picture."));
  if (!check_angle (photo, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  if (deed == NULL)
    return FALSE;
  photo->id = 0;
  photo->version = 0;
  photo->chosen = TRUE;
  photo->at = who->now;
  photo->staff_id = who->staff_id;
  gboolean done = check_job (db, photo->job_id, error)
                  && unsoot_rows_insert (db, &unsoot_photo_row_type, photo, who, error)
                  && choose_among (db, who, photo, photo->id, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  photo->id = 0;
  return FALSE;
}

/* A picture whose job is still open. */
static UnsootPhotoRow *
open_photo (UnsootDb *db, gint64 photo_id, GError **error)
{
  g_autoptr (UnsootPhotoRow) photo = unsoot_rows_get (db, &unsoot_photo_row_type, photo_id, error);

  return photo != NULL && check_job (db, photo->job_id, error) ? g_steal_pointer (&photo) : NULL;
}

gboolean
unsoot_photo_choose (UnsootDb *db, const UnsootActing *who, gint64 photo_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  g_autoptr (UnsootPhotoRow) photo = deed != NULL ? open_photo (db, photo_id, error) : NULL;

  if (photo == NULL)
    return FALSE;
  return unsoot_deed_end (&deed, choose_among (db, who, photo, photo_id, error), error);
}

gboolean
unsoot_photo_tell (UnsootDb *db, const UnsootActing *who, gint64 photo_id, gint64 version,
                   const char *stage, const char *angle, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  g_autoptr (UnsootPhotoRow) photo = deed != NULL ? open_photo (db, photo_id, error) : NULL;
  g_autoptr (UnsootPhotoRow) former = photo != NULL ? open_photo (db, photo_id, error) : NULL;

  if (former == NULL)
    return FALSE;
  photo->version = version;
  photo->chosen = TRUE;
  g_free (photo->stage);
  photo->stage = g_strdup (stage);
  g_free (photo->angle);
  photo->angle = g_strdup (angle);
  return unsoot_deed_end (&deed,
                          check_angle (photo, error)
                              && unsoot_rows_update (db, &unsoot_photo_row_type, photo, who, error)
                              && choose_among (db, who, photo, photo_id, error)
                              && (!former->chosen || choose_among (db, who, former, 0, error)),
                          error);
}

gboolean
unsoot_photo_remove (UnsootDb *db, const UnsootActing *who, gint64 photo_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  g_autoptr (UnsootPhotoRow) photo = deed != NULL ? open_photo (db, photo_id, error) : NULL;

  if (photo == NULL)
    return FALSE;
  return unsoot_deed_end (&deed,
                          unsoot_rows_delete (db, &unsoot_photo_row_type, photo, who, error)
                              && (!photo->chosen || choose_among (db, who, photo, 0, error)),
                          error);
}
