/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "side.h"

/* What the engine family says, as far as safety depends on it. */
typedef struct
{
  char *name;
  gboolean has_lift_pump;
  gboolean lift_pump_bypass_allowed; /* else its lead is unplugged */
  double window_min_pa;              /* supply pressure while running; NAN: none entered */
  double window_max_pa;
  gboolean has_egr;
  gboolean has_egr_cooler;
  gboolean has_heater;          /* intake heater */
  gboolean has_regeneration;    /* particulate filter that burns itself free */
  gboolean has_road;            /* else a run under load ends the job */
  GPtrArray *low_points;        /* of char *: every low pipe and charge cooler that is drained */
  gint64 dose_ml[UNSOOT_SIDES]; /* indexed by side; 0: none entered */
} UnsootFamilyFacts;

UnsootFamilyFacts *unsoot_family_facts_new (const char *name);
void unsoot_family_facts_add_low_point (UnsootFamilyFacts *facts, const char *name);
UnsootFamilyFacts *unsoot_family_facts_copy (const UnsootFamilyFacts *facts);
gboolean unsoot_family_facts_equal (const UnsootFamilyFacts *a, const UnsootFamilyFacts *b);
void unsoot_family_facts_free (UnsootFamilyFacts *facts);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootFamilyFacts, unsoot_family_facts_free)
