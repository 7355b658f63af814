/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "precheck.h"

#include <glib/gi18n-lib.h>

#include "trade-error.h"

const UnsootSlug unsoot_prechecks[] = {
  { UNSOOT_PRECHECK_OIL, "oil", N_ ("Oil between its marks, and without fuel in it?") },
  { UNSOOT_PRECHECK_COOLANT, "coolant", N_ ("Coolant between its marks?") },
  { UNSOOT_PRECHECK_TURBO, "turbo", N_ ("Turbocharger shaft without play?") },
  { UNSOOT_PRECHECK_LEAKS, "leaks", N_ ("No leak of fuel, oil, coolant or exhaust?") },
  { UNSOOT_PRECHECK_REGENERATION, "regeneration", N_ ("No regeneration active or requested?") },
  { UNSOOT_PRECHECK_SOOT, "soot", N_ ("Soot load within the maker's limit?") },
  { UNSOOT_PRECHECK_TANKS, "tanks", N_ ("Known what is in both tanks of the machine?") },
  { UNSOOT_PRECHECK_EXTRACTION, "extraction", N_ ("Exhaust extraction running?") },
  { UNSOOT_PRECHECK_CO_ALARM, "co-alarm", N_ ("Carbon monoxide alarm on?") },
  { UNSOOT_PRECHECK_PLATE, "plate", N_ ("Intake plate in reach?") },
  { UNSOOT_PRECHECK_EXTINGUISHER, "extinguisher", N_ ("Fire extinguisher in reach?") },
  { 0, NULL, NULL },
};

const UnsootSlug unsoot_precheck_answers[] = {
  { UNSOOT_PRECHECK_YES, "yes", N_ ("Yes") },
  { UNSOOT_PRECHECK_NO, "no", N_ ("No") },
  { UNSOOT_PRECHECK_NOT_APPLICABLE, "not-applicable", N_ ("Not applicable") },
  { 0, NULL, NULL },
};

/* Oil, leaks, soot load and unknown fluid run an engine away or set fire to it; air, plate and
   extinguisher are what is left when that happens. None of these gives way to a reason. */
static const struct
{
  gboolean may_not_apply;
  gboolean may_override;
  const char *why;
} facts[UNSOOT_PRECHECKS] = {
  [UNSOOT_PRECHECK_OIL]
  = { FALSE, FALSE,
      N_ ("Oil that stands too high or is thinned with fuel is drawn in as fuel, and "
          "the engine runs away.") },
  [UNSOOT_PRECHECK_COOLANT]
  = { TRUE, TRUE, N_ ("The engine idles long under load of heat; without coolant it seizes.") },
  [UNSOOT_PRECHECK_TURBO]
  = { TRUE, TRUE, N_ ("A worn turbocharger lets oil into the intake once it is clean.") },
  [UNSOOT_PRECHECK_LEAKS]
  = { FALSE, FALSE, N_ ("What leaks now burns or sprays once the cleaner is under pressure.") },
  [UNSOOT_PRECHECK_REGENERATION]
  = { TRUE, TRUE, N_ ("A regeneration is an ignition source in the exhaust; disable it first.") },
  [UNSOOT_PRECHECK_SOOT]
  = { TRUE, FALSE,
      N_ ("Loosened soot on a full filter burns uncontrolled. The vehicle maker's "
          "limit comes first.") },
  [UNSOOT_PRECHECK_TANKS]
  = { FALSE, FALSE, N_ ("The two fluids never mix: in doubt drain, flush and record it.") },
  [UNSOOT_PRECHECK_EXTRACTION]
  = { TRUE, FALSE, N_ ("Exhaust gas kills unnoticed; out in the open it does not apply.") },
  [UNSOOT_PRECHECK_CO_ALARM]
  = { TRUE, FALSE, N_ ("It is the only one that notices carbon monoxide in time.") },
  [UNSOOT_PRECHECK_PLATE]
  = { FALSE, FALSE, N_ ("A running-away engine is stopped by the plate, not by the key.") },
  [UNSOOT_PRECHECK_EXTINGUISHER]
  = { FALSE, FALSE, N_ ("Mist burns below the flash point of the fluid.") },
};

const char *
unsoot_precheck_why (UnsootPrecheck check)
{
  return _ (facts[check].why);
}

gboolean
unsoot_precheck_may_not_apply (UnsootPrecheck check)
{
  return facts[check].may_not_apply;
}

gboolean
unsoot_precheck_may_override (UnsootPrecheck check)
{
  return facts[check].may_override;
}

/* Takes @sentence. */
static gboolean
refuse (GError **error, char *sentence)
{
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, sentence);
  g_free (sentence);
  return FALSE;
}

static gboolean
is_blank (const char *text)
{
  while (text != NULL && g_ascii_isspace (*text))
    text++;
  return text == NULL || *text == '\0';
}

gboolean
unsoot_precheck_check (UnsootPrecheck check, UnsootPrecheckAnswer answer, gboolean overridden,
                       const char *reason, GError **error)
{
  const char *question = unsoot_slug_words (unsoot_prechecks, (int) check);

  if (answer == UNSOOT_PRECHECK_NOT_APPLICABLE && !facts[check].may_not_apply)
    return refuse (error, g_strdup_printf (_ ("“%s” always applies: answer yes or no."), question));
  if (answer == UNSOOT_PRECHECK_NOT_APPLICABLE && is_blank (reason))
    return refuse (error, g_strdup_printf (_ ("“%s”: say why it does not apply."), question));
  if (overridden && answer != UNSOOT_PRECHECK_NO)
    return refuse (error, g_strdup_printf (_ ("“%s”: only a no can be overridden."), question));
  if (overridden && !facts[check].may_override)
    return refuse (
        error,
        g_strdup_printf (_ ("“%s” can't be overridden: put it right before the engine starts."),
                         question));
  if (overridden && is_blank (reason))
    return refuse (error, g_strdup_printf (_ ("“%s”: say why it may run all the same."), question));
  return TRUE;
}

gboolean
unsoot_precheck_lets_begin (UnsootPrecheckAnswer answer, gboolean overridden)
{
  return answer != UNSOOT_PRECHECK_NO || overridden;
}
