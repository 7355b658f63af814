/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The timer of the current run or soak step. */
#include "run-private.h"

#define SECONDS_A_MINUTE 60

gboolean
unsoot_run_is_timed (const UnsootStep *step)
{
  return step->act == UNSOOT_ACT_RUN || step->act == UNSOOT_ACT_SOAK;
}

/* Cleaner works only while it flows: that is what the minutes mean. */
static gboolean
flows (const UnsootRig *rig, const UnsootStep *step)
{
  if (step->act == UNSOOT_ACT_SOAK)
    return TRUE;
  if (!unsoot_rig_engine_runs (rig))
    return FALSE;
  switch (step->side)
    {
    case UNSOOT_SIDE_FUEL:
      return rig->pump;
    case UNSOOT_SIDE_INTAKE:
      return rig->atomiser;
    case UNSOOT_SIDE_NONE:
      return TRUE;
    }
  g_assert_not_reached ();
}

void
unsoot_run_timer_begin (UnsootRun *run, const UnsootStep *step, gint64 at)
{
  run->timer = (UnsootRunTimer){ .started = TRUE, .counting = TRUE, .since = at, .limit = -1 };
  if (step->minutes > 0)
    run->timer.limit = (gint64) (step->minutes * SECONDS_A_MINUTE + 0.5);
}

void
unsoot_run_timer_follow (UnsootRun *run, gint64 at)
{
  UnsootRunTimer *timer = &run->timer;
  gboolean counts;

  if (!timer->started)
    return;
  counts = flows (run->rig, unsoot_procedure_step (run->procedure, run->cursor));
  if (timer->counting && !counts)
    timer->counted += MAX (at - timer->since, 0);
  else if (!timer->counting && counts)
    timer->since = at;
  timer->counting = counts;
}

gboolean
unsoot_run_remaining (const UnsootRun *run, gint64 now, gint64 *remaining)
{
  const UnsootRunTimer *timer = &run->timer;

  if (!timer->started || timer->limit < 0)
    return FALSE;
  *remaining = timer->limit - timer->counted;
  if (timer->counting)
    *remaining -= MAX (now - timer->since, 0);
  return TRUE;
}

gboolean
unsoot_run_timer_counts (const UnsootRun *run)
{
  return run->timer.started && run->timer.counting;
}

gint64
unsoot_run_progress_ml (const UnsootRun *run)
{
  return run->timer.progress_ml;
}

gboolean
unsoot_run_alarm (const UnsootRun *run, gint64 now, gint64 *late_seconds)
{
  gint64 remaining;

  if (run->timer.heard || !unsoot_run_remaining (run, now, &remaining) || remaining > 0)
    return FALSE;
  *late_seconds = -remaining;
  return TRUE;
}

gint64
unsoot_run_alarm_at (const UnsootRun *run)
{
  const UnsootRunTimer *timer = &run->timer;

  if (!timer->started || !timer->counting || timer->heard || timer->limit < 0)
    return -1;
  return timer->since + timer->limit - timer->counted;
}
