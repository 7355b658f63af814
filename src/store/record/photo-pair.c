/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "photo-pair.h"

static UnsootPhotoPair *
pair_of (GArray *pairs, const char *angle)
{
  for (guint i = 0; i < pairs->len; i++)
    if (g_strcmp0 (g_array_index (pairs, UnsootPhotoPair, i).angle, angle) == 0)
      return &g_array_index (pairs, UnsootPhotoPair, i);
  g_array_append_val (pairs, ((UnsootPhotoPair){ angle, NULL, NULL }));
  return &g_array_index (pairs, UnsootPhotoPair, pairs->len - 1);
}

GArray *
unsoot_photo_pairs (const GPtrArray *photos)
{
  GArray *pairs = g_array_new (FALSE, TRUE, sizeof (UnsootPhotoPair));

  for (guint i = 0; i < photos->len; i++)
    {
      const UnsootPhotoRow *photo = photos->pdata[i];
      if (photo->chosen)
        {
          UnsootPhotoPair *pair = pair_of (pairs, photo->angle);
          *(g_strcmp0 (photo->stage, "before") == 0 ? &pair->before : &pair->after) = photo;
        }
    }
  return pairs;
}

GPtrArray *
unsoot_photos_passed_over (const GPtrArray *photos, const char *angle)
{
  GPtrArray *over = g_ptr_array_new ();

  for (guint i = 0; i < photos->len; i++)
    {
      UnsootPhotoRow *photo = photos->pdata[i];
      if (!photo->chosen && g_strcmp0 (photo->angle, angle) == 0)
        g_ptr_array_add (over, photo);
    }
  return over;
}
