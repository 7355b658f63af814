/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "show-run.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "caution.h"
#include "dose.h"
#include "procedure-text.h"
#include "run-recovery.h"
#include "unit.h"

static const UnsootStep *
current_step (const UnsootRun *run)
{
  const UnsootProcedure *procedure = unsoot_run_procedure (run);
  int step = unsoot_run_current (run);

  return step < (int) procedure->steps->len ? unsoot_procedure_step (procedure, step) : NULL;
}

static UnsootUnit
unit_of (const UnsootStep *step)
{
  UnsootUnit unit = UNSOOT_UNIT_PSI;

  if (step->unit != NULL && !unsoot_unit_find (step->unit, &unit))
    unit = unsoot_unit_from_words (step->unit);
  return unit;
}

char *
unsoot_show_step_value (const UnsootStep *step)
{
  UnsootUnit unit = unit_of (step);

  if (isnan (step->value))
    return NULL;
  if (step->value <= 0.0 || unit == UNSOOT_UNIT_NONE)
    return g_strdup_printf ("%g", step->value);
  return unsoot_unit_format (step->value, unit, unsoot_unit_decimals (unit));
}

/* The family's inlet pressure, where the step has to do with it. */
static char *
window_words (const UnsootFamilyFacts *facts, const UnsootStep *step)
{
  UnsootUnit unit = unit_of (step);

  if (step->subject != UNSOOT_SUBJECT_PRESSURE || isnan (facts->window_min_pa)
      || unsoot_unit_quantity (unit) != UNSOOT_QUANTITY_PRESSURE)
    return NULL;
  g_autofree char *least = unsoot_unit_format (facts->window_min_pa, unit, 1);
  g_autofree char *most = unsoot_unit_format (facts->window_max_pa, unit, 1);
  /* Translators: two pressures between which the gauge has to stay */
  return g_strdup_printf (_ ("%s to %s"), least, most);
}

/* What a fill pours, or a run has still to use. */
static gint64
volume_of (const UnsootRun *run, const UnsootStep *step)
{
  const UnsootRig *rig = unsoot_run_rig (run);
  double share = isnan (step->share) ? 1.0 : step->share;
  gint64 ml = llround ((double) unsoot_run_facts (run)->dose_ml[step->side] * share);

  if (step->side == UNSOOT_SIDE_NONE)
    return 0;
  if (step->act == UNSOOT_ACT_FILL)
    return ml;
  if (step->act != UNSOOT_ACT_RUN)
    return 0;
  return CLAMP (ml - rig->used_ml[step->side], 0, rig->tank[step->side].ml);
}

static char *
clock_words (gint64 seconds)
{
  gint64 magnitude = ABS (seconds);
  g_autofree char *clock
      = g_strdup_printf ("%d:%02d", (int) (magnitude / 60), (int) (magnitude % 60));

  /* Translators: minutes and seconds on a timer, "18:20" */
  return g_strdup_printf (seconds < 0 ? _ ("over by %s") : _ ("%s left"), clock);
}

static void
put_timer (UnsootCall *call, const UnsootRun *run, const UnsootRunOffer *offer)
{
  gint64 remaining = 0, late = 0;

  unsoot_answer_put (call->answer, "timed", _ ("Timed"), unsoot_cell_flag (offer->timed));
  if (!offer->timed)
    return;
  unsoot_answer_put (call->answer, "running", _ ("Timer runs"),
                     unsoot_cell_flag (unsoot_run_timer_counts (run)));
  if (unsoot_run_remaining (run, call->who.now, &remaining))
    unsoot_answer_put (call->answer, "remaining_seconds", _ ("Time"),
                       unsoot_cell_int (remaining, clock_words (remaining)));
  if (unsoot_run_alarm (run, call->who.now, &late))
    unsoot_answer_put (call->answer, "alarm_late_seconds", _ ("ALARM"),
                       unsoot_cell_int (late, clock_words (-late)));
}

