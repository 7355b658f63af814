/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run.h"

#include <glib/gi18n-lib.h>

#include "run-private.h"

static GArray *
zeroes (guint size, guint n)
{
  return g_array_set_size (g_array_sized_new (FALSE, TRUE, size, n), n);
}

UnsootRun *
unsoot_run_new (const UnsootProcedure *procedure, const UnsootFamilyFacts *facts,
                const UnsootRunStart *start)
{
  UnsootRun *run = g_new0 (UnsootRun, 1);

  run->procedure = unsoot_procedure_copy (procedure);
  run->facts = unsoot_family_facts_copy (facts);
  run->rig = unsoot_rig_new ();
  for (int side = UNSOOT_SIDE_FUEL; start != NULL && side < UNSOOT_SIDES; side++)
    {
      run->rig->tank[side] = start->tank[side];
      run->rig->tank[side].used = FALSE;
    }
  run->next_seq = 1;
  run->last_step = run->ask_step = -1;
  run->marks = zeroes (sizeof (UnsootStepMark), procedure->steps->len);
  run->cautioned = zeroes (sizeof (gboolean), procedure->phases->len);
  return run;
}

UnsootRun *
unsoot_run_copy (const UnsootRun *run)
{
  UnsootRun *copy = g_memdup2 (run, sizeof *run);

  copy->procedure = unsoot_procedure_copy (run->procedure);
  copy->facts = unsoot_family_facts_copy (run->facts);
  copy->rig = unsoot_rig_copy (run->rig);
  copy->wanted = run->wanted != NULL ? unsoot_rig_copy (run->wanted) : NULL;
  copy->marks = g_array_copy (run->marks);
  copy->cautioned = g_array_copy (run->cautioned);
  return copy;
}

void
unsoot_run_free (UnsootRun *run)
{
  if (run == NULL)
    return;
  unsoot_procedure_free (run->procedure);
  unsoot_family_facts_free (run->facts);
  unsoot_rig_free (run->rig);
  unsoot_rig_free (run->wanted);
  g_array_unref (run->marks);
  g_array_unref (run->cautioned);
  g_free (run);
}

UnsootRunState
unsoot_run_state (const UnsootRun *run)
{
  return run->state;
}

gint64
unsoot_run_next_seq (const UnsootRun *run)
{
  return run->next_seq;
}

int
unsoot_run_current (const UnsootRun *run)
{
  return run->cursor;
}

gboolean
unsoot_run_step_done (const UnsootRun *run, int step)
{
  g_return_val_if_fail (step >= 0 && step < (int) run->marks->len, FALSE);
  return g_array_index (run->marks, UnsootStepMark, step) == UNSOOT_STEP_DONE;
}

gboolean
unsoot_run_step_passed_over (const UnsootRun *run, int step)
{
  g_return_val_if_fail (step >= 0 && step < (int) run->marks->len, FALSE);
  return g_array_index (run->marks, UnsootStepMark, step) == UNSOOT_STEP_PASSED_OVER;
}

const UnsootRig *
unsoot_run_rig (const UnsootRun *run)
{
  return run->rig;
}

const UnsootProcedure *
unsoot_run_procedure (const UnsootRun *run)
{
  return run->procedure;
}

const UnsootFamilyFacts *
unsoot_run_facts (const UnsootRun *run)
{
  return run->facts;
}

/* A cover, a gasket or a reading is as good ten minutes ago; what order,
 * pressure or a running engine decide about is not. */
gboolean
unsoot_run_is_interlock (const UnsootStep *step)
{
  switch (step->subject)
    {
    case UNSOOT_SUBJECT_PART:
      return step->act == UNSOOT_ACT_SOAK || step->side == UNSOOT_SIDE_FUEL;
    case UNSOOT_SUBJECT_FILTER:
      return step->side == UNSOOT_SIDE_FUEL;
    case UNSOOT_SUBJECT_LEAD:
      return g_strcmp0 (step->name, UNSOOT_LEAD_LIFT_PUMP) == 0;
    case UNSOOT_SUBJECT_TANK:
      return step->act == UNSOOT_ACT_FILL || step->act == UNSOOT_ACT_DRAIN;
    case UNSOOT_SUBJECT_OIL:
      return step->act == UNSOOT_ACT_MEASURE;
    case UNSOOT_SUBJECT_GASKET:
    case UNSOOT_SUBJECT_TOOL:
    case UNSOOT_SUBJECT_READING:
    case UNSOOT_SUBJECT_CODES:
    case UNSOOT_SUBJECT_ROAD:
    case UNSOOT_SUBJECT_LOAD:
      return FALSE;
    case UNSOOT_SUBJECT_GUARD:
      return step->closes;
    case UNSOOT_SUBJECT_ADAPTER:
    case UNSOOT_SUBJECT_LINE:
    case UNSOOT_SUBJECT_LOW_POINT:
    case UNSOOT_SUBJECT_HEATER:
    case UNSOOT_SUBJECT_REGENERATION:
    case UNSOOT_SUBJECT_KEY:
    case UNSOOT_SUBJECT_ENGINE:
    case UNSOOT_SUBJECT_PUMP:
    case UNSOOT_SUBJECT_ATOMISER:
    case UNSOOT_SUBJECT_VALVE:
    case UNSOOT_SUBJECT_PRESSURE:
    case UNSOOT_SUBJECT_AIR:
    case UNSOOT_SUBJECT_SPEED:
    case UNSOOT_SUBJECT_LEAKS:
      return TRUE;
    }
  g_assert_not_reached ();
}

