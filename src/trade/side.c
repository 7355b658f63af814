/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "side.h"

#include <glib/gi18n-lib.h>

#include "slug.h"

static const UnsootSlug sides[] = {
  { UNSOOT_SIDE_NONE, "none", N_ ("No side") },
  { UNSOOT_SIDE_FUEL, "fuel", N_ ("Fuel side") },
  { UNSOOT_SIDE_INTAKE, "intake", N_ ("Intake side") },
  { 0, NULL, NULL },
};

const char *
unsoot_side_to_slug (UnsootSide side)
{
  return unsoot_slug_of (sides, (int) side);
}

gboolean
unsoot_side_from_slug (const char *slug, UnsootSide *side)
{
  int value;

  if (!unsoot_slug_find (sides, slug, &value))
    return FALSE;
  *side = (UnsootSide) value;
  return TRUE;
}

const char *
unsoot_side_label (UnsootSide side)
{
  return side == UNSOOT_SIDE_NONE ? "" : unsoot_slug_words (sides, (int) side);
}
