/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "jobs.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "booking-states.h"
#include "deed.h"
#include "indexing.h"
#include "job-bills.h"
#include "job-status.h"
#include "quotes.h"

UnsootJobRow *
unsoot_job_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_job_row_type, id, error);
}

gboolean
unsoot_job_id_of (UnsootDb *db, gint64 number, gint64 *id, GError **error)
{
  g_autoptr (GError) failed = NULL;

  if (unsoot_db_int (db, id, &failed, "SELECT id FROM jobs WHERE number = $1", unsoot_int (number)))
    return TRUE;
  if (g_error_matches (failed, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_NOT_FOUND,
                             _ ("There is no job %" PRId64 "."), number);
  g_propagate_error (error, g_steal_pointer (&failed));
  return FALSE;
}

GPtrArray *
unsoot_vehicle_jobs (UnsootDb *db, gint64 vehicle_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_job_row_type, error,
                           "WHERE vehicle_id = $1 ORDER BY number DESC", unsoot_int (vehicle_id));
}

GPtrArray *
unsoot_vehicle_declined (UnsootDb *db, gint64 vehicle_id, GError **error)
{
  /* Of a job declined as a whole only its service comes back, not every gasket of it. */
  return unsoot_rows_list (
      db, &unsoot_job_line_row_type, error,
      "WHERE state = 'declined' AND job_id IN (SELECT id FROM jobs WHERE vehicle_id = $1)"
      " AND (kind = 'labour'"
      "  OR job_id IN (SELECT id FROM jobs WHERE vehicle_id = $1 AND status <> 'declined'))"
      /* Done since, or declined once more: then the newer one is offered. */
      " AND NOT EXISTS (SELECT 1 FROM job_lines l JOIN jobs j ON j.id = l.job_id"
      "  WHERE j.vehicle_id = $1 AND l.text = job_lines.text AND l.id > job_lines.id"
      "  AND ((l.state = 'declined' AND (l.kind = 'labour' OR j.status <> 'declined'))"
      "   OR (l.state <> 'declined' AND l.job_id > job_lines.job_id"
      "    AND j.status IN ('done', 'invoiced', 'paid'))))"
      " ORDER BY id DESC",
      unsoot_int (vehicle_id));
}

static gboolean
check_line (const UnsootJobLineRow *line, GError **error)
{
  UnsootBillKind kind;
  gboolean discount = g_strcmp0 (line->kind, "discount") == 0;

  if (unsoot_deed_blank (line->text))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Say what the line is for."));
  if (!unsoot_job_line_kind (line->kind, &kind, error))
    return FALSE;
  if (line->quantity_milli == 0 || (line->quantity_milli < 0) != discount)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        discount ? _ ("A discount takes something back: its quantity is below zero.")
                 : _ ("“%s” needs a quantity above zero. For a discount, use that kind of line."),
        line->text);
  if (line->unit_price_minor < 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("“%s” has a price below zero."),
                             line->text);
  return TRUE;
}

/* A line that the customer has given a word for is changed by declining it and adding
 * another, so that what was agreed to can be seen. */
static gboolean
check_former (UnsootDb *db, const UnsootJobLineRow *line, GError **error)
{
  if (line->id == 0)
    return TRUE;
  g_autoptr (UnsootJobLineRow) former
      = unsoot_rows_get (db, &unsoot_job_line_row_type, line->id, error);
  if (former == NULL)
    return FALSE;
  if (g_strcmp0 (former->state, "authorised") == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("“%s” is authorised as it is. Decline it and add a new line."),
                             former->text);
  return TRUE;
}