/* Sentences for the bits of @cautions. */
static GPtrArray *
caution_texts (guint cautions)
{
  GPtrArray *texts = g_ptr_array_new ();

  for (int i = 0; i < UNSOOT_CAUTIONS; i++)
    if (cautions & (1u << i))
      g_ptr_array_add (texts, (char *) unsoot_caution_text ((UnsootCaution) (1u << i)));
  return texts;
}

static void
put_cautions (UnsootCall *call, const UnsootRun *run, const UnsootStep *step)
{
  g_autoptr (GPtrArray) texts = NULL;

  if (step->phase < 0)
    return;
  texts
      = caution_texts (unsoot_procedure_phase (unsoot_run_procedure (run), step->phase)->cautions);
  unsoot_answer_list (call->answer, "cautions", _ ("Cautions"), texts);
}

static void
put_refusal (UnsootCall *call, const UnsootFault *fault)
{
  if (fault->rule == UNSOOT_RULE_NONE)
    return;
  unsoot_answer_put (call->answer, "rule", _ ("Rule"),
                     unsoot_cell_both (unsoot_rule_to_slug (fault->rule),
                                       g_strdup (unsoot_rule_text (fault->rule))));
  unsoot_answer_put (call->answer, "refused", _ ("Refused"), unsoot_cell_text (fault->reason));
}

/* For scripts: a person has the words. */
static void
put_type (UnsootCall *call, const UnsootStep *step)
{
  const char *side = step->side != UNSOOT_SIDE_NONE ? unsoot_side_to_slug (step->side) : NULL;

  unsoot_answer_put (call->answer, "act", "",
                     unsoot_cell_both (unsoot_act_to_slug (step->act), NULL));
  unsoot_answer_put (call->answer, "subject", "",
                     unsoot_cell_both (unsoot_subject_to_slug (step->subject), NULL));
  unsoot_answer_put (call->answer, "side", "", unsoot_cell_both (side, NULL));
}

static void
put_step (UnsootCall *call, const UnsootRun *run, const UnsootStep *step)
{
  g_autofree char *words = unsoot_step_words (step);
  g_autofree char *window = window_words (unsoot_run_facts (run), step);
  const char *phase = step->phase >= 0
                          ? unsoot_procedure_phase (unsoot_run_procedure (run), step->phase)->title
                          : NULL;

  unsoot_answer_put (call->answer, "phase", _ ("Phase"), unsoot_cell_text (phase));
  put_type (call, step);
  unsoot_answer_put (call->answer, "do", _ ("Do"), unsoot_cell_text (words));
  unsoot_answer_put (call->answer, "why", _ ("Why"), unsoot_cell_text (step->why));
  unsoot_answer_put (call->answer, "value", _ ("Value"),
                     unsoot_cell_real (step->value, unsoot_show_step_value (step)));
  unsoot_answer_put (call->answer, "window", _ ("Window"), unsoot_cell_text (window));
  unsoot_answer_put (call->answer, "volume_ml", _ ("Volume"),
                     unsoot_call_volume (volume_of (run, step)));
}

/* What `run step` asks for now: the slug of its option, in words for people. */
static UnsootCell
next_cell (const UnsootRunOffer *offer)
{
  if (offer->caution)
    return unsoot_cell_both ("cautions", g_strdup (_ ("confirm that the cautions are read: "
                                                      "--cautions")));
  if (offer->ask_again)
    return unsoot_cell_both (
        "again", g_strdup_printf (_ ("confirm step %d again: --again"), offer->ask_step + 1));
  if (!offer->may_do)
    return unsoot_cell_none ();
  if (offer->timed && !offer->running)
    return unsoot_cell_both ("start", g_strdup (_ ("start its timer: --start")));
  return offer->timed ? unsoot_cell_both ("end", g_strdup (_ ("end it, with what was used")))
                      : unsoot_cell_both ("confirm", g_strdup (_ ("confirm it")));
}

