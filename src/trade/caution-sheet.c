/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "caution-sheet.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

#define EVERYWHERE                                                                                 \
  (UNSOOT_CAUTION_MAKER | UNSOOT_CAUTION_VENTILATION | UNSOOT_CAUTION_EYES_SKIN                    \
   | UNSOOT_CAUTION_FUEL_FIRE | UNSOOT_CAUTION_IN_REACH | UNSOOT_CAUTION_MOVING                    \
   | UNSOOT_CAUTION_CHOCKS | UNSOOT_CAUTION_DISPOSAL)

/* Parts around the exhaust are opened on the intake side only. */
#define INTAKE_ALONE UNSOOT_CAUTION_HOT_PARTS

static const UnsootSlug titles[] = {
  { UNSOOT_CAUTION_MAKER, "maker", N_ ("Maker's information first") },
  { UNSOOT_CAUTION_VENTILATION, "ventilation", N_ ("Exhaust gas") },
  { UNSOOT_CAUTION_EYES_SKIN, "eyes-skin", N_ ("Eyes and skin") },
  { UNSOOT_CAUTION_FUEL_FIRE, "fuel-fire", N_ ("Pressure and fire") },
  { UNSOOT_CAUTION_IN_REACH, "in-reach", N_ ("Within reach") },
  { UNSOOT_CAUTION_HOT_PARTS, "hot-parts", N_ ("Hot parts") },
  { UNSOOT_CAUTION_MOVING, "moving", N_ ("Moving parts") },
  { UNSOOT_CAUTION_CHOCKS, "chocks", N_ ("Chocks and brake") },
  { UNSOOT_CAUTION_DISPOSAL, "disposal", N_ ("Waste") },
  { 0, NULL, NULL },
};

const char *
unsoot_caution_title (UnsootCaution caution)
{
  return unsoot_slug_words (titles, (int) caution);
}

static guint
work_cautions (UnsootSide side)
{
  switch (side)
    {
    case UNSOOT_SIDE_FUEL:
      return EVERYWHERE;
    case UNSOOT_SIDE_INTAKE:
    case UNSOOT_SIDE_NONE:
      return EVERYWHERE | INTAKE_ALONE;
    }
  g_assert_not_reached ();
}

guint
unsoot_caution_sheet (UnsootSheet sheet, UnsootSide side)
{
  switch (sheet)
    {
    case UNSOOT_SHEET_WORK_ORDER:
    case UNSOOT_SHEET_BAY:
      return work_cautions (side);
    case UNSOOT_SHEET_TAG:
      return UNSOOT_CAUTION_MAKER | UNSOOT_CAUTION_FUEL_FIRE | UNSOOT_CAUTION_HOT_PARTS
             | UNSOOT_CAUTION_CHOCKS | UNSOOT_CAUTION_DISPOSAL;
    case UNSOOT_SHEET_CUSTOMER:
      return UNSOOT_CAUTION_MAKER;
    }
  g_assert_not_reached ();
}

const char *
unsoot_caution_closing (void)
{
  return unsoot_caution_text (UNSOOT_CAUTION_MAKER);
}
