/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machines.h"

#include <glib/gi18n-lib.h>
#include <inttypes.h>

#include "deed.h"
#include "dose.h"
#include "rig.h"
#include "tanks.h"

void
unsoot_tank_state_to_rig (const UnsootTankState *state, UnsootTank *tank)
{
  *tank = (UnsootTank){ .contents = UNSOOT_CONTENTS_UNKNOWN };
  tank->capacity_ml = state->tank->capacity_ml;
  if (state->last == NULL)
    return;
  unsoot_contents_from_slug (state->last->contents, &tank->contents);
  tank->ml = state->last->ml;
  tank->lot_id = state->last->lot_id;
}

static gboolean
check_free (UnsootDb *db, gint64 machine_id, GError **error)
{
  gint64 runs = 0;

  if (!unsoot_db_int (db, &runs, error,
                      "SELECT count (*) FROM runs WHERE machine_id = $1 AND outcome IS NULL",
                      unsoot_int (machine_id)))
    return FALSE;
  if (runs > 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("A run has this machine: what is done with its tanks is recorded "
                                "as steps of the run."));
  return TRUE;
}

gboolean
unsoot_tank_check_size (UnsootDb *db, const UnsootTankRow *tank, GError **error)
{
  if (tank->capacity_ml <= 0 || tank->low_ml < 0 || tank->low_ml >= tank->capacity_ml)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A tank needs its capacity, and a low mark below it."));
  if (tank->id == 0)
    return TRUE;
  g_autoptr (UnsootTankState) state = unsoot_machine_tank (db, tank->machine_id, tank->side, error);
  if (state == NULL)
    return FALSE;
  if (state->last != NULL && state->last->ml > tank->capacity_ml)
    {
      g_autofree char *there = unsoot_dose_volume_words (state->last->ml);
      g_autofree char *wanted = unsoot_dose_volume_words (tank->capacity_ml);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                               _ ("The tank holds %s by the book, so it can't be one for %s. Drain "
                                  "it first, or record what is found in it."),
                               there, wanted);
    }
  return TRUE;
}

gboolean
unsoot_tank_save (UnsootDb *db, const UnsootActing *who, UnsootTankRow *tank, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_SHOP, error);

  if (deed == NULL)
    return FALSE;
  return unsoot_deed_end (&deed,
                          check_free (db, tank->machine_id, error)
                              && unsoot_tank_check_size (db, tank, error)
                              && unsoot_rows_update (db, &unsoot_tank_row_type, tank, who, error),
                          error);
}

static gboolean
as_found (UnsootTank *tank, gint64 ml, const char *contents, GError **error)
{
  if (contents == NULL || !unsoot_contents_from_slug (contents, &tank->contents))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say what was found in the tank: unknown, empty, clean, fresh, "
                                "returned or held."));
  if (ml < 0 || ml > tank->capacity_ml)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("The tank can't hold %" PRId64 " mL."), ml);
  tank->ml = ml;
  return TRUE;
}

/* Drain, flush and hold by the same rules as in a run: on a vehicle as it came in. */
static gboolean
by_rule (UnsootTank *tank, UnsootSide side, const char *kind, gint64 ml, GError **error)
{
  UnsootAct act;
  g_auto (UnsootFault) fault = UNSOOT_FAULT_INIT;

  if (!unsoot_act_from_slug (kind, &act) || !unsoot_act_takes (act, UNSOOT_SUBJECT_TANK)
      || act == UNSOOT_ACT_FILL || act == UNSOOT_ACT_MEASURE)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A tank is found, drained, flushed or held; “%s” is none of "
                                "these."),
                             kind);
  g_autoptr (UnsootRig) rig = unsoot_rig_new ();
  g_autoptr (UnsootFamilyFacts) facts = unsoot_family_facts_new ("");
  g_autoptr (UnsootStep) step = unsoot_step_new (act, UNSOOT_SUBJECT_TANK, NULL);
  step->side = side;
  rig->tank[side] = *tank;
  if (!unsoot_rig_apply (rig, facts, step, NULL, &fault))
    {
      g_autofree char *sentence = unsoot_fault_sentence (&fault);
      return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", sentence);
    }
  *tank = rig->tank[side];
  if (act == UNSOOT_ACT_HOLD && ml > 0)
    tank->ml = ml;
  return TRUE;
}

static gboolean
set_lot (UnsootDb *db, UnsootTankEventRow *event, gint64 lot_id, GError **error)
{
  event->lot_id = lot_id;
  return lot_id == 0
         || unsoot_db_int (db, &event->fluid_id, error, "SELECT fluid_id FROM lots WHERE id = $1",
                           unsoot_int (lot_id));
}

