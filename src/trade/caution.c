/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "caution.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

static const UnsootSlug cautions[] = {
  { UNSOOT_CAUTION_MAKER, "maker",
    N_ ("The vehicle maker's service information, local codes and licensed practice come first.") },
  { UNSOOT_CAUTION_VENTILATION, "ventilation",
    N_ ("Exhaust gas kills: doors open or extraction on, carbon monoxide alarm on.") },
  { UNSOOT_CAUTION_EYES_SKIN, "eyes-skin", N_ ("Goggles and gloves on; skin covered.") },
  { UNSOOT_CAUTION_FUEL_FIRE, "fuel-fire",
    N_ ("Fuel under pressure and fire: no flame or spark. Mist burns below the flash point.") },
  { UNSOOT_CAUTION_IN_REACH, "in-reach",
    N_ ("Extinguisher and intake plate within reach, and you know how to use them.") },
  { UNSOOT_CAUTION_HOT_PARTS, "hot-parts",
    N_ ("Hot parts: EGR, particulate filter, exhaust. Let them cool.") },
  { UNSOOT_CAUTION_MOVING, "moving", N_ ("Belts and fans: hands, hair, hoses and sleeves clear.") },
  { UNSOOT_CAUTION_CHOCKS, "chocks", N_ ("Wheels chocked, parking brake on, out of gear.") },
  { UNSOOT_CAUTION_DISPOSAL, "disposal",
    N_ ("Used fluid and rags are waste: dispose of them by local rules.") },
  { 0, NULL, NULL },
};

const char *
unsoot_caution_to_slug (UnsootCaution caution)
{
  return unsoot_slug_of (cautions, (int) caution);
}

gboolean
unsoot_caution_from_slug (const char *slug, UnsootCaution *caution)
{
  int value;

  if (!unsoot_slug_find (cautions, slug, &value))
    return FALSE;
  *caution = (UnsootCaution) value;
  return TRUE;
}

const char *
unsoot_caution_text (UnsootCaution caution)
{
  return unsoot_slug_words (cautions, (int) caution);
}
