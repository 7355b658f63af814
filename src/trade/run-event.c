/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Events as values, and the words they are stored under. */
#include <glib/gi18n-lib.h>

#include "run.h"
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

UnsootRunEvent *
unsoot_run_event_new (UnsootRunEventKind kind, gint64 at)
{
  UnsootRunEvent *event = g_new0 (UnsootRunEvent, 1);

  event->at = event->done_at = at;
  event->kind = kind;
  event->step = -1;
  event->value = (double) NAN;
  event->ml = -1;
  return event;
}

UnsootRunEvent *
unsoot_run_event_copy (const UnsootRunEvent *event)
{
  UnsootRunEvent *copy = g_memdup2 (event, sizeof *event);

  copy->text = g_strdup (event->text);
  return copy;
}

void
unsoot_run_event_free (UnsootRunEvent *event)
{
  if (event == NULL)
    return;
  g_free (event->text);
  g_free (event);
}

gboolean
unsoot_run_event_stops (const UnsootRunEvent *event)
{
  return event->kind == UNSOOT_RUN_HALT || event->kind == UNSOOT_RUN_HAPPENED;
}
