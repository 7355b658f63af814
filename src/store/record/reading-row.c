/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-row.h"

#include <glib/gi18n-lib.h>
#include <stddef.h>

static const UnsootField reading_columns[] = {
  UNSOOT_COLUMN (UnsootReadingRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootReadingRow, stage, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, kind, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, value, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, typed, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, unit, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, instrument, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, tolerance, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, rpm, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, load_percent, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, coolant_c, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, egr_state, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, regeneration, BOOL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, barometer_pa, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, ambient_c, REAL, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootReadingRow, staff_id, INT64, REF),
};
UNSOOT_DEFINE_RECORD (UnsootReadingRow, unsoot_reading_row, "readings", N_ ("reading"), FALSE,
                      reading_columns)

static const UnsootField photo_columns[] = {
  UNSOOT_COLUMN (UnsootPhotoRow, id, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, version, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, job_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPhotoRow, stage, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, angle, TEXT, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, width, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, height, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, jpeg, BYTES, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, at, INT64, PLAIN),
  UNSOOT_COLUMN (UnsootPhotoRow, staff_id, INT64, REF),
  UNSOOT_COLUMN (UnsootPhotoRow, chosen, BOOL, PLAIN),
};
UNSOOT_DEFINE_RECORD (UnsootPhotoRow, unsoot_photo_row, "photos", N_ ("photo"), FALSE,
                      photo_columns)
