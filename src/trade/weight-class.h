/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

/* GVWR classes of 49 CFR 565.15, table II, in order of weight. */
typedef enum
{
  UNSOOT_WEIGHT_UNKNOWN,
  UNSOOT_WEIGHT_A,
  UNSOOT_WEIGHT_B,
  UNSOOT_WEIGHT_C,
  UNSOOT_WEIGHT_D,
  UNSOOT_WEIGHT_E,
  UNSOOT_WEIGHT_F,
  UNSOOT_WEIGHT_G,
  UNSOOT_WEIGHT_H,
  UNSOOT_WEIGHT_3,
  UNSOOT_WEIGHT_4,
  UNSOOT_WEIGHT_5,
  UNSOOT_WEIGHT_6,
  UNSOOT_WEIGHT_7,
  UNSOOT_WEIGHT_8,
} UnsootWeightClass;

/**
 * UnsootSizeClass:
 * @UNSOOT_SIZE_UNKNOWN: no GVWR known and none chosen
 * @UNSOOT_SIZE_SMALL: below ¾-ton: no default dose
 * @UNSOOT_SIZE_LIGHT: ¾-ton and one-ton
 * @UNSOOT_SIZE_HEAVY: larger
 *
 * How big the machine is for the trade's doses.
 */
typedef enum
{
  UNSOOT_SIZE_UNKNOWN,
  UNSOOT_SIZE_SMALL,
  UNSOOT_SIZE_LIGHT,
  UNSOOT_SIZE_HEAVY,
} UnsootSizeClass;

/* Class of a gross vehicle weight rating in pounds; zero or less is unknown. */
UnsootWeightClass unsoot_weight_class (gint64 gvwr_lb);

/* Upper limit of @weight_class in pounds, 0 for unknown and for class 8, which has none. */
gint64 unsoot_weight_class_limit_lb (UnsootWeightClass weight_class);

/* "A" … "H", "3" … "8", or NULL for unknown; and back. */
const char *unsoot_weight_class_slug (UnsootWeightClass weight_class);
gboolean unsoot_weight_class_find (const char *slug, UnsootWeightClass *weight_class);

/* FHWA truck class "1", "2a", "2b", "3" … "8", or NULL for an unknown weight. */
const char *unsoot_weight_fhwa (gint64 gvwr_lb);

/* "class 3, one-ton", "class 2b, ¾-ton", "class 6"; NULL for an unknown weight. Free it. */
char *unsoot_weight_words (gint64 gvwr_lb);

/* Size class of a GVWR in pounds: light is 8,501 to 14,000. Common practice, no source. */
UnsootSizeClass unsoot_size_class (gint64 gvwr_lb);

const char *unsoot_size_class_slug (UnsootSizeClass size);
const char *unsoot_size_class_words (UnsootSizeClass size);
gboolean unsoot_size_class_find (const char *slug, UnsootSizeClass *size);
