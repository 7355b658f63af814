/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prechecks.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "deed.h"
#include "job-status.h"
#include "jobs.h"

GPtrArray *
unsoot_job_prechecks (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_rows_list (
      db, &unsoot_precheck_row_type, error,
      "WHERE job_id = $1 AND at >= (SELECT COALESCE (arrived_at, 0) FROM jobs WHERE id = $1)"
      " ORDER BY id DESC",
      unsoot_int (job_id));
  g_autoptr (GPtrArray) counting
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_precheck_row_free);

  if (rows == NULL)
    return NULL;
  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    for (guint i = 0; i < rows->len; i++)
      {
        const UnsootPrecheckRow *row = rows->pdata[i];
        if (g_strcmp0 (row->kind, unsoot_slug_of (unsoot_prechecks, check)) != 0)
          continue;
        g_ptr_array_add (counting, unsoot_record_copy (&unsoot_precheck_row_type, row));
        break;
      }
  return g_steal_pointer (&counting);
}

static gboolean
check_here (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, job_id, error);

  if (job == NULL)
    return FALSE;
  if (unsoot_job_row_status (job) != UNSOOT_JOB_ARRIVED)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("The checks of job %" PRId64 " are answered once the vehicle is "
                                "here, and before its run begins."),
                             job->number);
  return TRUE;
}

static gboolean
post (UnsootDb *db, const UnsootActing *who, gint64 job_id, UnsootPrecheck check,
      UnsootPrecheckAnswer answer, gboolean overridden, const char *reason, GError **error)
{
  g_autoptr (UnsootPrecheckRow) row = unsoot_precheck_row_new ();

  row->job_id = job_id;
  row->kind = g_strdup (unsoot_slug_of (unsoot_prechecks, (int) check));
  row->answer = g_strdup (unsoot_slug_of (unsoot_precheck_answers, (int) answer));
  row->overridden = overridden;
  row->reason = unsoot_deed_blank (reason) ? NULL : g_strdup (reason);
  row->at = who->now;
  row->staff_id = who->staff_id;
  return unsoot_rows_post (db, &unsoot_precheck_row_type, row, error);
}

gboolean
unsoot_job_precheck_answer (UnsootDb *db, const UnsootActing *who, gint64 job_id,
                            UnsootPrecheck check, UnsootPrecheckAnswer answer, gboolean overridden,
                            const char *reason, GError **error)
{
  g_autoptr (GError) refused = NULL;

  if (!unsoot_precheck_check (check, answer, overridden, reason, &refused))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", refused->message);
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (
      db, who, overridden ? UNSOOT_DEED_OVERRIDE_CHECK : UNSOOT_DEED_CHECK_VEHICLE, error);
  if (deed == NULL || !check_here (db, job_id, error))
    return FALSE;
  return unsoot_deed_end (&deed, post (db, who, job_id, check, answer, overridden, reason, error),
                          error);
}

static const UnsootPrecheckRow *
answer_of (const GPtrArray *rows, int check)
{
  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootPrecheckRow *row = rows->pdata[i];
      if (g_strcmp0 (row->kind, unsoot_slug_of (unsoot_prechecks, check)) == 0)
        return row;
    }
  return NULL;
}

gboolean
unsoot_job_precheck_rest (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_CHECK_VEHICLE, error);
  g_autoptr (GPtrArray) rows = deed != NULL ? unsoot_job_prechecks (db, job_id, error) : NULL;
  gboolean done = rows != NULL && check_here (db, job_id, error);

  for (int check = 0; done && check < UNSOOT_PRECHECKS; check++)
    if (answer_of (rows, check) == NULL)
      done
          = post (db, who, job_id, (UnsootPrecheck) check, UNSOOT_PRECHECK_YES, FALSE, NULL, error);
  return deed != NULL && unsoot_deed_end (&deed, done, error);
}

static gboolean
lets_begin (const UnsootPrecheckRow *row)
{
  int answer;

  return unsoot_slug_find (unsoot_precheck_answers, row->answer, &answer)
         && unsoot_precheck_lets_begin ((UnsootPrecheckAnswer) answer, row->overridden);
}

static char *
what_is_missing (const GPtrArray *rows)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);

  for (int check = 0; check < UNSOOT_PRECHECKS; check++)
    {
      const UnsootPrecheckRow *row = answer_of (rows, check);
      const char *question = unsoot_slug_words (unsoot_prechecks, check);
      if (row == NULL)
        /* Translators: a question that nobody has answered */
        g_ptr_array_add (lines, g_strdup_printf (_ ("%s Not answered."), question));
      else if (!lets_begin (row))
        /* Translators: a question that was answered with no */
        g_ptr_array_add (lines, g_strdup_printf (_ ("%s No."), question));
    }
  return lines->len > 0 ? unsoot_deed_lines (lines) : NULL;
}

gboolean
unsoot_job_precheck_gate (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_job_prechecks (db, job_id, error);
  g_autofree char *missing = rows != NULL ? what_is_missing (rows) : NULL;

  if (rows == NULL)
    return FALSE;
  if (missing != NULL)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("Do not start yet:\n%s"),
                             missing);
  return TRUE;
}
