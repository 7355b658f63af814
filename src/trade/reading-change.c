/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "reading-change.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const UnsootSlug unsoot_egr_states[] = {
  { UNSOOT_EGR_UNKNOWN, "unknown", N_ ("not noted") },
  { UNSOOT_EGR_SHUT, "shut", N_ ("shut") },
  { UNSOOT_EGR_REGULATED, "regulated", N_ ("regulated") },
  { UNSOOT_EGR_OPEN, "open", N_ ("open") },
  { 0, NULL, NULL },
};

const UnsootAlikeLimits unsoot_alike_usual = { 50, 5, 5, 1000, 5 };

/* One measured condition on both sides, ready to be compared. */
typedef struct
{
  UnsootDepends depends;
  const char *name;
  UnsootUnit unit;
  double before;
  double after;
  double limit;
} Pair;

static gboolean
is_missing (const Pair *pair, const UnsootReadingFacts *facts, char **why)
{
  gboolean before = isnan (pair->before), after = isnan (pair->after);
  if (!(facts->needs & pair->depends) || !(before || after))
    return FALSE;
  if (before && after)
    /* Translators: a condition, as in "engine speed". */
    *why = g_strdup_printf (_ ("The %s was noted for neither reading."), pair->name);
  else
    *why = g_strdup_printf (before ? _ ("The %s was not noted for the reading before.")
                                   : _ ("The %s was not noted for the reading after."),
                            pair->name);
  return TRUE;
}

/* A hair of slack, so that what is exactly at the limit still counts as alike. */
static gboolean
is_apart (const Pair *pair, const UnsootReadingFacts *facts, char **why)
{
  double gap = fabs (pair->after - pair->before);
  if (!((facts->needs | facts->heeds) & pair->depends) || !(gap > pair->limit * (1 + 1e-9)))
    return FALSE;
  int decimals = unsoot_unit_decimals (pair->unit);
  g_autofree char *before = unsoot_unit_format (pair->before, pair->unit, decimals);
  g_autofree char *after = unsoot_unit_format (pair->after, pair->unit, decimals);
  g_autofree char *limit = unsoot_unit_format (pair->limit, pair->unit, decimals);
  /* Translators: a condition, its two values, how far they may be apart. */
  *why = g_strdup_printf (_ ("The %s was %s before and %s after; readings compare within %s."),
                          pair->name, before, after, limit);
  return TRUE;
}

static gboolean
egr_differs (const UnsootReadingFacts *facts, UnsootEgrState before, UnsootEgrState after,
             char **why)
{
  gboolean unknown = before == UNSOOT_EGR_UNKNOWN || after == UNSOOT_EGR_UNKNOWN;
  gboolean needed = (facts->needs & UNSOOT_DEPENDS_EGR) != 0;
  if (!((facts->needs | facts->heeds) & UNSOOT_DEPENDS_EGR) || (unknown && !needed)
      || (before == after && !unknown))
    return FALSE;
  *why = g_strdup_printf (
      _ ("The EGR valve was %s before and %s after; it must be in the same state."),
      unsoot_slug_words (unsoot_egr_states, (int) before),
      unsoot_slug_words (unsoot_egr_states, (int) after));
  return TRUE;
}

static gboolean
regeneration_differs (const UnsootReadingFacts *facts, gboolean before, gboolean after, char **why)
{
  if (!((facts->needs | facts->heeds) & UNSOOT_DEPENDS_REGENERATION) || !before == !after)
    return FALSE;
  *why = g_strdup (before ? _ ("A regeneration ran during the reading before, none after.")
                          : _ ("A regeneration ran during the reading after, none before."));
  return TRUE;
}

gboolean
unsoot_reading_alike (UnsootReadingKind kind, const UnsootCondition *before,
                      const UnsootCondition *after, const UnsootAlikeLimits *limits, char **why)
{
  UnsootReadingFacts facts = unsoot_reading_facts (kind);
  const Pair pairs[] = {
    { UNSOOT_DEPENDS_RPM, _ ("engine speed"), UNSOOT_UNIT_RPM, before->rpm, after->rpm,
      limits->rpm },
    { UNSOOT_DEPENDS_LOAD, _ ("load"), UNSOOT_UNIT_PERCENT, before->load, after->load,
      limits->load },
    { UNSOOT_DEPENDS_COOLANT, _ ("coolant temperature"), UNSOOT_UNIT_CELSIUS, before->coolant,
      after->coolant, limits->coolant },
    { UNSOOT_DEPENDS_BAROMETER, _ ("barometer"), UNSOOT_UNIT_KPA, before->barometer,
      after->barometer, limits->barometer },
    { UNSOOT_DEPENDS_AMBIENT, _ ("outside temperature"), UNSOOT_UNIT_CELSIUS, before->ambient,
      after->ambient, limits->ambient },
  };
  *why = NULL;
  for (gsize i = 0; i < G_N_ELEMENTS (pairs); i++)
    if (is_missing (&pairs[i], &facts, why) || is_apart (&pairs[i], &facts, why))
      return FALSE;
  return !egr_differs (&facts, before->egr, after->egr, why)
         && !regeneration_differs (&facts, before->regeneration, after->regeneration, why);
}

