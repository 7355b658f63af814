/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>

#include "attention.h"
#include "run-rows.h"

/* A run that goes on, with its vehicle. */
typedef struct
{
  const UnsootRunRow *row;
  UnsootRun *run;
  gint64 vehicle_id;
  gint64 last_at; /* of its last entry */
  UnsootHappening why;
} Going;

static void
note_last (Going *going, GPtrArray *events)
{
  for (guint i = 0; i < events->len; i++)
    {
      const UnsootRunEventRow *event = events->pdata[i];
      going->last_at = event->at;
      if (event->happening != NULL)
        unsoot_happening_from_slug (event->happening, &going->why);
    }
}

/* Counted as people count, and never past the last. */
static int
step_number (const UnsootRun *run)
{
  int steps = (int) unsoot_run_procedure (run)->steps->len;

  return MIN (unsoot_run_current (run) + 1, steps);
}

static gboolean
tell (UnsootHandRound *round, const Going *going, GError **error)
{
  gboolean halted = unsoot_run_state (going->run) == UNSOOT_RUN_STATE_HALTED;
  gint64 silent = round->now - going->last_at;
  int steps = (int) unsoot_run_procedure (going->run)->steps->len;

  if (!halted && silent < UNSOOT_ATTENTION_SILENT_RUN)
    return TRUE;
  char *thing = unsoot_hand_vehicle_of (round, going->vehicle_id, error);
  if (thing == NULL)
    return FALSE;
  char *rest
      = halted ? g_strdup_printf (_ ("is stopped at step %d of %d: %s"), step_number (going->run),
                                  steps, unsoot_happening_label (going->why))
               : g_strdup_printf (_ ("stands at step %d of %d with no entry for %d min"),
                                  step_number (going->run), steps, (int) (silent / 60));
  unsoot_hand_add (round, UNSOOT_HAND_HALTED, halted ? silent + 1000000 : silent, UNSOOT_TARGET_JOB,
                   going->row->job_id, _ ("Open in bay"), thing, rest);
  return TRUE;
}

gboolean
unsoot_hands_runs (UnsootHandRound *round, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_job_run_list (round->db, error);

  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      Going going = { .row = rows->pdata[i] };
      g_autoptr (GPtrArray) events = unsoot_job_run_events (round->db, going.row->id, error);
      g_autoptr (UnsootRun) run
          = events != NULL ? unsoot_run_from_rows (going.row, events, error) : NULL;
      if (run == NULL
          || !unsoot_db_int (round->db, &going.vehicle_id, error,
                             "SELECT vehicle_id FROM jobs WHERE id = $1",
                             unsoot_int (going.row->job_id)))
        return FALSE;
      going.run = run;
      note_last (&going, events);
      if (!tell (round, &going, error))
        return FALSE;
    }
  return rows != NULL;
}
