/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "family-facts.h"

#include <math.h>

UnsootFamilyFacts *
unsoot_family_facts_new (const char *name)
{
  UnsootFamilyFacts *facts = g_new0 (UnsootFamilyFacts, 1);

  facts->name = g_strdup (name);
  facts->window_min_pa = facts->window_max_pa = (double) NAN;
  facts->low_points = g_ptr_array_new_with_free_func (g_free);
  return facts;
}

void
unsoot_family_facts_add_low_point (UnsootFamilyFacts *facts, const char *name)
{
  g_ptr_array_add (facts->low_points, g_strdup (name));
}

UnsootFamilyFacts *
unsoot_family_facts_copy (const UnsootFamilyFacts *facts)
{
  UnsootFamilyFacts *copy = g_memdup2 (facts, sizeof *facts);

  copy->name = g_strdup (facts->name);
  copy->low_points = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < facts->low_points->len; i++)
    unsoot_family_facts_add_low_point (copy, facts->low_points->pdata[i]);
  return copy;
}

static gboolean
same_low_points (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    if (g_strcmp0 (a->pdata[i], b->pdata[i]) != 0)
      return FALSE;
  return TRUE;
}

static gboolean
same_number (double a, double b)
{
  return isnan (a) ? isnan (b) : a == b;
}

gboolean
unsoot_family_facts_equal (const UnsootFamilyFacts *a, const UnsootFamilyFacts *b)
{
  return g_strcmp0 (a->name, b->name) == 0 && !a->has_lift_pump == !b->has_lift_pump
         && !a->lift_pump_bypass_allowed == !b->lift_pump_bypass_allowed
         && same_number (a->window_min_pa, b->window_min_pa)
         && same_number (a->window_max_pa, b->window_max_pa) && !a->has_egr == !b->has_egr
         && !a->has_egr_cooler == !b->has_egr_cooler && !a->has_heater == !b->has_heater
         && !a->has_regeneration == !b->has_regeneration && !a->has_road == !b->has_road
         && same_low_points (a->low_points, b->low_points)
         && a->dose_ml[UNSOOT_SIDE_FUEL] == b->dose_ml[UNSOOT_SIDE_FUEL]
         && a->dose_ml[UNSOOT_SIDE_INTAKE] == b->dose_ml[UNSOOT_SIDE_INTAKE];
}

void
unsoot_family_facts_free (UnsootFamilyFacts *facts)
{
  if (facts == NULL)
    return;
  g_free (facts->name);
  g_ptr_array_unref (facts->low_points);
  g_free (facts);
}
