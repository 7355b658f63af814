/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "run-rows.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "deed.h"
#include "dose.h"
#include "fluids.h"
#include "lots.h"
#include "procedure-text.h"
#include "run-postings.h"
#include "run-trace.h"
#include "shops.h"
#include "stocks.h"
#include "tanks.h"

char *
unsoot_run_tanks_text (GPtrArray *tanks)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < tanks->len; i++)
    {
      const UnsootTankState *state = tanks->pdata[i];
      UnsootTank tank;
      unsoot_tank_state_to_rig (state, &tank);
      g_string_append_printf (text, "%s%s %s %" PRId64 " %" PRId64 " %" PRId64, i > 0 ? "\n" : "",
                              state->tank->side, unsoot_contents_to_slug (tank.contents), tank.ml,
                              tank.lot_id, tank.capacity_ml);
    }
  return g_string_free (text, FALSE);
}

/* "fuel fresh 400 12 20000" */
static gboolean
read_tank (const char *line, UnsootRunStart *start)
{
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  UnsootSide side = UNSOOT_SIDE_NONE;

  if (g_strv_length (words) != 5 || !unsoot_side_from_slug (words[0], &side)
      || side == UNSOOT_SIDE_NONE)
    return FALSE;
  UnsootTank *tank = &start->tank[side];
  return unsoot_contents_from_slug (words[1], &tank->contents)
         && g_ascii_string_to_signed (words[2], 10, 0, G_MAXINT64, &tank->ml, NULL)
         && g_ascii_string_to_signed (words[3], 10, 0, G_MAXINT64, &tank->lot_id, NULL)
         && g_ascii_string_to_signed (words[4], 10, 0, G_MAXINT64, &tank->capacity_ml, NULL);
}

static gboolean
read_start (const char *text, UnsootRunStart *start)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (char **line = lines; *line != NULL; line++)
    if (**line != '\0' && !read_tank (*line, start))
      return FALSE;
  return TRUE;
}

UnsootRunEvent *
unsoot_run_event_from_row (const UnsootRunEventRow *row)
{
  UnsootRunEventKind kind;
  UnsootHappening happening = UNSOOT_HAPPENING_NONE;

  if (!unsoot_run_event_from_slug (row->kind, &kind)
      || (row->happening != NULL && !unsoot_happening_from_slug (row->happening, &happening)))
    return NULL;
  UnsootRunEvent *event = unsoot_run_event_new (kind, row->at);
  event->seq = row->seq;
  event->done_at = row->done_at;
  event->step = (int) row->step;
  event->happening = happening;
  event->value = row->value;
  event->ml = row->ml;
  event->lot_id = row->lot_id;
  if (row->fluid != NULL)
    unsoot_side_from_slug (row->fluid, &event->fluid);
  event->text = g_strdup (row->text);
  event->staff_id = row->staff_id;
  return event;
}

static UnsootRunEventRow *
row_from_event (gint64 run_id, const UnsootRunEvent *event)
{
  UnsootRunEventRow *row = unsoot_run_event_row_new ();

  row->run_id = run_id;
  row->seq = event->seq;
  row->kind = g_strdup (unsoot_run_event_to_slug (event->kind));
  row->at = event->at;
  row->done_at = event->done_at;
  row->step = event->step;
  if (event->happening != UNSOOT_HAPPENING_NONE)
    row->happening = g_strdup (unsoot_happening_to_slug (event->happening));
  row->value = event->value;
  row->ml = event->ml;
  row->lot_id = event->lot_id;
  if (event->fluid != UNSOOT_SIDE_NONE)
    row->fluid = g_strdup (unsoot_side_to_slug (event->fluid));
  row->text = g_strdup (event->text);
  row->staff_id = event->staff_id;
  return row;
}

static gboolean
damaged (const UnsootRunRow *row, gint64 seq, const char *why, GError **error)
{
  return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_DAMAGED,
                           _ ("The run of %" PRId64 " can't be read back at its entry %" PRId64
                              ": %s Restore a backup."),
                           row->id, seq, why);
}

static gboolean
replay (UnsootRun *run, const UnsootRunRow *row, GPtrArray *events, GArray *points, GError **error)
{
  for (guint i = 0; i < events->len; i++)
    {
      const UnsootRunEventRow *event_row = events->pdata[i];
      g_autoptr (UnsootRunEvent) event = unsoot_run_event_from_row (event_row);
      g_autoptr (GError) refused = NULL;
      if (event == NULL)
        return damaged (row, event_row->seq, _ ("it is of an unknown kind."), error);
      if (!unsoot_run_apply (run, event, &refused))
        return damaged (row, event_row->seq, refused->message, error);
      if (points != NULL)
        unsoot_run_trace_add (points, run, event->done_at);
    }
  return TRUE;
}

