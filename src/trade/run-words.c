/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run in words: slugs, and what the incomplete tag says. */
#include <glib/gi18n-lib.h>

#include "rig-check.h"
#include "run-private.h"
#include "run-recovery.h"
#include "slug.h"

static const UnsootSlug kinds[] = {
  { UNSOOT_RUN_BEGAN, "began", N_ ("Began") },
  { UNSOOT_RUN_CAUTION, "caution", N_ ("Cautions confirmed") },
  { UNSOOT_RUN_CONFIRM, "confirm", N_ ("Done") },
  { UNSOOT_RUN_STARTED, "started", N_ ("Timer started") },
  { UNSOOT_RUN_PROGRESS, "progress", N_ ("Progress") },
  { UNSOOT_RUN_ENDED, "ended", N_ ("Timer ended") },
  { UNSOOT_RUN_PASS_OVER, "pass-over", N_ ("Passed over") },
  { UNSOOT_RUN_EXTRA, "extra", N_ ("Done beside the list") },
  { UNSOOT_RUN_HAPPENED, "happened", N_ ("Happened") },
  { UNSOOT_RUN_HALT, "halt", N_ ("Stopped") },
  { UNSOOT_RUN_RESUMED, "resumed", N_ ("Resumed") },
  { UNSOOT_RUN_ASKED_AGAIN, "asked-again", N_ ("Confirmed again") },
  { UNSOOT_RUN_ALARM_HEARD, "alarm-heard", N_ ("Alarm heard") },
  { UNSOOT_RUN_SIGNED, "signed", N_ ("Signed") },
  { UNSOOT_RUN_RELEASED, "released", N_ ("Released incomplete") },
  { 0, NULL, NULL },
};

static const UnsootSlug states[] = {
  { UNSOOT_RUN_STATE_READY, "ready", N_ ("Ready") },
  { UNSOOT_RUN_STATE_RUNNING, "running", N_ ("Running") },
  { UNSOOT_RUN_STATE_HALTED, "halted", N_ ("Halted") },
  { UNSOOT_RUN_STATE_COMPLETE, "complete", N_ ("Complete, to be signed") },
  { UNSOOT_RUN_STATE_SIGNED, "signed", N_ ("Signed") },
  { UNSOOT_RUN_STATE_RELEASED, "released", N_ ("Released incomplete") },
  { 0, NULL, NULL },
};

const char *
unsoot_run_event_to_slug (UnsootRunEventKind kind)
{
  return unsoot_slug_of (kinds, (int) kind);
}

const char *
unsoot_run_event_label (UnsootRunEventKind kind)
{
  return unsoot_slug_words (kinds, (int) kind);
}

gboolean
unsoot_run_event_from_slug (const char *slug, UnsootRunEventKind *kind)
{
  int value;

  if (!unsoot_slug_find (kinds, slug, &value))
    return FALSE;
  *kind = (UnsootRunEventKind) value;
  return TRUE;
}

const char *
unsoot_run_state_to_slug (UnsootRunState state)
{
  return unsoot_slug_of (states, (int) state);
}

gboolean
unsoot_run_state_from_slug (const char *slug, UnsootRunState *state)
{
  int value;

  if (!unsoot_slug_find (states, slug, &value))
    return FALSE;
  *state = (UnsootRunState) value;
  return TRUE;
}

const char *
unsoot_run_state_label (UnsootRunState state)
{
  return unsoot_slug_words (states, (int) state);
}

static void
add_when (GStrvBuilder *lines, gboolean holds, const char *line)
{
  if (holds)
    g_strv_builder_add (lines, line);
}

char **
unsoot_run_off_engine (const UnsootRun *run)
{
  const UnsootRig *rig = run->rig;
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  for (guint i = 0; i < rig->changes->len; i++)
    {
      g_autofree char *words = unsoot_rig_change_words (rig->changes->pdata[i]);
      g_strv_builder_add (lines, words);
    }
  for (int line = 0; line < UNSOOT_LINES; line++)
    {
      g_autofree char *words = unsoot_rig_line_words (rig, (UnsootLine) line);
      add_when (lines, words != NULL, words);
    }
  add_when (lines, unsoot_rig_air_charged (rig), _ ("The atomiser's air is still charged."));
  add_when (lines, rig->pressure_pa > 0, _ ("The fuel pressure is not at its minimum."));
  add_when (lines, rig->oil_due, _ ("The oil level is not checked."));
  add_when (lines, rig->oil_risen, _ ("The oil level has risen: the oil is not changed."));
  add_when (lines, rig->look_due[UNSOOT_SIDE_FUEL], _ ("The fuel lines are not looked at."));
  add_when (lines, rig->look_due[UNSOOT_SIDE_INTAKE], _ ("The air hose is not looked at."));
  add_when (lines, rig->codes_due, _ ("The codes are not cleared."));
  return g_strv_builder_end (lines);
}

static void
add_tank (GStrvBuilder *lines, const UnsootTank *tank, const char *which)
{
  g_autofree char *line = NULL;
  const char *contents = unsoot_contents_label (tank->contents);

  if (tank->ml > 0)
    /* Translators: "Fuel tank: fresh fluid, 500 mL" */
    line = g_strdup_printf (_ ("%s: %s, %" G_GINT64_FORMAT " mL"), which, contents, tank->ml);
  else
    line = g_strdup_printf ("%s: %s", which, contents);
  g_strv_builder_add (lines, line);
}

char **
unsoot_run_tanks (const UnsootRun *run)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  add_tank (lines, &run->rig->tank[UNSOOT_SIDE_FUEL], _ ("Fuel tank"));
  add_tank (lines, &run->rig->tank[UNSOOT_SIDE_INTAKE], _ ("Intake tank"));
  return g_strv_builder_end (lines);
}

static char *
next_words (const UnsootRun *run)
{
  g_autoptr (UnsootRecovery) recovery = unsoot_run_recovery (run);

  if (recovery->acts->len > 0)
    return unsoot_step_words (recovery->acts->pdata[0]);
  if (recovery->until < (int) run->procedure->steps->len)
    return unsoot_step_words (unsoot_procedure_step (run->procedure, recovery->until));
  return g_strdup (_ ("Sign the job."));
}

char *
unsoot_run_next_safe_step (const UnsootRun *run)
{
  g_autofree char *next = next_words (run);

  if (!unsoot_rig_engine_runs (run->rig) && unsoot_rig_must_drain (run->rig))
    return g_strdup_printf (_ ("Do not start the engine: liquid may stand in its intake. Next: %s"),
                            next);
  return g_strdup_printf (_ ("Next: %s"), next);
}
