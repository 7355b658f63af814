/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "flammable.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define ML_PER_US_GALLON 3785.411784 /* NIST SP 811 */

/* The law's limits are whole in °C as well: 73.4, 95, 140 and 199.4 °F. */
#define FLASH_LOW 23.0
#define BOILING_LOW 35.0
#define FLASH_MIDDLE 60.0
#define FLASH_HIGH 93.0

/* A limit typed in °F must not fall beside itself by the last bit. */
static double
steady (double celsius)
{
  return round (celsius * 1e6) / 1e6;
}

UnsootFlammable
unsoot_flammable_category (double flash_c, double boiling_c)
{
  if (isnan (flash_c))
    return UNSOOT_FLAMMABLE_UNKNOWN;
  double flash = steady (flash_c);
  if (flash < FLASH_LOW)
    return steady (boiling_c) > BOILING_LOW ? UNSOOT_FLAMMABLE_2 : UNSOOT_FLAMMABLE_1;
  if (flash <= FLASH_MIDDLE)
    return UNSOOT_FLAMMABLE_3;
  return flash <= FLASH_HIGH ? UNSOOT_FLAMMABLE_4 : UNSOOT_FLAMMABLE_NOT;
}

UnsootFlammable
unsoot_flammable_category_f (double flash_f, double boiling_f)
{
  return unsoot_flammable_category ((flash_f - 32) / 1.8, (boiling_f - 32) / 1.8);
}

const char *
unsoot_flammable_statement (UnsootFlammable category)
{
  switch (category)
    {
    case UNSOOT_FLAMMABLE_1:
      return "H224";
    case UNSOOT_FLAMMABLE_2:
      return "H225";
    case UNSOOT_FLAMMABLE_3:
      return "H226";
    case UNSOOT_FLAMMABLE_4:
      return "H227";
    case UNSOOT_FLAMMABLE_UNKNOWN:
    case UNSOOT_FLAMMABLE_NOT:
      return NULL;
    }
  g_assert_not_reached ();
}

gboolean
unsoot_flammable_is_d001 (double flash_c)
{
  return steady (flash_c) < FLASH_MIDDLE;
}

/* One limit of 29 CFR 1910.106: gallons of all categories from first to last. */
typedef struct
{
  UnsootStored stored;
  UnsootFlammable first;
  UnsootFlammable last;
  double gallons;
  const char *sentence;
} Limit;

/* 1910.106(d)(3)(i) for a cabinet, (e)(2)(ii)(b) for outside one. */
static const Limit limits[] = {
  { UNSOOT_STORED_CABINET, UNSOOT_FLAMMABLE_1, UNSOOT_FLAMMABLE_3, 60,
    N_ ("A storage cabinet may hold 60 gallons of flammable liquids of categories 1 to 3; there "
        "are %.1f.") },
  { UNSOOT_STORED_CABINET, UNSOOT_FLAMMABLE_4, UNSOOT_FLAMMABLE_4, 120,
    N_ ("A storage cabinet may hold 120 gallons of flammable liquids of category 4; there are "
        "%.1f.") },
  { UNSOOT_STORED_OUTSIDE, UNSOOT_FLAMMABLE_1, UNSOOT_FLAMMABLE_1, 25,
    N_ ("Outside a cabinet a fire area may hold 25 gallons of flammable liquids of category 1; "
        "there are %.1f.") },
  { UNSOOT_STORED_OUTSIDE, UNSOOT_FLAMMABLE_2, UNSOOT_FLAMMABLE_4, 120,
    N_ ("Outside a cabinet a fire area may hold 120 gallons of flammable liquids of categories 2 "
        "to 4; there are %.1f.") },
};

static double
stored_ml (const Limit *limit, const gint64 *ml)
{
  double sum = limit->first == UNSOOT_FLAMMABLE_1 ? (double) ml[UNSOOT_FLAMMABLE_UNKNOWN] : 0;
  for (UnsootFlammable c = limit->first; c <= limit->last; c++)
    sum += (double) ml[c];
  return sum;
}

char *
unsoot_storage_check (UnsootStored stored, const gint64 ml[UNSOOT_FLAMMABLES])
{
  GString *sentences = g_string_new (NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      double gallons = stored_ml (&limits[i], ml) / ML_PER_US_GALLON;
      if (limits[i].stored != stored || gallons <= limits[i].gallons)
        continue;
      if (sentences->len > 0)
        g_string_append_c (sentences, ' ');
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
      g_string_append_printf (sentences, _ (limits[i].sentence), ceil (gallons * 10) / 10);
#pragma GCC diagnostic pop
    }
  if (sentences->len > 0)
    g_string_append (sentences, _ (" Check local rules."));
  return g_string_free (sentences, sentences->len == 0);
}
