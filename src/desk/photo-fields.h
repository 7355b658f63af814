/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "deed-form.h"

/* What is asked of a picture: what it shows, and which stage of the work. */
enum
{
  UNSOOT_PHOTO_ANGLE,
  UNSOOT_PHOTO_STAGE,
  UNSOOT_PHOTO_FIELDS
};

/* In the order of the choices. */
extern const char *const unsoot_photo_stages[];
extern const char *const unsoot_photo_stage_words[];

#define UNSOOT_PHOTO_ANGLE_FIELD                                                                   \
  {                                                                                                \
    .label = N_ ("What it shows"),                                                                 \
    .hint = N_ ("Before and after are paired by it: from the same side, as near"),                 \
  }
#define UNSOOT_PHOTO_STAGE_FIELD                                                                   \
  {                                                                                                \
    .label = N_ ("Taken"), .kind = UNSOOT_ASK_CHOICE, .words = unsoot_photo_stage_words,           \
  }
