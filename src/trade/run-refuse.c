/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Why an event can't be taken now, in a sentence. */
#include <glib/gi18n-lib.h>

#include "run-private.h"

#define SECONDS_A_MINUTE 60

G_DEFINE_QUARK (unsoot_run_error, unsoot_run_error)

gboolean
unsoot_run_fail (GError **error, UnsootRunErrorCode code, const char *format, ...)
{
  va_list values;
  g_autofree char *message = NULL;

  va_start (values, format);
  message = g_strdup_vprintf (format, values);
  va_end (values);
  g_set_error_literal (error, UNSOOT_RUN_ERROR, (gint) code, message);
  return FALSE;
}

gboolean
unsoot_run_fail_by_rule (GError **error, UnsootFault *fault)
{
  g_autofree char *sentence = unsoot_fault_sentence (fault);

  unsoot_fault_clear (fault);
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_REFUSED, "%s", sentence);
}

gboolean
unsoot_run_needs_state (const UnsootRun *run, gboolean holds, GError **error)
{
  if (holds)
    return TRUE;
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_STATE,
                          _ ("That can't be done now: the run is “%s”."),
                          unsoot_run_state_label (run->state));
}

gboolean
unsoot_run_has_text (const UnsootRunEvent *event, GError **error)
{
  if (event->text != NULL && *event->text != '\0')
    return TRUE;
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("Say why, in a few words."));
}

gboolean
unsoot_run_is_signed_for (const UnsootRunEvent *event, GError **error)
{
  if (event->staff_id > 0)
    return TRUE;
  return unsoot_run_fail (error, UNSOOT_RUN_ERROR_ENTRY, _ ("A signature is needed: who are you?"));
}

static gboolean
fail_too_early (GError **error, gint64 seconds)
{
  const gint64 minutes = MAX (seconds, 0) / SECONDS_A_MINUTE;

  if (minutes == 0)
    return unsoot_run_fail (
        error, UNSOOT_RUN_ERROR_LATE,
        _ ("It can't be stamped earlier than the step before it, which was done just "
           "now."));
  return unsoot_run_fail (
      error, UNSOOT_RUN_ERROR_LATE,
      ngettext ("It can't be stamped earlier than the step before it, which was done "
                "%d minute ago.",
                "It can't be stamped earlier than the step before it, which was done "
                "%d minutes ago.",
                (gulong) minutes),
      (int) minutes);
}

/* STEP is NULL where the event is no step. */
gboolean
unsoot_run_may_be_late (const UnsootRun *run, const UnsootRunEvent *event, const UnsootStep *step,
                        GError **error)
{
  if (event->done_at == event->at)
    return TRUE;
  if (event->done_at > event->at)
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_LATE,
                            _ ("It can't be done later than it is recorded."));
  if (step != NULL && unsoot_run_is_interlock (step))
    return unsoot_run_fail (error, UNSOOT_RUN_ERROR_LATE,
                            _ ("This step depends on the moment and can't be stamped late."));
  if (event->done_at < run->last_done_at)
    return fail_too_early (error, event->at - run->last_done_at);
  return TRUE;
}
