/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "record.h"

G_BEGIN_DECLS

/* Before and after, each with its condition. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 job_id; /* of jobs */
  char *stage;   /* before or after */
  char *kind;
  double value; /* SI */
  char *typed;  /* as typed */
  char *unit;
  char *instrument;
  double tolerance; /* of the instrument, SI; NULL: the kind's usual */
  double rpm;
  double load_percent;
  double coolant_c;
  char *egr_state;
  gboolean regeneration;
  double barometer_pa;
  double ambient_c;
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
} UnsootReadingRow;
UNSOOT_DECLARE_RECORD (UnsootReadingRow, unsoot_reading_row)

/* Pictures before and after. */
typedef struct
{
  gint64 id;
  gint64 version;
  gint64 job_id; /* of jobs */
  char *stage;
  char *angle; /* what it shows: pairs have the same */
  gint64 width;
  gint64 height;
  GBytes *jpeg;    /* re-encoded by us */
  gint64 at;       /* Unix seconds */
  gint64 staff_id; /* of staff */
  gboolean chosen; /* of those of its angle and stage the one that is shown and printed */
} UnsootPhotoRow;
UNSOOT_DECLARE_RECORD (UnsootPhotoRow, unsoot_photo_row)

G_END_DECLS
