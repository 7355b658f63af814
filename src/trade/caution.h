/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* The cautions a phase opens with. */
typedef enum
{
  UNSOOT_CAUTION_MAKER = 1 << 0,       /* the maker's information comes first */
  UNSOOT_CAUTION_VENTILATION = 1 << 1, /* exhaust gas, carbon monoxide */
  UNSOOT_CAUTION_EYES_SKIN = 1 << 2,
  UNSOOT_CAUTION_FUEL_FIRE = 1 << 3, /* fuel under pressure; mist burns below the flash point */
  UNSOOT_CAUTION_IN_REACH = 1 << 4,  /* extinguisher and intake plate */
  UNSOOT_CAUTION_HOT_PARTS = 1 << 5,
  UNSOOT_CAUTION_MOVING = 1 << 6,
  UNSOOT_CAUTION_CHOCKS = 1 << 7,
  UNSOOT_CAUTION_DISPOSAL = 1 << 8,
} UnsootCaution;

#define UNSOOT_CAUTIONS 9

const char *unsoot_caution_to_slug (UnsootCaution caution);
gboolean unsoot_caution_from_slug (const char *slug, UnsootCaution *caution);
/* The caution in full, translated. */
const char *unsoot_caution_text (UnsootCaution caution);
