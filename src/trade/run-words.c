/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A run in words: what the incomplete tag says. */
#include <glib/gi18n-lib.h>

#include "dose.h"
#include "rig-check.h"
#include "run-private.h"
#include "run-recovery.h"

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
  g_autofree char *line = NULL, *volume = unsoot_dose_volume_words (tank->ml);
  const char *contents = unsoot_contents_label (tank->contents);

  if (tank->ml > 0)
    /* Translators: "Fuel tank: fresh fluid, 500 mL" */
    line = g_strdup_printf (_ ("%s: %s, %s"), which, contents, volume);
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

static gboolean
must_not_start (const UnsootRun *run)
{
  return !unsoot_rig_engine_runs (run->rig) && unsoot_rig_must_drain (run->rig);
}

char *
unsoot_run_next_safe_step (const UnsootRun *run)
{
  g_autofree char *next = next_words (run);

  if (must_not_start (run))
    return g_strdup_printf (_ ("Do not start the engine: liquid may stand in its intake. Next: %s"),
                            next);
  return g_strdup_printf (_ ("Next: %s"), next);
}

static void
add_lines (GString *tag, const char *heading, char **lines)
{
  g_string_append_printf (tag, "%s\n", heading);
  for (char **line = lines; *line != NULL; line++)
    g_string_append_printf (tag, "– %s\n", *line);
}

char *
unsoot_run_tag (const UnsootRun *run)
{
  GString *tag = g_string_new (NULL);
  g_auto (GStrv) off = unsoot_run_off_engine (run);
  g_auto (GStrv) tanks = unsoot_run_tanks (run);
  g_autofree char *next = must_not_start (run) ? unsoot_run_next_safe_step (run) : next_words (run);

  if (*off != NULL)
    add_lines (tag, _ ("Not as it came in:"), off);
  add_lines (tag, _ ("In the tanks:"), tanks);
  g_string_append_printf (tag, _ ("Next safe step: %s"), next);
  return g_string_free (tag, FALSE);
}
