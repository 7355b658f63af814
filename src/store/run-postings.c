/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-postings.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "lot-row.h"
#include "run-rows.h"
#include "stocks.h"
#include "tanks.h"

/* Poured by an event: what its lot no longer holds. */
static const char unposted_sql[]
    = "SELECT COALESCE (sum (e.ml), 0) FROM run_events e JOIN runs r ON r.id = e.run_id"
      " WHERE e.lot_id = $1 AND e.ml > 0 AND r.outcome IS NULL AND e.seq > COALESCE ("
      "(SELECT max (x.seq) FROM run_events x WHERE x.run_id = e.run_id AND x.kind = 'released'), 0)";

gboolean
unsoot_run_lot_left (UnsootDb *db, gint64 lot_id, gint64 *ml, GError **error)
{
  gint64 on_hand = 0, unposted = 0;

  if (!unsoot_lot_on_hand (db, lot_id, &on_hand, error)
      || !unsoot_db_int (db, &unposted, error, unposted_sql, unsoot_int (lot_id)))
    return FALSE;
  *ml = on_hand - unposted;
  return TRUE;
}

/* One replay, event by event, with what each did to the tanks. */
typedef struct
{
  UnsootDb *db;
  const UnsootActing *who;
  const UnsootRunRow *row;
  UnsootRun *run;
  gint64 tank_ids[UNSOOT_SIDES];
  gint64 lots[UNSOOT_SIDES]; /* poured last */
} Posting;

static gboolean
find_tanks (Posting *posting, GError **error)
{
  g_autoptr (GPtrArray) tanks = unsoot_machine_tanks (posting->db, posting->row->machine_id, error);

  for (guint i = 0; tanks != NULL && i < tanks->len; i++)
    {
      const UnsootTankState *state = tanks->pdata[i];
      UnsootSide side = UNSOOT_SIDE_NONE;
      if (unsoot_side_from_slug (state->tank->side, &side))
        posting->tank_ids[side] = state->tank->id;
    }
  return tanks != NULL;
}

static gboolean
post_use (Posting *posting, const UnsootRunEvent *event, gint64 ml, GError **error)
{
  g_autoptr (UnsootStockMoveRow) move = unsoot_stock_move_row_new ();

  move->lot_id = event->lot_id;
  move->job_id = posting->row->job_id;
  move->kind = g_strdup ("use");
  move->ml = -ml;
  move->at = event->done_at;
  move->staff_id = event->staff_id;
  return unsoot_rows_post (posting->db, &unsoot_stock_move_row_type, move, error);
}

static gboolean
same (const UnsootTank *a, const UnsootTank *b)
{
  return a->contents == b->contents && a->ml == b->ml && a->lot_id == b->lot_id;
}

static gboolean
post_side (Posting *posting, UnsootSide side, const UnsootTank *before, const UnsootTank *after,
           const UnsootRunEvent *event, GError **error)
{
  const char *kind = unsoot_run_event_tank_kind (posting->run, event);
  gint64 poured = g_str_equal (kind, "fill") ? after->ml - before->ml : 0;

  if (same (before, after))
    return TRUE;
  if (poured > 0)
    {
      posting->lots[side] = event->lot_id;
      if (!post_use (posting, event, poured, error))
        return FALSE;
    }
  const char *label = g_str_equal (kind, "hold") ? event->text : NULL;
  return unsoot_tank_event_add (posting->db, posting->who, posting->tank_ids[side], kind, after,
                                posting->row->job_id, event->done_at, label, error)
         != 0;
}

static gboolean
post_event (Posting *posting, const UnsootRunEvent *event, gboolean fresh, GError **error)
{
  const UnsootSide sides[] = { UNSOOT_SIDE_FUEL, UNSOOT_SIDE_INTAKE };
  UnsootTank before[UNSOOT_SIDES];

  for (gsize i = 0; i < G_N_ELEMENTS (sides); i++)
    before[sides[i]] = unsoot_run_rig (posting->run)->tank[sides[i]];
  if (!unsoot_run_apply (posting->run, event, error))
    return FALSE;
  for (gsize i = 0; fresh && i < G_N_ELEMENTS (sides); i++)
    if (!post_side (posting, sides[i], &before[sides[i]],
                    &unsoot_run_rig (posting->run)->tank[sides[i]], event, error))
      return FALSE;
  return TRUE;
}

/* Entries up to the last release were posted with it. */
static gint64
posted_until (GPtrArray *rows, gint64 last)
{
  gint64 seq = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootRunEventRow *row = rows->pdata[i];
      if (g_strcmp0 (row->kind, unsoot_run_event_to_slug (UNSOOT_RUN_RELEASED)) == 0
          && row->seq < last)
        seq = row->seq;
    }
  return seq;
}

static gboolean
post_all (Posting *posting, GPtrArray *rows, GError **error)
{
  gint64 posted = posted_until (rows, rows->len);

  for (guint i = 0; i < rows->len; i++)
    {
      const UnsootRunEventRow *row = rows->pdata[i];
      g_autoptr (UnsootRunEvent) event = unsoot_run_event_from_row (row);
      if (!post_event (posting, event, row->seq > posted, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
unsoot_run_post_fluids (UnsootDb *db, const UnsootActing *who, const UnsootRunRow *row,
                        gint64 *fuel_lot, gint64 *intake_lot, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_job_run_events (db, row->id, error);
  g_autoptr (GPtrArray) none = g_ptr_array_new ();
  g_autoptr (UnsootRun) run = rows != NULL ? unsoot_run_from_rows (row, none, error) : NULL;
  Posting posting = { db, who, row, run, { 0 }, { 0 } };

  if (run == NULL || !find_tanks (&posting, error) || !post_all (&posting, rows, error))
    return FALSE;
  if (posting.lots[UNSOOT_SIDE_FUEL] != 0)
    *fuel_lot = posting.lots[UNSOOT_SIDE_FUEL];
  if (posting.lots[UNSOOT_SIDE_INTAKE] != 0)
    *intake_lot = posting.lots[UNSOOT_SIDE_INTAKE];
  return TRUE;
}
