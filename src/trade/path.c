/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "path.h"

#include <glib/gi18n-lib.h>

#include "slug.h"
#include "trade-error.h"

static const UnsootSlug statuses[] = {
  { UNSOOT_JOB_QUOTED, "quoted", N_ ("Quoted") },
  { UNSOOT_JOB_BOOKED, "booked", N_ ("Booked") },
  { UNSOOT_JOB_ARRIVED, "arrived", N_ ("Arrived") },
  { UNSOOT_JOB_IN_BAY, "in-bay", N_ ("In bay") },
  { UNSOOT_JOB_DONE, "done", N_ ("Done") },
  { UNSOOT_JOB_INVOICED, "invoiced", N_ ("Invoiced") },
  { UNSOOT_JOB_PAID, "paid", N_ ("Paid") },
  { UNSOOT_JOB_DECLINED, "declined", N_ ("Declined") },
  { UNSOOT_JOB_CANCELLED, "cancelled", N_ ("Cancelled") },
  { UNSOOT_JOB_STOPPED, "stopped", N_ ("Stopped, in pieces") },
  { 0, NULL, NULL },
};

/* Grouped by where they start, the usual one first. A stopped job goes back to the bay before
   anything else: only a whole engine is finished, cancelled or billed. */
static const UnsootPathMove moves[] = {
  { UNSOOT_JOB_QUOTED, UNSOOT_JOB_BOOKED, N_ ("Book") },
  { UNSOOT_JOB_QUOTED, UNSOOT_JOB_DECLINED, N_ ("Record as declined") },
  { UNSOOT_JOB_QUOTED, UNSOOT_JOB_CANCELLED, N_ ("Cancel the job") },
  { UNSOOT_JOB_BOOKED, UNSOOT_JOB_ARRIVED, N_ ("Record the arrival") },
  { UNSOOT_JOB_BOOKED, UNSOOT_JOB_QUOTED, N_ ("Take the booking back") },
  { UNSOOT_JOB_BOOKED, UNSOOT_JOB_CANCELLED, N_ ("Cancel the job") },
  { UNSOOT_JOB_ARRIVED, UNSOOT_JOB_IN_BAY, N_ ("Start") },
  { UNSOOT_JOB_ARRIVED, UNSOOT_JOB_BOOKED, N_ ("Book again") },
  { UNSOOT_JOB_ARRIVED, UNSOOT_JOB_CANCELLED, N_ ("Cancel the job") },
  { UNSOOT_JOB_IN_BAY, UNSOOT_JOB_DONE, N_ ("Sign off") },
  { UNSOOT_JOB_IN_BAY, UNSOOT_JOB_STOPPED, N_ ("Release incomplete") },
  { UNSOOT_JOB_IN_BAY, UNSOOT_JOB_CANCELLED, N_ ("Cancel the job") },
  { UNSOOT_JOB_DONE, UNSOOT_JOB_INVOICED, N_ ("Invoice") },
  { UNSOOT_JOB_INVOICED, UNSOOT_JOB_PAID, N_ ("Take payment") },
  { UNSOOT_JOB_INVOICED, UNSOOT_JOB_DONE, N_ ("Credit the invoice") },
  { UNSOOT_JOB_PAID, UNSOOT_JOB_INVOICED, N_ ("Return the payment") },
  { UNSOOT_JOB_DECLINED, UNSOOT_JOB_QUOTED, N_ ("Quote again") },
  { UNSOOT_JOB_CANCELLED, UNSOOT_JOB_QUOTED, N_ ("Quote again") },
  { UNSOOT_JOB_STOPPED, UNSOOT_JOB_IN_BAY, N_ ("Take up again") },
};

const char *
unsoot_job_status_slug (UnsootJobStatus status)
{
  return unsoot_slug_of (statuses, (int) status);
}

const char *
unsoot_job_status_words (UnsootJobStatus status)
{
  return unsoot_slug_words (statuses, (int) status);
}

gboolean
unsoot_job_status_find (const char *slug, UnsootJobStatus *status)
{
  int value = 0;

  if (!unsoot_slug_find (statuses, slug, &value))
    return FALSE;
  *status = (UnsootJobStatus) value;
  return TRUE;
}

int
unsoot_path_position (UnsootJobStatus status)
{
  return status < UNSOOT_PATH_LENGTH ? (int) status : -1;
}

const UnsootPathMove *
unsoot_path_next (UnsootJobStatus from, gsize *n_moves)
{
  gsize first = 0;

  while (first < G_N_ELEMENTS (moves) && moves[first].from != from)
    first++;
  *n_moves = 0;
  while (first + *n_moves < G_N_ELEMENTS (moves) && moves[first + *n_moves].from == from)
    (*n_moves)++;
  return *n_moves > 0 ? &moves[first] : NULL;
}

const char *
unsoot_path_verb (const UnsootPathMove *move)
{
  return _ (move->verb);
}

gboolean
unsoot_path_may (UnsootJobStatus from, UnsootJobStatus to)
{
  for (gsize i = 0; i < G_N_ELEMENTS (moves); i++)
    if (moves[i].from == from && moves[i].to == to)
      return TRUE;
  return FALSE;
}

static char *
where_it_can_go (UnsootJobStatus from)
{
  gsize n = 0;
  const UnsootPathMove *next = unsoot_path_next (from, &n);
  GString *list = g_string_new (NULL);

  for (gsize i = 0; i < n; i++)
    g_string_append_printf (list, "%s“%s”", i > 0 ? ", " : "",
                            unsoot_job_status_words (next[i].to));
  return g_string_free (list, FALSE);
}

char *
unsoot_path_refusal (UnsootJobStatus from, UnsootJobStatus to)
{
  g_autofree char *list = NULL;

  if (unsoot_path_may (from, to))
    return NULL;
  if (from == to)
    /* Translators: a job's status, as in "Booked" */
    return g_strdup_printf (_ ("The job already stands at “%s”"), unsoot_job_status_words (from));
  list = where_it_can_go (from);
  /* Translators: two statuses, then the ones that can follow */
  return g_strdup_printf (_ ("A job that stands at “%s” can't go to “%s”; it can go to %s"),
                          unsoot_job_status_words (from), unsoot_job_status_words (to), list);
}

gboolean
unsoot_path_check (UnsootJobStatus from, UnsootJobStatus to, GError **error)
{
  g_autofree char *refusal = unsoot_path_refusal (from, to);

  if (refusal == NULL)
    return TRUE;
  g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, refusal);
  return FALSE;
}
