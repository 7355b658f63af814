/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

#include "slug.h"

/* What is looked at before a vehicle is started on cleaner. Each is answered; one that is bad or
 * unanswered keeps the run from beginning. The vehicle maker's information comes first: what it
 * forbids no override allows. Which may be overridden, and for which "not applicable" makes
 * sense, is the trade's caution: common practice, no source. */
typedef enum
{
  UNSOOT_PRECHECK_OIL,
  UNSOOT_PRECHECK_COOLANT,
  UNSOOT_PRECHECK_TURBO,
  UNSOOT_PRECHECK_LEAKS,
  UNSOOT_PRECHECK_REGENERATION,
  UNSOOT_PRECHECK_SOOT,
  UNSOOT_PRECHECK_TANKS,
  UNSOOT_PRECHECK_EXTRACTION,
  UNSOOT_PRECHECK_CO_ALARM,
  UNSOOT_PRECHECK_PLATE,
  UNSOOT_PRECHECK_EXTINGUISHER,
} UnsootPrecheck;

#define UNSOOT_PRECHECKS (UNSOOT_PRECHECK_EXTINGUISHER + 1)

typedef enum
{
  UNSOOT_PRECHECK_YES, /* as it should be */
  UNSOOT_PRECHECK_NO,
  UNSOOT_PRECHECK_NOT_APPLICABLE,
} UnsootPrecheckAnswer;

/* "oil", "coolant" … with the question each asks, to be answered with yes. */
extern const UnsootSlug unsoot_prechecks[];

/* "yes", "no", "not-applicable". */
extern const UnsootSlug unsoot_precheck_answers[];

/* Why it matters, a sentence, translated. */
const char *unsoot_precheck_why (UnsootPrecheck check);

/* Whether "not applicable" is an answer to it: no filter, no turbo, out in the open. */
gboolean unsoot_precheck_may_not_apply (UnsootPrecheck check);

/* Whether the lead technician may have it run all the same, with a reason. */
gboolean unsoot_precheck_may_override (UnsootPrecheck check);

/**
 * unsoot_precheck_check:
 * @overridden: the run may begin in spite of a no
 * @reason: (nullable): needed for a no that is overridden and for "not applicable"
 *
 * Errors: UNSOOT_TRADE_ERROR_REFUSED, naming the question and what is missing or not allowed.
 */
gboolean unsoot_precheck_check (UnsootPrecheck check, UnsootPrecheckAnswer answer,
                                gboolean overridden, const char *reason, GError **error);

/* Whether a run may begin with this answer. */
gboolean unsoot_precheck_lets_begin (UnsootPrecheckAnswer answer, gboolean overridden);