double
unsoot_reading_tolerance (UnsootReadingKind kind, const UnsootReading *reading)
{
  const UnsootReadingFacts facts = unsoot_reading_facts (kind);

  if (!isnan (reading->tolerance))
    return fabs (reading->tolerance);
  return fmax (facts.tolerance, facts.relative * fabs (reading->value));
}

static UnsootVerdict
judge (const UnsootReadingFacts *facts, const UnsootReading *before, const UnsootReading *after,
       const UnsootReadingChange *change)
{
  double gain = 0;
  if (fabs (change->difference) <= change->tolerance)
    return UNSOOT_VERDICT_NO_CHANGE_SHOWN;
  switch (facts->better)
    {
    case UNSOOT_BETTER_NONE:
      return UNSOOT_VERDICT_NO_DIRECTION;
    case UNSOOT_BETTER_HIGHER:
      gain = change->difference;
      break;
    case UNSOOT_BETTER_LOWER:
      gain = -change->difference;
      break;
    case UNSOOT_BETTER_NEARER_ZERO:
      gain = fabs (before->value) - fabs (after->value);
      if (fabs (gain) <= change->tolerance) /* from one side of zero to the other */
        return UNSOOT_VERDICT_NO_CHANGE_SHOWN;
      break;
    }
  return gain > 0 ? UNSOOT_VERDICT_BETTER : UNSOOT_VERDICT_WORSE;
}

/* One decimal more than the readings themselves. */
static char *
format_width (UnsootReadingKind kind, double width)
{
  UnsootUnit unit = unsoot_reading_facts (kind).shown;
  return unsoot_unit_format (width, unit, unsoot_unit_decimals (unit) + 1);
}

static char *
describe (UnsootReadingKind kind, UnsootVerdict verdict, const char *before, const char *after,
          const char *tolerance)
{
  const char *name = unsoot_slug_words (unsoot_reading_kinds, (int) kind);
  switch (verdict)
    {
    /* Translators: a reading's name, its value before and after, the tolerance. */
    case UNSOOT_VERDICT_BETTER:
      return g_strdup_printf (_ ("%s: %s before, %s after. Better, by more than the %s that the "
                                 "instruments can tell."),
                              name, before, after, tolerance);
    case UNSOOT_VERDICT_WORSE:
      return g_strdup_printf (_ ("%s: %s before, %s after. Worse, by more than the %s that the "
                                 "instruments can tell."),
                              name, before, after, tolerance);
    case UNSOOT_VERDICT_NO_CHANGE_SHOWN:
      return g_strdup_printf (_ ("%s: %s before, %s after. No change shown: the instruments can't "
                                 "tell less than %s."),
                              name, before, after, tolerance);
    case UNSOOT_VERDICT_NO_DIRECTION:
      return g_strdup_printf (
          _ ("%s: %s before, %s after. Changed by more than %s, which is neither "
             "better nor worse by itself."),
          name, before, after, tolerance);
    case UNSOOT_VERDICT_NOT_COMPARABLE:
      return g_strdup_printf (_ ("%s: %s before, %s after. Not comparable."), name, before, after);
    }
  g_assert_not_reached ();
}

UnsootReadingChange
unsoot_reading_change (UnsootReadingKind kind, const UnsootReading *before,
                       const UnsootReading *after, const UnsootAlikeLimits *limits)
{
  UnsootReadingFacts facts = unsoot_reading_facts (kind);
  g_autofree char *why = NULL;
  UnsootReadingChange change = {
    .difference = after->value - before->value,
    .percent
    = before->value == 0 ? NAN : (after->value - before->value) / fabs (before->value) * 100,
    .tolerance
    = hypot (unsoot_reading_tolerance (kind, before), unsoot_reading_tolerance (kind, after)),
  };
  gboolean alike = unsoot_reading_alike (kind, &before->condition, &after->condition, limits, &why);
  change.verdict = alike ? judge (&facts, before, after, &change) : UNSOOT_VERDICT_NOT_COMPARABLE;
  g_autofree char *first = unsoot_reading_format (kind, before->value);
  g_autofree char *second = unsoot_reading_format (kind, after->value);
  g_autofree char *tolerance = format_width (kind, change.tolerance);
  g_autofree char *said = describe (kind, change.verdict, first, second, tolerance);
  change.sentence = alike ? g_steal_pointer (&said) : g_strconcat (said, " ", why, NULL);
  return change;
}

void
unsoot_reading_change_clear (UnsootReadingChange *change)
{
  g_clear_pointer (&change->sentence, g_free);
}
