/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "reading-row.h"

G_BEGIN_DECLS

/* The same place before and after the work, as one looks at it; either may be NULL. Borrowed. */
typedef struct
{
  const char *angle;
  const UnsootPhotoRow *before;
  const UnsootPhotoRow *after;
} UnsootPhotoPair;

/**
 * unsoot_photo_pairs:
 * @photos: UnsootPhotoRow
 *
 * Of each angle the pair that is shown and printed: those chosen for it. Returns (transfer full):
 * a GArray of UnsootPhotoPair in the order in which @photos names the angles.
 */
GArray *unsoot_photo_pairs (const GPtrArray *photos);

/* Photos of that angle which are in no pair: those that another was chosen over. A GPtrArray that
 * borrows them. */
GPtrArray *unsoot_photos_passed_over (const GPtrArray *photos, const char *angle);

G_END_DECLS