static void
put_offer (UnsootCall *call, const UnsootRun *run)
{
  g_auto (UnsootRunOffer) offer = { 0 };
  const UnsootStep *step = current_step (run);
  gint64 steps = unsoot_run_procedure (run)->steps->len;

  unsoot_run_offer (run, &offer);
  unsoot_answer_put (call->answer, "steps", _ ("Steps"), unsoot_cell_int (steps, NULL));
  if (step == NULL)
    {
      unsoot_answer_put (call->answer, "may_sign", _ ("May be signed"),
                         unsoot_cell_flag (offer.may_sign));
      return;
    }
  unsoot_answer_put (call->answer, "step", _ ("Step"), unsoot_cell_int (offer.step + 1, NULL));
  put_step (call, run, step);
  put_timer (call, run, &offer);
  put_refusal (call, &offer.fault);
  if (unsoot_run_state (run) != UNSOOT_RUN_STATE_RUNNING)
    return;
  unsoot_answer_put (call->answer, "next", _ ("Next"), next_cell (&offer));
  unsoot_answer_put (call->answer, "may_be_late", _ ("May be stamped late"),
                     unsoot_cell_flag (offer.may_be_late));
  put_cautions (call, run, step);
}

static void
put_lines (UnsootCall *call, const char *key, const char *label, char **lines)
{
  g_autoptr (GPtrArray) array = g_ptr_array_new ();

  for (guint i = 0; lines[i] != NULL; i++)
    g_ptr_array_add (array, lines[i]);
  unsoot_answer_list (call->answer, key, label, array);
}

/* The acts that make the rig good again, as `run extra` takes them. */
static void
put_recovery (UnsootCall *call, const UnsootRun *run)
{
  g_autoptr (UnsootRecovery) recovery = unsoot_run_recovery (run);
  g_autoptr (GPtrArray) acts = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *next = unsoot_run_next_safe_step (run);
  int already = recovery->until - recovery->first;

  for (guint i = 0; i < recovery->acts->len; i++)
    g_ptr_array_add (acts, unsoot_step_print (recovery->acts->pdata[i]));
  unsoot_answer_put (call->answer, "next_safe_step", _ ("Safe"), unsoot_cell_text (next));
  unsoot_answer_list (call->answer, "way_back", _ ("The way back, each by “run extra”"), acts);
  if (already > 0)
    unsoot_answer_put (
        call->answer, "pass_over", _ ("Then"),
        unsoot_cell_int (
            already,
            g_strdup_printf (ngettext ("%d step is so already: pass it over",
                                       "%d steps are so already: pass them over", (gulong) already),
                             already)));
}

/* After a halt, until the run stands again where it stood. */
static gboolean
wants_way_back (const UnsootRun *run)
{
  g_auto (UnsootRunOffer) offer = { 0 };

  unsoot_run_offer (run, &offer);
  switch (unsoot_run_state (run))
    {
    case UNSOOT_RUN_STATE_HALTED:
    case UNSOOT_RUN_STATE_RELEASED:
      return TRUE;
    case UNSOOT_RUN_STATE_RUNNING:
      return offer.ask_again || offer.fault.rule != UNSOOT_RULE_NONE;
    case UNSOOT_RUN_STATE_READY:
    case UNSOOT_RUN_STATE_COMPLETE:
    case UNSOOT_RUN_STATE_SIGNED:
      return FALSE;
    }
  g_return_val_if_reached (FALSE);
}

void
unsoot_show_run (UnsootCall *call, const UnsootRun *run)
{
  UnsootRunState state = unsoot_run_state (run);
  g_auto (GStrv) off = unsoot_run_off_engine (run);
  g_auto (GStrv) tanks = unsoot_run_tanks (run);

  unsoot_answer_put (call->answer, "run", _ ("Run"),
                     unsoot_cell_both (unsoot_run_state_to_slug (state),
                                       g_strdup (unsoot_run_state_label (state))));
  put_offer (call, run);
  if (wants_way_back (run))
    put_recovery (call, run);
  put_lines (call, "not_as_it_came", _ ("Not as it came in"), off);
  put_lines (call, "tanks", _ ("Tanks"), tanks);
}
