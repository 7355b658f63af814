/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-traces.h"

#include "run-rows.h"

static void
trace_free (gpointer data)
{
  UnsootRunTrace *trace = data;

  g_array_unref (trace->points);
  g_free (trace);
}

/* One run, replayed. */
static UnsootRunTrace *
load_trace (UnsootDb *db, gint64 run_id, gint64 job_number, GError **error)
{
  g_autoptr (UnsootRunRow) row = unsoot_job_run_row (db, run_id, error);
  g_autoptr (GPtrArray) events = row != NULL ? unsoot_job_run_events (db, run_id, error) : NULL;
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (UnsootTracePoint));
  g_autoptr (UnsootRun) run
      = events != NULL ? unsoot_run_from_rows_traced (row, events, points, error) : NULL;
  UnsootRunTrace *trace;

  if (run == NULL)
    return NULL;
  trace = g_new (UnsootRunTrace, 1);
  *trace = (UnsootRunTrace){ job_number, row->began_at, g_steal_pointer (&points) };
  return trace;
}

GPtrArray *
unsoot_run_traces (UnsootDb *db, gint64 run_id, int most, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (
      db, error,
      "SELECT r.id, j.number FROM runs r JOIN jobs j ON j.id = r.job_id"
      " JOIN procedures p ON p.id = r.procedure_id"
      " JOIN runs own ON own.id = $1 JOIN procedures q ON q.id = own.procedure_id"
      " WHERE r.id = own.id OR (r.outcome = 'finished' AND r.began_at < own.began_at"
      " AND p.family_id = q.family_id AND p.sides = q.sides)"
      " ORDER BY r.began_at DESC, r.id DESC LIMIT $2",
      unsoot_int (run_id), unsoot_int (most + 1));
  g_autoptr (GPtrArray) traces = g_ptr_array_new_with_free_func (trace_free);
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    {
      UnsootRunTrace *trace = load_trace (db, unsoot_query_get_int (query, 0),
                                          unsoot_query_get_int (query, 1), error);
      if (trace == NULL)
        return NULL;
      g_ptr_array_add (traces, trace);
    }
  return step == UNSOOT_STEP_DONE ? g_steal_pointer (&traces) : NULL;
}
