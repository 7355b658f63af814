/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "weight-class.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

/* 49 CFR 565.15, table II: upper limits in pounds, each included. */
static const gint64 limits[] = {
  [UNSOOT_WEIGHT_A] = 3000,  [UNSOOT_WEIGHT_B] = 4000,  [UNSOOT_WEIGHT_C] = 5000,
  [UNSOOT_WEIGHT_D] = 6000,  [UNSOOT_WEIGHT_E] = 7000,  [UNSOOT_WEIGHT_F] = 8000,
  [UNSOOT_WEIGHT_G] = 9000,  [UNSOOT_WEIGHT_H] = 10000, [UNSOOT_WEIGHT_3] = 14000,
  [UNSOOT_WEIGHT_4] = 16000, [UNSOOT_WEIGHT_5] = 19500, [UNSOOT_WEIGHT_6] = 26000,
  [UNSOOT_WEIGHT_7] = 33000, [UNSOOT_WEIGHT_8] = 0,
};

/* FHWA splits class 2 at 8,500 lb; the letter classes don't. */
#define FHWA_1_LB 6000
#define FHWA_2A_LB 8500
#define FHWA_2B_LB 10000

/* A truck sold as "one-ton" is class 3 (from memory). */
#define ONE_TON_LB 14000

static const UnsootSlug classes[] = {
  { UNSOOT_WEIGHT_A, "A", "A" }, { UNSOOT_WEIGHT_B, "B", "B" }, { UNSOOT_WEIGHT_C, "C", "C" },
  { UNSOOT_WEIGHT_D, "D", "D" }, { UNSOOT_WEIGHT_E, "E", "E" }, { UNSOOT_WEIGHT_F, "F", "F" },
  { UNSOOT_WEIGHT_G, "G", "G" }, { UNSOOT_WEIGHT_H, "H", "H" }, { UNSOOT_WEIGHT_3, "3", "3" },
  { UNSOOT_WEIGHT_4, "4", "4" }, { UNSOOT_WEIGHT_5, "5", "5" }, { UNSOOT_WEIGHT_6, "6", "6" },
  { UNSOOT_WEIGHT_7, "7", "7" }, { UNSOOT_WEIGHT_8, "8", "8" }, { 0, NULL, NULL },
};

static const UnsootSlug sizes[] = {
  { UNSOOT_SIZE_UNKNOWN, "unknown", N_ ("size not known") },
  { UNSOOT_SIZE_SMALL, "small", N_ ("below ¾-ton") },
  { UNSOOT_SIZE_LIGHT, "light", N_ ("¾-ton and one-ton") },
  { UNSOOT_SIZE_HEAVY, "heavy", N_ ("larger than one-ton") },
  { 0, NULL, NULL },
};

UnsootWeightClass
unsoot_weight_class (gint64 gvwr_lb)
{
  if (gvwr_lb <= 0)
    return UNSOOT_WEIGHT_UNKNOWN;
  for (int c = UNSOOT_WEIGHT_A; c < UNSOOT_WEIGHT_8; c++)
    if (gvwr_lb <= limits[c])
      return (UnsootWeightClass) c;
  return UNSOOT_WEIGHT_8;
}

gint64
unsoot_weight_class_limit_lb (UnsootWeightClass weight_class)
{
  return limits[weight_class];
}

const char *
unsoot_weight_class_slug (UnsootWeightClass weight_class)
{
  return unsoot_slug_of (classes, (int) weight_class);
}

gboolean
unsoot_weight_class_find (const char *slug, UnsootWeightClass *weight_class)
{
  int value = 0;

  if (!unsoot_slug_find (classes, slug, &value))
    return FALSE;
  *weight_class = (UnsootWeightClass) value;
  return TRUE;
}

const char *
unsoot_weight_fhwa (gint64 gvwr_lb)
{
  if (gvwr_lb <= 0)
    return NULL;
  if (gvwr_lb <= FHWA_1_LB)
    return "1";
  if (gvwr_lb <= FHWA_2A_LB)
    return "2a";
  if (gvwr_lb <= FHWA_2B_LB)
    return "2b";
  return unsoot_weight_class_slug (unsoot_weight_class (gvwr_lb));
}

char *
unsoot_weight_words (gint64 gvwr_lb)
{
  const char *fhwa = unsoot_weight_fhwa (gvwr_lb);

  if (fhwa == NULL)
    return NULL;
  if (g_str_equal (fhwa, "2b"))
    return g_strdup (_ ("class 2b, ¾-ton"));
  if (g_str_equal (fhwa, "3"))
    return g_strdup (_ ("class 3, one-ton"));
  /* Translators: a truck's weight class, as in "class 6" */
  return g_strdup_printf (_ ("class %s"), fhwa);
}

UnsootSizeClass
unsoot_size_class (gint64 gvwr_lb)
{
  if (gvwr_lb <= 0)
    return UNSOOT_SIZE_UNKNOWN;
  if (gvwr_lb <= FHWA_2A_LB)
    return UNSOOT_SIZE_SMALL;
  return gvwr_lb <= ONE_TON_LB ? UNSOOT_SIZE_LIGHT : UNSOOT_SIZE_HEAVY;
}

const char *
unsoot_size_class_slug (UnsootSizeClass size)
{
  return unsoot_slug_of (sizes, (int) size);
}

const char *
unsoot_size_class_words (UnsootSizeClass size)
{
  return unsoot_slug_words (sizes, (int) size);
}

gboolean
unsoot_size_class_find (const char *slug, UnsootSizeClass *size)
{
  int value = 0;

  if (!unsoot_slug_find (sizes, slug, &value))
    return FALSE;
  *size = (UnsootSizeClass) value;
  return TRUE;
}
