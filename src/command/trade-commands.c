/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "dose.h"
#include "pick.h"
#include "procedure-text.h"
#include "trade-error.h"
#include "vin.h"

/* What needs no book: the trade's own rules, asked from a script. */

static const char *
verdict_slug (UnsootVinVerdict verdict)
{
  switch (verdict)
    {
    case UNSOOT_VIN_VALID:
      return "valid";
    case UNSOOT_VIN_UNCHECKED:
      return "unchecked";
    case UNSOOT_VIN_WRONG_LENGTH:
      return "wrong-length";
    case UNSOOT_VIN_WRONG_CHARACTER:
      return "wrong-character";
    case UNSOOT_VIN_WRONG_CHECK_DIGIT:
      return "wrong-check-digit";
    }
  g_return_val_if_reached (NULL);
}

static char *
verdict_words (UnsootVinVerdict verdict)
{
  switch (verdict)
    {
    case UNSOOT_VIN_VALID:
      return g_strdup (_ ("right"));
    case UNSOOT_VIN_UNCHECKED:
      return g_strdup (_ ("may be right"));
    case UNSOOT_VIN_WRONG_LENGTH:
    case UNSOOT_VIN_WRONG_CHARACTER:
    case UNSOOT_VIN_WRONG_CHECK_DIGIT:
      return g_strdup (_ ("wrong"));
    }
  g_return_val_if_reached (NULL);
}

static const UnsootAnswerColumn vin_columns[] = {
  { "vin", N_ ("VIN"), FALSE },
  { "verdict", N_ ("It is"), FALSE },
  { "years", N_ ("Year"), FALSE },
  { "shown", N_ ("9th"), FALSE },
  { "calculated", N_ ("By the rest"), FALSE },
  { "sentence", N_ ("Why"), FALSE },
  { NULL },
};

static UnsootCell
letter_cell (char letter)
{
  const char text[] = { letter, '\0' };

  return letter != '\0' ? unsoot_cell_text (text) : unsoot_cell_none ();
}

static gboolean
vin_is_wrong (UnsootVinVerdict verdict)
{
  return verdict != UNSOOT_VIN_VALID && verdict != UNSOOT_VIN_UNCHECKED;
}

/* Whether it is acceptable: a maker from elsewhere is only warned about. */
static gboolean
tell_vin (UnsootAnswerTable *table, const char *text, UnsootWeightClass weight, int year)
{
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (text);
  gboolean wrong = vin_is_wrong (check->verdict);
  UnsootVinYears years = { 0 };

  if (check->verdict != UNSOOT_VIN_WRONG_LENGTH && check->verdict != UNSOOT_VIN_WRONG_CHARACTER)
    years = unsoot_vin_model_years (check->vin, weight, year);
  g_autofree char *words = unsoot_vin_years_words (&years);
  unsoot_answer_cell (table, unsoot_cell_text (check->vin != NULL ? check->vin : text));
  unsoot_answer_cell (
      table, unsoot_cell_both (verdict_slug (check->verdict), verdict_words (check->verdict)));
  unsoot_answer_cell (table, unsoot_cell_text (words));
  unsoot_answer_cell (table, letter_cell (check->shown));
  unsoot_answer_cell (table, letter_cell (check->calculated));
  unsoot_answer_cell (table, unsoot_cell_text (check->sentence));
  return !wrong;
}

static gboolean
run_vin (UnsootCall *call, GError **error)
{
  int gvwr = 0, wrong = 0;
  const GOptionEntry options[]
      = { { "gvwr", 'g', 0, G_OPTION_ARG_INT, &gvwr,
            N_ ("Rated gross weight in pounds, which may settle the year"), N_ ("LB") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, G_MAXUINT, error))
    return FALSE;
  g_autoptr (GDateTime) now = g_date_time_new_from_unix_utc (call->who.now);
  UnsootAnswerTable *table = unsoot_answer_table (call->answer, "vins", _ ("VINs"), vin_columns);
  for (guint i = 0; i < call->n_args; i++)
    if (!tell_vin (table, call->args[i], unsoot_weight_class (gvwr), g_date_time_get_year (now)))
      wrong++;
  call->tell_anyway = TRUE;
  if (wrong > 0)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_INVALID,
                 ngettext ("%d VIN is wrong. The error may be anywhere in it, not only in the "
                           "check digit.",
                           "%d VINs are wrong. The error may be anywhere in them, not only in the "
                           "check digit.",
                           (gulong) wrong),
                 wrong);
  return wrong == 0;
}

static const UnsootAnswerColumn fault_columns[] = {
  { "step", N_ ("Step"), TRUE },  { "words", N_ ("What"), FALSE }, { "rule", N_ ("Rule"), FALSE },
  { "number", N_ ("No."), TRUE }, { "reason", N_ ("Why"), FALSE }, { NULL },
};

