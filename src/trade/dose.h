/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "side.h"
#include "weight-class.h"

/* One dose rule of the shop. */
typedef struct
{
  UnsootSide side;
  UnsootSizeClass size;
  gint64 ml;
  const char *source; /* where the shop has it from */
} UnsootDoseRule;

/* Which of the three ways gave the dose. */
typedef enum
{
  UNSOOT_DOSE_NONE, /* no default: the lead technician enters it */
  UNSOOT_DOSE_BY_FAMILY,
  UNSOOT_DOSE_BY_SIZE,
} UnsootDoseOrigin;

/* What the dose is reasoned from. */
typedef struct
{
  UnsootSide side;
  const char *family_name; /* NULL: family not settled */
  gint64 family_ml;        /* the family's own dose, 0: none */
  UnsootSizeClass family_size;
  gint64 gvwr_lb;              /* as the door plate says, 0: unknown */
  const UnsootDoseRule *rules; /* the shop's own; NULL: common practice */
  gsize n_rules;
} UnsootDoseAsk;

/**
 * UnsootDose:
 * @ml: the dose, or 0 with %UNSOOT_DOSE_NONE
 * @rule: "2 L: class 3, one-ton"
 * @inputs: what it was reasoned from: "Intake side; family …; GVWR 13300 lb, …"
 * @source: where the rule is from
 */
typedef struct
{
  UnsootDoseOrigin origin;
  UnsootSide side;
  UnsootSizeClass size;
  gint64 ml;
  char *rule;
  char *inputs;
  char *source;
} UnsootDose;

/* The trade's usual doses: common practice, no source. A shop's own rules are seeded with them. */
const UnsootDoseRule *unsoot_dose_common_practice (gsize *n_rules);

/**
 * unsoot_dose:
 *
 * The dose for one side and why: the family's own, else the rule for the size
 * class (the vehicle's own by its GVWR where known, else the family's), else none.
 * Where the shop has rules, only they count. Free with unsoot_dose_free ().
 */
UnsootDose *unsoot_dose (const UnsootDoseAsk *ask);
void unsoot_dose_free (UnsootDose *dose);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (UnsootDose, unsoot_dose_free)

/* "2 L", "1.5 L", "750 mL": a volume as the trade says it. Free it. */
char *unsoot_dose_volume_words (gint64 ml);
