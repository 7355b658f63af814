/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "hands.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "attention.h"
#include "bookings.h"
#include "civil-words.h"
#include "job-row.h"

static const char waiting_sql[]
    = "SELECT j.id, j.vehicle_id, j.arrived_at, b.starts_at, y.name FROM jobs j"
      " LEFT JOIN bookings b ON b.job_id = j.id AND b.state = 'planned'"
      " LEFT JOIN bays y ON y.id = b.bay_id WHERE j.status = 'arrived' ORDER BY j.id";

static const char standing_sql[]
    = "SELECT j.id, j.vehicle_id, j.status, j.number, s.at, s.note FROM jobs j"
      " JOIN job_status s ON s.id = (SELECT max (x.id) FROM job_status x WHERE x.job_id = j.id)"
      " WHERE j.status IN ('stopped', 'done') ORDER BY j.id";

static const char estimates_sql[]
    = "SELECT j.id, e.number, c.name, e.at, e.valid_until FROM jobs j"
      " JOIN customers c ON c.id = j.customer_id JOIN estimates e ON e.number ="
      "  (SELECT max (x.number) FROM estimates x WHERE x.job_id = j.id)"
      " WHERE j.status = 'quoted'"
      " AND NOT EXISTS (SELECT 1 FROM authorisations a WHERE a.estimate_id = e.id) ORDER BY j.id";

static gboolean
tell_waiting (UnsootHandRound *round, UnsootQuery *row, GError **error)
{
  gint64 since = MAX (unsoot_query_get_int (row, 2), unsoot_query_get_int (row, 3));
  gint64 waited = round->now - since;
  const char *bay = unsoot_query_get_text (row, 4);
  int minutes = (int) (waited / 60);

  if (waited < UNSOOT_ATTENTION_WAIT)
    return TRUE;
  char *rest = bay != NULL ? g_strdup_printf (_ ("has waited %d min for %s"), minutes, bay)
                           : g_strdup_printf (_ ("has waited %d min for a bay"), minutes);
  char *thing = unsoot_hand_vehicle_of (round, unsoot_query_get_int (row, 1), error);
  if (thing == NULL)
    {
      g_free (rest);
      return FALSE;
    }
  unsoot_hand_add (round, UNSOOT_HAND_WAITING, waited, UNSOOT_TARGET_JOB,
                   unsoot_query_get_int (row, 0), _ ("Start"), thing, rest);
  return TRUE;
}

static void
tell_stopped (UnsootHandRound *round, UnsootQuery *row, gint64 at, char *thing)
{
  const char *note = unsoot_query_get_text (row, 5);
  g_autofree char *since = unsoot_hand_when (round, at);

  unsoot_hand_add (round, UNSOOT_HAND_RELEASED, round->now - at, UNSOOT_TARGET_JOB,
                   unsoot_query_get_int (row, 0), _ ("Take up again"), thing,
                   g_strdup_printf (_ ("was released incomplete %s: %s"), since,
                                    note != NULL ? note : _ ("no reason given")));
}

static void
tell_done (UnsootHandRound *round, UnsootQuery *row, gint64 at, char *thing)
{
  g_autofree char *since = unsoot_hand_when (round, at);

  unsoot_hand_add (round, UNSOOT_HAND_UNINVOICED, round->now - at, UNSOOT_TARGET_JOB,
                   unsoot_query_get_int (row, 0), _ ("Invoice"), thing,
                   g_strdup_printf (_ ("was done %s and is not invoiced"), since));
}

static gboolean
tell_standing (UnsootHandRound *round, UnsootQuery *row, GError **error)
{
  gint64 at = unsoot_query_get_int (row, 4);
  char *thing = unsoot_hand_vehicle_of (round, unsoot_query_get_int (row, 1), error);

  if (thing == NULL)
    return FALSE;
  if (g_strcmp0 (unsoot_query_get_text (row, 2), "stopped") == 0)
    tell_stopped (round, row, at, thing);
  else
    tell_done (round, row, at, thing);
  return TRUE;
}

static gboolean
tell_estimate (UnsootHandRound *round, UnsootQuery *row, G_GNUC_UNUSED GError **error)
{
  int waited = round->today - unsoot_hand_day_of (round, unsoot_query_get_int (row, 3));
  int ends = unsoot_hand_day (unsoot_query_get_text (row, 4));
  int left = ends != 0 ? ends - round->today : G_MAXINT;
  g_autofree char *when = ends != 0 ? unsoot_day_near_words (ends, round->today) : NULL;
  char *rest = NULL;

  if (left < -UNSOOT_ATTENTION_ESTIMATE_GONE)
    return TRUE;
  if (left < 0)
    rest = g_strdup_printf (_ ("for %s ran out %s without an answer"),
                            unsoot_query_get_text (row, 2), when);
  else if (left <= UNSOOT_ATTENTION_ESTIMATE_ENDS)
    rest = g_strdup_printf (_ ("for %s runs out %s"), unsoot_query_get_text (row, 2), when);
  else if (waited >= UNSOOT_ATTENTION_ESTIMATE_WAITS)
    rest = g_strdup_printf (ngettext ("for %s has waited %d day for an answer",
                                      "for %s has waited %d days for an answer", (gulong) waited),
                            unsoot_query_get_text (row, 2), waited);
  if (rest != NULL)
    unsoot_hand_add (
        round, UNSOOT_HAND_ESTIMATE, waited, UNSOOT_TARGET_JOB, unsoot_query_get_int (row, 0),
        _ ("Ask"), g_strdup_printf (_ ("Estimate %" PRId64), unsoot_query_get_int (row, 1)), rest);
  return TRUE;
}

typedef gboolean (*Tell) (UnsootHandRound *round, UnsootQuery *row, GError **error);

static gboolean
each (UnsootHandRound *round, const char *sql, Tell tell, GError **error)
{
  g_autoptr (UnsootQuery) query = unsoot_db_query (round->db, error, sql);
  UnsootQueryStep step = UNSOOT_STEP_FAILED;

  while (query != NULL && (step = unsoot_query_step (query, error)) == UNSOOT_STEP_ROW)
    if (!tell (round, query, error))
      return FALSE;
  return step == UNSOOT_STEP_DONE;
}

gboolean
unsoot_hands_jobs (UnsootHandRound *round, GError **error)
{
  return each (round, waiting_sql, tell_waiting, error)
         && each (round, standing_sql, tell_standing, error)
         && each (round, estimates_sql, tell_estimate, error);
}
