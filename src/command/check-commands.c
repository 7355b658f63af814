/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "commands.h"

#include <glib/gi18n-lib.h>

#include "pick.h"
#include "prechecks.h"
#include "show.h"

/* What is looked at before the work. */

/* "turbo=no" */
static gboolean
read_answer (const char *text, UnsootPrecheck *check, UnsootPrecheckAnswer *answer, GError **error)
{
  g_auto (GStrv) halves = g_strsplit (text, "=", 2);
  int value;

  if (g_strv_length (halves) != 2)
    return unsoot_call_misused (error, _ ("“%s” is no answer. Write it as turbo=no."), text);
  if (!unsoot_slug_parse (unsoot_prechecks, _ ("a check before the work"), halves[0], &value,
                          error))
    return FALSE;
  *check = (UnsootPrecheck) value;
  if (!unsoot_slug_parse (unsoot_precheck_answers, _ ("an answer"), halves[1], &value, error))
    return FALSE;
  *answer = (UnsootPrecheckAnswer) value;
  return TRUE;
}

static gboolean
post_answers (UnsootCall *call, gint64 job_id, char **answers, gboolean overridden,
              const char *reason, GError **error)
{
  for (guint i = 0; answers != NULL && answers[i] != NULL; i++)
    {
      UnsootPrecheck check = UNSOOT_PRECHECK_OIL;
      UnsootPrecheckAnswer answer = UNSOOT_PRECHECK_NO;

      if (!read_answer (answers[i], &check, &answer, error)
          || !unsoot_job_precheck_answer (call->db, &call->who, job_id, check, answer, overridden,
                                          reason, error))
        return FALSE;
    }
  return TRUE;
}

static const UnsootPrecheckRow *
row_of (const GPtrArray *rows, int check)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootPrecheckRow *row = rows->pdata[i];
      if (g_strcmp0 (row->kind, unsoot_slug_of (unsoot_prechecks, check)) == 0)
        return row;
    }
  return NULL;
}

static gboolean
show_answers (UnsootCall *call, gint64 job_id, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_job_prechecks (call->db, job_id, error);

  for (int check = 0; rows != NULL && check < UNSOOT_PRECHECKS; check++)
    {
      const UnsootPrecheckRow *row = row_of (rows, check);
      const char *words = _ ("not answered");
      int answer;

      if (row != NULL && unsoot_slug_find (unsoot_precheck_answers, row->answer, &answer))
        words = row->overridden ? _ ("No, overridden")
                                : unsoot_slug_words (unsoot_precheck_answers, answer);
      unsoot_answer_put (call->answer, unsoot_slug_of (unsoot_prechecks, check),
                         unsoot_slug_words (unsoot_prechecks, check),
                         unsoot_cell_both (row != NULL ? row->answer : NULL, g_strdup (words)));
    }
  return rows != NULL;
}

static gboolean
run_check (UnsootCall *call, GError **error)
{
  g_auto (GStrv) answers = NULL;
  g_autofree char *reason = NULL;
  gboolean rest = FALSE, overridden = FALSE;
  gint64 job_id = 0;
  const GOptionEntry options[]
      = { { "answer", 'a', 0, G_OPTION_ARG_STRING_ARRAY, &answers,
            N_ ("yes, no or not-applicable to one check; may be repeated"), N_ ("CHECK=ANSWER") },
          { "reason", 'r', 0, G_OPTION_ARG_STRING, &reason,
            N_ ("Why it does not apply, or why it may run all the same"), N_ ("TEXT") },
          { "override", 0, 0, G_OPTION_ARG_NONE, &overridden,
            N_ ("It may run in spite of a no; the lead technician's word"), NULL },
          { "rest", 0, 0, G_OPTION_ARG_NONE, &rest,
            N_ ("Everything that has no answer yet is as it should be"), NULL },
          { NULL } };

  if (!unsoot_call_begin (call, options, 1, 1, error)
      || !unsoot_pick_job (call, call->args[0], &job_id, error))
    return FALSE;
  return post_answers (call, job_id, answers, overridden, reason, error)
         && (!rest || unsoot_job_precheck_rest (call->db, &call->who, job_id, error))
         && unsoot_show_deed (call, job_id, g_strdup (_ ("The checks are recorded.")), error)
         && show_answers (call, job_id, error);
}

const UnsootCommand unsoot_check_commands[] = {
  { "check", N_ ("JOB"), N_ ("Answer what is looked at before the work; the run waits for it"),
    N_ ("CHECK is oil, coolant, turbo, leaks, regeneration, soot, tanks, extraction, co-alarm, "
        "plate or extinguisher. Yes means that it is as it should be."),
    UNSOOT_NEEDS_PERSON, run_check },
  { NULL },
};