/* A step that only takes something away, and so may be done already. */
gboolean
unsoot_step_only_stops (const UnsootStep *step)
{
  if (step->act == UNSOOT_ACT_SET)
    return step->subject == UNSOOT_SUBJECT_SPEED ? g_strcmp0 (step->name, UNSOOT_SPEED_IDLE) == 0
                                                 : step->value <= 0;
  return step->act == UNSOOT_ACT_STOP || step->act == UNSOOT_ACT_BLEED;
}

gboolean
unsoot_step_is_already_so (const UnsootStep *step, const UnsootRig *rig)
{
  if (!unsoot_step_only_stops (step))
    return FALSE;
  if (step->act == UNSOOT_ACT_BLEED)
    return step->subject == UNSOOT_SUBJECT_AIR ? rig->air_bled : rig->pressure_bled;
  if (step->subject == UNSOOT_SUBJECT_KEY)
    return !rig->key;
  if (step->subject == UNSOOT_SUBJECT_ENGINE)
    return rig->engine == UNSOOT_ENGINE_OFF;
  if (step->subject == UNSOOT_SUBJECT_SPEED)
    return rig->engine != UNSOOT_ENGINE_RAISED;
  if (step->subject == UNSOOT_SUBJECT_PUMP)
    return !rig->pump;
  if (step->subject == UNSOOT_SUBJECT_ATOMISER)
    return !rig->atomiser;
  return step->subject == UNSOOT_SUBJECT_AIR ? rig->air_pa <= 0 : rig->pressure_pa <= 0;
}

gboolean
unsoot_run_allows (const UnsootRun *run, const UnsootStep *step, const UnsootEntry *entry,
                   UnsootFault *fault)
{
  return unsoot_rig_allows (run->rig, run->facts, step, entry, fault);
}

static gboolean
caution_is_due (const UnsootRun *run, const UnsootStep *step)
{
  return step->phase >= 0 && !g_array_index (run->cautioned, gboolean, step->phase);
}

static void
offer_step (const UnsootRun *run, UnsootRunOffer *offer)
{
  const UnsootStep *step = unsoot_procedure_step (run->procedure, run->cursor);
  gboolean comes_first;

  offer->caution = caution_is_due (run, step);
  offer->timed = unsoot_run_is_timed (step);
  offer->running = run->timer.started;
  comes_first = offer->caution || offer->ask_again;
  offer->may_do
      = unsoot_rig_allows (run->rig, run->facts, step, NULL, &offer->fault) && !comes_first;
  offer->may_be_late = offer->may_do && !unsoot_run_is_interlock (step);
  offer->may_pass_over = !comes_first;
  offer->already_so = unsoot_step_is_already_so (step, run->rig);
}

void
unsoot_run_offer (const UnsootRun *run, UnsootRunOffer *offer)
{
  *offer = (UnsootRunOffer){ .step = run->cursor,
                             .ask_again = run->ask_step >= 0,
                             .ask_step = run->ask_step,
                             .fault = UNSOOT_FAULT_INIT };
  if (run->state == UNSOOT_RUN_STATE_RUNNING)
    offer_step (run, offer);
  else if (run->state == UNSOOT_RUN_STATE_COMPLETE)
    offer->may_sign = run->ask_step < 0 && unsoot_run_finish_faults (run, NULL);
}

void
unsoot_run_offer_clear (UnsootRunOffer *offer)
{
  unsoot_fault_clear (&offer->fault);
}

gboolean
unsoot_run_finish_faults (const UnsootRun *run, GArray *faults)
{
  gboolean clean = unsoot_rig_finish_faults (run->rig, run->facts, run->procedure, faults);
  int left = (int) run->procedure->steps->len - run->cursor;
  UnsootFault fault = { run->cursor, UNSOOT_RULE_SENSE, NULL };

  if (left == 0)
    return clean;
  if (faults == NULL)
    return FALSE;
  fault.reason = g_strdup_printf (
      ngettext ("%d step is not done.", "%d steps are not done.", (gulong) left), left);
  g_array_append_val (faults, fault);
  return FALSE;
}

static void
digest_timer (GString *text, const UnsootRunTimer *timer)
{
  g_string_append_printf (text,
                          " timer %d:%d since %" G_GINT64_FORMAT " counted %" G_GINT64_FORMAT
                          " limit %" G_GINT64_FORMAT " heard %d ml %" G_GINT64_FORMAT,
                          timer->started, timer->counting, timer->since, timer->counted,
                          timer->limit, timer->heard, timer->progress_ml);
}

char *
unsoot_run_digest (const UnsootRun *run)
{
  g_autofree char *rig = unsoot_rig_digest (run->rig);
  g_autofree char *wanted = run->wanted != NULL ? unsoot_rig_digest (run->wanted) : NULL;
  GString *text = g_string_new (NULL);

  g_string_append_printf (text,
                          "%s step %d last %d ask %d seq %" G_GINT64_FORMAT " at "
                          "%" G_GINT64_FORMAT,
                          unsoot_run_state_to_slug (run->state), run->cursor, run->last_step,
                          run->ask_step, run->next_seq, run->last_done_at);
  digest_timer (text, &run->timer);
  g_string_append (text, " marks ");
  for (guint i = 0; i < run->marks->len; i++)
    g_string_append_c (text, "-dp"[g_array_index (run->marks, UnsootStepMark, i)]);
  g_string_append (text, " cautions ");
  for (guint i = 0; i < run->cautioned->len; i++)
    g_string_append_c (text, g_array_index (run->cautioned, gboolean, i) ? '1' : '0');
  g_string_append_printf (text, " rig {%s} wanted {%s}", rig, wanted != NULL ? wanted : "");
  return g_string_free (text, FALSE);
}