UnsootRun *
unsoot_run_from_rows_traced (const UnsootRunRow *row, GPtrArray *events, GArray *points,
                             GError **error)
{
  g_autoptr (UnsootProcedure) procedure = NULL;
  g_autoptr (UnsootFamilyFacts) facts = NULL;
  g_autoptr (GError) unread = NULL;
  UnsootRunStart start = { 0 };

  if (!unsoot_procedure_parse (row->basis, &procedure, &facts, &unread))
    {
      damaged (row, 0, unread->message, error);
      return NULL;
    }
  if (!read_start (row->start_tanks, &start))
    {
      damaged (row, 0, _ ("what its tanks held is not readable."), error);
      return NULL;
    }
  g_autoptr (UnsootRun) run = unsoot_run_new (procedure, facts, &start);
  return replay (run, row, events, points, error) ? g_steal_pointer (&run) : NULL;
}

UnsootRun *
unsoot_run_from_rows (const UnsootRunRow *row, GPtrArray *events, GError **error)
{
  return unsoot_run_from_rows_traced (row, events, NULL, error);
}

gboolean
unsoot_run_event_check_lot (UnsootDb *db, const UnsootActing *who, UnsootRunEvent *event,
                            GError **error)
{
  if (event->lot_id == 0)
    return TRUE;
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, event->lot_id, error);
  g_autoptr (UnsootFluidRow) fluid
      = lot != NULL ? unsoot_fluid_load (db, lot->fluid_id, error) : NULL;
  g_autoptr (UnsootShopRow) shop = fluid != NULL ? unsoot_shop_load (db, error) : NULL;
  if (shop == NULL)
    return FALSE;

  g_autofree char *today = unsoot_shop_date (shop, who->now);
  unsoot_side_from_slug (fluid->side, &event->fluid);
  return unsoot_lot_check (db, lot->id, fluid->side, today, error);
}

const char *
unsoot_run_event_tank_kind (const UnsootRun *run, const UnsootRunEvent *event)
{
  g_autoptr (UnsootStep) extra
      = event->kind == UNSOOT_RUN_EXTRA ? unsoot_step_parse (event->text, NULL) : NULL;
  const UnsootStep *step = event->kind == UNSOOT_RUN_CONFIRM
                               ? unsoot_procedure_step (unsoot_run_procedure (run), event->step)
                               : extra;

  if (step == NULL || step->subject != UNSOOT_SUBJECT_TANK)
    return "run";
  if (step->act == UNSOOT_ACT_FILL || step->act == UNSOOT_ACT_DRAIN || step->act == UNSOOT_ACT_FLUSH
      || step->act == UNSOOT_ACT_HOLD)
    return unsoot_act_to_slug (step->act);
  return "found";
}

static gint64
tank_ml (const UnsootRun *run)
{
  const UnsootRig *rig = unsoot_run_rig (run);

  return rig->tank[UNSOOT_SIDE_FUEL].ml + rig->tank[UNSOOT_SIDE_INTAKE].ml;
}

static gboolean
check_enough (UnsootDb *db, gint64 lot_id, gint64 poured, GError **error)
{
  g_autoptr (UnsootLotRow) lot = unsoot_lot_load (db, lot_id, error);
  gint64 left = 0;

  if (lot == NULL || !unsoot_run_lot_left (db, lot_id, &left, error))
    return FALSE;
  if (poured > left)
    {
      g_autofree char *wanted = unsoot_dose_volume_words (poured);
      g_autofree char *there = unsoot_dose_volume_words (left);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                               _ ("Lot %s holds %s, so %s can't have come out of it. Count the lot "
                                  "if the book is wrong."),
                               lot->code, there, wanted);
    }
  return TRUE;
}

/* Fluid that came into a tank has to have come out of a lot; how much is written down even
 * where the person took the plan's own dose. */
static gboolean
check_poured (UnsootDb *db, const UnsootRun *run, const UnsootRunEvent *event, gint64 poured,
              UnsootRunEventRow *row, GError **error)
{
  if (!g_str_equal (unsoot_run_event_tank_kind (run, event), "fill"))
    return TRUE;
  if (event->lot_id == 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Say from which lot the fluid is: a recall goes by it."));
  row->ml = poured;
  return check_enough (db, event->lot_id, poured, error);
}

gboolean
unsoot_run_event_put (UnsootDb *db, gint64 run_id, UnsootRun *run, UnsootRunEvent *event,
                      GError **error)
{
  const gint64 before = tank_ml (run);

  event->seq = unsoot_run_next_seq (run);
  if (event->done_at == 0)
    event->done_at = event->at;
  g_autoptr (UnsootRunEventRow) row = row_from_event (run_id, event);
  return unsoot_run_apply (run, event, error)
         && check_poured (db, run, event, tank_ml (run) - before, row, error)
         && unsoot_rows_post (db, &unsoot_run_event_row_type, row, error);
}

gboolean
unsoot_run_event_add (UnsootDb *db, const UnsootActing *who, gint64 run_id, UnsootRunEvent *event,
                      UnsootRun **after, GError **error)
{
  g_autoptr (UnsootRun) run = unsoot_job_run_load (db, run_id, error);
  if (run == NULL)
    return FALSE;

  event->at = who->now;
  event->staff_id = who->staff_id;
  if (!unsoot_run_event_put (db, run_id, run, event, error))
    return FALSE;
  if (after != NULL)
    *after = g_steal_pointer (&run);
  return TRUE;
}