gint64
unsoot_tank_event_add (UnsootDb *db, const UnsootActing *who, gint64 tank_id, const char *kind,
                       const UnsootTank *tank, gint64 job_id, gint64 at, const char *label,
                       GError **error)
{
  g_autoptr (UnsootTankEventRow) event = unsoot_tank_event_row_new ();

  event->tank_id = tank_id;
  event->kind = g_strdup (kind);
  event->ml = tank->ml;
  event->contents = g_strdup (unsoot_contents_to_slug (tank->contents));
  event->job_id = job_id;
  event->label = g_strdup (label);
  event->at = at;
  event->staff_id = who->staff_id;
  if (!set_lot (db, event, tank->ml > 0 ? tank->lot_id : 0, error)
      || !unsoot_rows_post (db, &unsoot_tank_event_row_type, event, error))
    return 0;
  return event->id;
}

gint64
unsoot_tank_post (UnsootDb *db, const UnsootActing *who, gint64 machine_id, const char *side,
                  const char *kind, gint64 ml, const char *contents, const char *label,
                  GError **error)
{
  UnsootSide which = UNSOOT_SIDE_NONE;
  UnsootTank tank;

  if (!unsoot_side_from_slug (side, &which) || which == UNSOOT_SIDE_NONE)
    {
      unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Say which tank: fuel or intake."));
      return 0;
    }
  if (g_strcmp0 (kind, "hold") == 0 && unsoot_deed_blank (label))
    {
      unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                        _ ("What is kept in a tank needs a label: write what it says."));
      return 0;
    }
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_TEND_TANK, error);
  g_autoptr (UnsootTankState) state
      = deed != NULL ? unsoot_machine_tank (db, machine_id, side, error) : NULL;
  if (state == NULL || !check_free (db, machine_id, error))
    return 0;
  unsoot_tank_state_to_rig (state, &tank);
  if (!(g_strcmp0 (kind, "found") == 0 ? as_found (&tank, ml, contents, error)
                                       : by_rule (&tank, which, kind, ml, error)))
    return 0;
  gint64 id
      = unsoot_tank_event_add (db, who, state->tank->id, kind, &tank, 0, who->now, label, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

static gboolean
is_corrected (const GPtrArray *events, gint64 id)
{
  for (guint i = 0; i < events->len; i++)
    if (((const UnsootTankEventRow *) events->pdata[i])->reverses_id == id)
      return TRUE;
  return FALSE;
}

/* The last that stands of those before @end. */
static const UnsootTankEventRow *
standing_before (const GPtrArray *events, gint64 end)
{
  for (guint i = events->len; i > 0; i--)
    {
      const UnsootTankEventRow *event = events->pdata[i - 1];
      if (event->id < end && event->reverses_id == 0 && !is_corrected (events, event->id))
        return event;
    }
  return NULL;
}

const UnsootTankEventRow *
unsoot_tank_standing (const GPtrArray *events)
{
  return standing_before (events, G_MAXINT64);
}

static gboolean
check_correctable (const GPtrArray *events, const UnsootTankEventRow *event, const char *reason,
                   GError **error)
{
  const UnsootTankEventRow *last = unsoot_tank_standing (events);

  if (event->reverses_id != 0 || is_corrected (events, event->id))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("This was taken back already. Record what is found in the tank."));
  if (last == NULL || last->id != event->id)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT,
                             _ ("Something was done with this tank since: take that back first, or "
                                "record what is found in it."));
  if (unsoot_deed_blank (reason))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Say why it is taken back: both stay in the book."));
  return TRUE;
}

/* @before: what the tank is said to hold again; NULL: nobody knows. */
static gint64
post_correction (UnsootDb *db, const UnsootActing *who, const UnsootTankEventRow *event,
                 const UnsootTankEventRow *before, const char *reason, GError **error)
{
  g_autoptr (UnsootTankEventRow) row
      = before != NULL ? unsoot_record_copy (&unsoot_tank_event_row_type, before)
                       : unsoot_tank_event_row_new ();

  row->id = 0;
  row->tank_id = event->tank_id;
  g_free (row->kind);
  row->kind = g_strdup ("correction");
  if (before == NULL)
    row->contents = g_strdup (unsoot_contents_to_slug (UNSOOT_CONTENTS_UNKNOWN));
  row->reverses_id = event->id;
  g_free (row->reason);
  row->reason = g_strdup (reason);
  row->at = who->now;
  row->staff_id = who->staff_id;
  return unsoot_rows_post (db, &unsoot_tank_event_row_type, row, error) ? row->id : 0;
}

gint64
unsoot_tank_correct (UnsootDb *db, const UnsootActing *who, gint64 event_id, const char *reason,
                     GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_TEND_TANK, error);
  g_autoptr (UnsootTankEventRow) event
      = deed != NULL ? unsoot_rows_get (db, &unsoot_tank_event_row_type, event_id, error) : NULL;
  g_autoptr (UnsootTankRow) tank
      = event != NULL ? unsoot_rows_get (db, &unsoot_tank_row_type, event->tank_id, error) : NULL;
  g_autoptr (GPtrArray) events = tank != NULL && check_free (db, tank->machine_id, error)
                                     ? unsoot_tank_events (db, tank->id, error)
                                     : NULL;

  if (events == NULL || !check_correctable (events, event, reason, error))
    return 0;
  gint64 id = post_correction (db, who, event, standing_before (events, event->id), reason, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}