static void
tell_fault (UnsootAnswerTable *table, const UnsootProcedure *procedure, const UnsootFault *fault)
{
  gboolean at_end = fault->step < 0 || fault->step >= (int) procedure->steps->len;
  g_autofree char *words = at_end
                               ? g_strdup (_ ("at the end"))
                               : unsoot_step_words (unsoot_procedure_step (procedure, fault->step));
  int number = unsoot_rule_number (fault->rule);

  unsoot_answer_cell (table,
                      at_end ? unsoot_cell_none () : unsoot_cell_int (fault->step + 1, NULL));
  unsoot_answer_cell (table, unsoot_cell_text (words));
  unsoot_answer_cell (table, unsoot_cell_text (unsoot_rule_to_slug (fault->rule)));
  unsoot_answer_cell (table, number > 0 ? unsoot_cell_int (number, NULL) : unsoot_cell_none ());
  unsoot_answer_cell (table, unsoot_cell_text (fault->reason));
}

static gboolean
tell_procedure (UnsootCall *call, const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                GError **error)
{
  g_autoptr (GArray) faults = unsoot_faults_new ();
  gboolean passes = unsoot_procedure_check (procedure, facts, faults);

  unsoot_answer_put (call->answer, "title", _ ("Procedure"), unsoot_cell_text (procedure->title));
  unsoot_answer_put (call->answer, "family", _ ("Family"), unsoot_cell_text (facts->name));
  unsoot_answer_put (call->answer, "steps", _ ("Steps"),
                     unsoot_cell_int (procedure->steps->len, NULL));
  unsoot_answer_put (call->answer, "accepted", _ ("Accepted"), unsoot_cell_flag (passes));
  UnsootAnswerTable *table
      = unsoot_answer_table (call->answer, "faults", _ ("Faults"), fault_columns);
  for (guint i = 0; i < faults->len; i++)
    tell_fault (table, procedure, &g_array_index (faults, UnsootFault, i));
  call->tell_anyway = TRUE;
  if (!passes)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED,
                 ngettext ("The procedure is refused for %u fault. Nobody should follow it.",
                           "The procedure is refused for %u faults. Nobody should follow it.",
                           faults->len),
                 faults->len);
  return passes;
}

static gboolean
run_procedure (UnsootCall *call, GError **error)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autofree char *text = NULL;

  if (!unsoot_call_begin (call, NULL, 1, 1, error)
      || !g_file_get_contents (call->args[0], &text, NULL, error))
    return FALSE;
  if (!unsoot_procedure_parse (text, &procedure, &facts, error))
    {
      g_prefix_error (error, "%s: ", call->args[0]);
      return FALSE;
    }
  return tell_procedure (call, procedure, facts, error);
}

static gboolean
read_dose_ask (const char *side, const char *size, UnsootDoseAsk *ask, GError **error)
{
  if (!unsoot_side_from_slug (side, &ask->side) || ask->side == UNSOOT_SIDE_NONE)
    return unsoot_call_misused (error, _ ("“%s” is no side: fuel or intake."), side);
  if (size != NULL && !unsoot_size_class_find (size, &ask->family_size))
    return unsoot_call_misused (error, _ ("“%s” is no size: small, light or heavy."), size);
  if (size == NULL && ask->gvwr_lb <= 0)
    return unsoot_call_misused (error, _ ("Say --gvwr or --size: the dose follows from it."));
  return TRUE;
}

static gboolean
run_dose (UnsootCall *call, GError **error)
{
  g_autofree char *size = NULL;
  gint64 gvwr = 0;
  UnsootDoseAsk ask = { 0 };
  const GOptionEntry options[]
      = { { "gvwr", 'g', 0, G_OPTION_ARG_INT64, &gvwr,
            N_ ("Rated gross weight in pounds, as the door plate says"), N_ ("LB") },
          { "size", 's', 0, G_OPTION_ARG_STRING, &size,
            N_ ("Size class where no weight is known: small, light or heavy"), N_ ("SIZE") },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error))
    return FALSE;
  ask.gvwr_lb = gvwr;
  if (!read_dose_ask (call->args[0], size, &ask, error))
    return FALSE;
  g_autoptr (UnsootDose) dose = unsoot_dose (&ask);
  unsoot_answer_put (call->answer, "dose_ml", _ ("Dose"), unsoot_call_volume (dose->ml));
  unsoot_answer_put (call->answer, "rule", _ ("Rule"), unsoot_cell_text (dose->rule));
  unsoot_answer_put (call->answer, "inputs", _ ("From"), unsoot_cell_text (dose->inputs));
  unsoot_answer_put (call->answer, "source", _ ("Source"), unsoot_cell_text (dose->source));
  if (dose->origin != UNSOOT_DOSE_NONE)
    return TRUE;
  call->tell_anyway = TRUE;
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, dose->rule);
  return FALSE;
}

const UnsootCommand unsoot_trade_commands[] = {
  { "vin", N_ ("VIN…"), N_ ("Check vehicle identification numbers"),
    N_ ("After 49 CFR 565. A maker outside North America may use no check digit: that is told, "
        "not refused."),
    UNSOOT_NEEDS_NOTHING, run_vin },
  { "procedure", N_ ("FILE"), N_ ("Check a procedure's text against the rules"),
    N_ ("Lists every fault with its step, rule and reason."), UNSOOT_NEEDS_NOTHING, run_procedure },
  { "dose", N_ ("fuel|intake"), N_ ("How much fluid, and why"),
    N_ ("By common practice of the trade, without a shop's own rules: “estimate --preview” goes "
        "by those."),
    UNSOOT_NEEDS_NOTHING, run_dose },
  { NULL },
};