gboolean
unsoot_job_line_save (UnsootDb *db, const UnsootActing *who, UnsootJobLineRow *line, GError **error)
{
  UnsootRecordHead before = { line->id, line->version };

  if (!check_line (line, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ESTIMATE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, line->job_id, error) : NULL;
  if (job == NULL || !unsoot_job_check_open (job, error) || !check_former (db, line, error))
    return FALSE;
  if (line->position == 0
      && !unsoot_db_int (db, &line->position, error,
                         "SELECT COALESCE (max (position), 0) + 1 FROM job_lines WHERE job_id = $1",
                         unsoot_int (line->job_id)))
    return FALSE;
  g_free (line->state);
  line->state = g_strdup ("offered");
  if (unsoot_deed_end (&deed, unsoot_deed_keep (db, &unsoot_job_line_row_type, line, who, error),
                       error))
    return TRUE;
  line->id = before.id;
  line->version = before.version;
  return FALSE;
}

static gboolean
set_line_state (UnsootDb *db, const UnsootActing *who, UnsootJobLineRow *line, const char *state,
                const char *reason, GError **error)
{
  g_free (line->state);
  line->state = g_strdup (state);
  g_free (line->declined_reason);
  line->declined_reason = g_strdup (reason);
  return unsoot_rows_update (db, &unsoot_job_line_row_type, line, who, error);
}

gboolean
unsoot_job_line_decline (UnsootDb *db, const UnsootActing *who, gint64 line_id, const char *reason,
                         GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_DECLINE, error);
  g_autoptr (UnsootJobLineRow) line
      = deed != NULL ? unsoot_rows_get (db, &unsoot_job_line_row_type, line_id, error) : NULL;
  g_autoptr (UnsootJobRow) job = line != NULL ? unsoot_job_load (db, line->job_id, error) : NULL;

  if (job == NULL || !unsoot_job_check_open (job, error))
    return FALSE;
  if (g_strcmp0 (line->state, "declined") == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("“%s” is declined already."),
                             line->text);
  return unsoot_deed_end (&deed, set_line_state (db, who, line, "declined", reason, error), error);
}

gboolean
unsoot_job_line_stand (UnsootDb *db, const UnsootActing *who, gint64 line_id, gboolean authorised,
                       GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_DECLINE, error);
  g_autoptr (UnsootJobLineRow) line
      = deed != NULL ? unsoot_rows_get (db, &unsoot_job_line_row_type, line_id, error) : NULL;
  g_autoptr (UnsootJobRow) job = line != NULL ? unsoot_job_load (db, line->job_id, error) : NULL;

  if (job == NULL || !unsoot_job_check_open (job, error))
    return FALSE;
  if (g_strcmp0 (line->state, "declined") != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, _ ("“%s” is not declined."),
                             line->text);
  return unsoot_deed_end (
      &deed, set_line_state (db, who, line, authorised ? "authorised" : "offered", NULL, error),
      error);
}

/* All the job's lines that are in @from go to @to. */
static gboolean
move_lines (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *from, const char *to,
            const char *reason, GError **error)
{
  g_autoptr (GPtrArray) lines = unsoot_rows_list (db, &unsoot_job_line_row_type, error,
                                                  "WHERE job_id = $1 AND state = $2 ORDER BY id",
                                                  unsoot_int (job_id), unsoot_text (from));

  if (lines == NULL)
    return FALSE;
  for (guint i = 0; i < lines->len; i++)
    if (!set_line_state (db, who, lines->pdata[i], to, reason, error))
      return FALSE;
  return TRUE;
}

gboolean
unsoot_job_lines_authorise (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  return move_lines (db, who, job_id, "offered", "authorised", NULL, error);
}

gboolean
unsoot_job_decline (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *reason,
                    GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_DECLINE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL)
    return FALSE;
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_DECLINED, reason, error)
                  && move_lines (db, who, job_id, "offered", "declined", reason, error);
  return unsoot_deed_end (&deed, done, error);
}

/* What a job in the bay has begun on the vehicle has to be finished or signed for. */
static gboolean
check_untouched (const UnsootJobRow *job, GError **error)
{
  if (unsoot_job_row_status (job) == UNSOOT_JOB_IN_BAY)
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_CONSTRAINT,
        _ ("Job %" PRId64 " is in the bay. Finish it, or release the vehicle incomplete."),
        job->number);
  return TRUE;
}

gboolean
unsoot_job_cancel (UnsootDb *db, const UnsootActing *who, gint64 job_id, const char *reason,
                   GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_CANCEL, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL || !check_untouched (job, error))
    return FALSE;
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_CANCELLED, reason, error)
                  && unsoot_job_drop_bookings (db, who, job_id, error);
  return unsoot_deed_end (&deed, done, error);
}

gboolean
unsoot_job_quote_again (UnsootDb *db, const UnsootActing *who, gint64 job_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_ESTIMATE, error);
  g_autoptr (UnsootJobRow) job = deed != NULL ? unsoot_job_load (db, job_id, error) : NULL;

  if (job == NULL)
    return FALSE;
  gboolean declined = unsoot_job_row_status (job) == UNSOOT_JOB_DECLINED;
  if (!declined && unsoot_job_row_status (job) != UNSOOT_JOB_CANCELLED)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Only what was declined or cancelled is quoted again."));
  gboolean done = unsoot_job_move (db, who, job, UNSOOT_JOB_QUOTED, NULL, error)
                  && (!declined || move_lines (db, who, job_id, "declined", "offered", NULL, error))
                  && unsoot_job_estimate (db, who, job_id, error) != 0;
  return unsoot_deed_end (&deed, done, error);
}
