/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-words.h"

#include <glib/gi18n-lib.h>

#include "format.h"
#include "path.h"

char *
unsoot_bay_clock (gint64 seconds)
{
  const int whole = (int) ABS (seconds);

  if (whole >= 3600)
    return g_strdup_printf ("%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
  return g_strdup_printf ("%d:%02d", whole / 60, whole % 60);
}

char *
unsoot_bay_remaining (gint64 seconds)
{
  g_autofree char *clock = unsoot_bay_clock (seconds);

  /* Translators: minutes and seconds on a timer: “12:40 left” */
  return g_strdup_printf (seconds < 0 ? _ ("over by %s") : _ ("%s left"), clock);
}

char *
unsoot_bay_late (gint64 seconds)
{
  const int minutes = (int) (seconds / 60);

  if (seconds < 5)
    return g_strdup (_ ("now"));
  if (minutes == 0)
    return g_strdup_printf (_ ("%d s late"), (int) seconds);
  return g_strdup_printf (_ ("%d min late"), minutes);
}

char *
unsoot_bay_kicker (const UnsootBayTask *task, const UnsootRun *run)
{
  const int steps = (int) unsoot_run_procedure (run)->steps->len;

  switch (task->kind)
    {
    case UNSOOT_TASK_CAUTIONS:
      return g_strdup ("");
    case UNSOOT_TASK_AGAIN:
      /* Translators: which step, of how many */
      return g_strdup_printf (_ ("Asked again: step %d of %d"), task->step + 1, steps);
    case UNSOOT_TASK_ACT:
      return g_strdup_printf (
          ngettext ("The way back: %d act", "The way back: %d acts", task->acts_left),
          (int) task->acts_left);
    case UNSOOT_TASK_ALREADY:
    case UNSOOT_TASK_STEP:
    case UNSOOT_TASK_START:
    case UNSOOT_TASK_TIMER:
      return g_strdup_printf (_ ("Step %d of %d"), task->step + 1, steps);
    case UNSOOT_TASK_HALTED:
      return g_strdup (_ ("The run is stopped"));
    case UNSOOT_TASK_SIGN:
      return g_strdup_printf (_ ("All %d steps are done"), steps);
    case UNSOOT_TASK_OVER:
      return g_strdup (unsoot_run_state_label (unsoot_run_state (run)));
    }
  g_return_val_if_reached (g_strdup (""));
}

char *
unsoot_bay_title (const UnsootBayTask *task)
{
  switch (task->kind)
    {
    case UNSOOT_TASK_CAUTIONS:
      return g_strdup (_ ("Cautions of this part"));
    case UNSOOT_TASK_HALTED:
      return g_strdup (_ ("Nothing goes on by itself"));
    case UNSOOT_TASK_SIGN:
      return g_strdup (task->may_do ? _ ("Sign that the engine is whole") : _ ("Not whole yet"));
    case UNSOOT_TASK_OVER:
      return g_strdup (_ ("This run is over"));
    case UNSOOT_TASK_AGAIN:
    case UNSOOT_TASK_ACT:
    case UNSOOT_TASK_ALREADY:
    case UNSOOT_TASK_STEP:
    case UNSOOT_TASK_START:
    case UNSOOT_TASK_TIMER:
      return unsoot_step_words (task->what);
    }
  g_return_val_if_reached (g_strdup (""));
}

char *
unsoot_bay_why (const UnsootBayTask *task)
{
  switch (task->kind)
    {
    case UNSOOT_TASK_AGAIN:
      return g_strdup (_ ("The screen or the run was stopped since. Look at the engine: is this "
                          "done, and still so?"));
    case UNSOOT_TASK_ALREADY:
      return g_strdup (_ ("It is so already."));
    case UNSOOT_TASK_HALTED:
      return g_strdup (_ ("Make it safe first. Then go on: the way back is shown act by act, and "
                          "the last step is asked for again."));
    case UNSOOT_TASK_SIGN:
      return g_strdup (task->may_do ? _ ("Every part is back, every tool and guard is off, what "
                                         "was disabled is enabled.")
                                    : _ ("This still forbids it:"));
    case UNSOOT_TASK_ACT:
    case UNSOOT_TASK_STEP:
    case UNSOOT_TASK_START:
    case UNSOOT_TASK_TIMER:
      return g_strdup (task->what->why);
    case UNSOOT_TASK_CAUTIONS:
    case UNSOOT_TASK_OVER:
      return NULL;
    }
  g_return_val_if_reached (NULL);
}

const char *
unsoot_bay_verb (const UnsootBayTask *task)
{
  switch (task->kind)
    {
    case UNSOOT_TASK_CAUTIONS:
      return _ ("Read, and kept");
    case UNSOOT_TASK_AGAIN:
      return _ ("Yes, it is so");
    case UNSOOT_TASK_ALREADY:
      return _ ("Go on");
    case UNSOOT_TASK_ACT:
    case UNSOOT_TASK_STEP:
      return _ ("Confirm");
    case UNSOOT_TASK_START:
      return _ ("Start the timer");
    case UNSOOT_TASK_TIMER:
      return _ ("End the step");
    case UNSOOT_TASK_HALTED:
      return _ ("Go on");
    case UNSOOT_TASK_SIGN:
      return _ ("Sign off");
    case UNSOOT_TASK_OVER:
      return "";
    }
  g_return_val_if_reached ("");
}

char *
unsoot_bay_window (const UnsootAsk *ask)
{
  g_autofree char *least = NULL;
  g_autofree char *most = NULL;

  if (ask->kind != UNSOOT_ASK_PRESSURE || isnan (ask->least_pa) || isnan (ask->most_pa))
    return NULL;
  least = unsoot_format_number (unsoot_unit_from_si (ask->unit, ask->least_pa), 1);
  most = unsoot_format_number (unsoot_unit_from_si (ask->unit, ask->most_pa), 1);
  return g_strdup_printf ("%s–%s %s", least, most, unsoot_unit_symbol (ask->unit));
}

const char *
unsoot_bay_way_in (const char *status)
{
  UnsootJobStatus found = UNSOOT_JOB_QUOTED;

  if (!unsoot_job_status_find (status, &found))
    return NULL;
  switch (found)
    {
    case UNSOOT_JOB_ARRIVED:
      return _ ("Start");
    case UNSOOT_JOB_IN_BAY:
      return _ ("Open in bay");
    case UNSOOT_JOB_STOPPED:
      return _ ("Take up again");
    case UNSOOT_JOB_QUOTED:
    case UNSOOT_JOB_BOOKED:
    case UNSOOT_JOB_DONE:
    case UNSOOT_JOB_INVOICED:
    case UNSOOT_JOB_PAID:
    case UNSOOT_JOB_DECLINED:
    case UNSOOT_JOB_CANCELLED:
      return NULL;
    }
  g_return_val_if_reached (NULL);
}
