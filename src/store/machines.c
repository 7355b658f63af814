/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "machines.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "dose.h"
#include "fluid-row.h"
#include "lot-row.h"
#include "rig.h"
#include "tanks.h"

void
unsoot_tank_state_free (UnsootTankState *state)
{
  if (state == NULL)
    return;
  unsoot_tank_row_free (state->tank);
  unsoot_tank_event_row_free (state->last);
  g_free (state->words);
  g_free (state);
}

GPtrArray *
unsoot_machine_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_machine_row_type, error, "ORDER BY active DESC, name, id");
}

UnsootMachineRow *
unsoot_machine_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_machine_row_type, id, error);
}

static gboolean
keep_tank (UnsootDb *db, const UnsootActing *who, gint64 machine_id, const char *side,
           UnsootTankRow *tank, GError **error)
{
  if (tank == NULL)
    return TRUE;
  if (!unsoot_tank_check_size (db, tank, error))
    return FALSE;
  UnsootTankRow *row = unsoot_record_copy (&unsoot_tank_row_type, tank);
  row->machine_id = machine_id;
  g_free (row->side);
  row->side = g_strdup (side);
  gboolean kept = unsoot_deed_keep (db, &unsoot_tank_row_type, row, who, error);
  unsoot_tank_row_free (row);
  return kept;
}

gboolean
unsoot_machine_save (UnsootDb *db, const UnsootActing *who, UnsootMachineRow *machine,
                     UnsootTankRow *fuel, UnsootTankRow *intake, GError **error)
{
  UnsootRecordHead before = { machine->id, machine->version };

  if (unsoot_deed_blank (machine->name))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("The machine needs a name."));
  if (machine->id == 0 && (fuel == NULL || intake == NULL))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A machine has two tanks, one for each side. Enter both."));
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_SHOP, error);
  if (deed == NULL)
    return FALSE;
  gboolean done = unsoot_deed_keep (db, &unsoot_machine_row_type, machine, who, error)
                  && keep_tank (db, who, machine->id, "fuel", fuel, error)
                  && keep_tank (db, who, machine->id, "intake", intake, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  machine->id = before.id;
  machine->version = before.version;
  return FALSE;
}

/* "0.4 L fresh, fluid K, lot 7714, for unit 12" */
static char *
words_of (UnsootDb *db, const UnsootTankEventRow *last, GError **error)
{
  UnsootContents contents = UNSOOT_CONTENTS_UNKNOWN;
  g_autoptr (GString) words = g_string_new (NULL);

  if (last != NULL)
    unsoot_contents_from_slug (last->contents, &contents);
  if (last != NULL && last->ml > 0)
    {
      g_autofree char *volume = unsoot_dose_volume_words (last->ml);
      g_string_append_printf (words, "%s ", volume);
    }
  g_string_append (words, unsoot_contents_label (contents));
  if (last != NULL && last->ml > 0 && last->lot_id != 0)
    {
      g_autoptr (UnsootLotRow) lot
          = unsoot_rows_get (db, &unsoot_lot_row_type, last->lot_id, error);
      g_autoptr (UnsootFluidRow) fluid
          = lot != NULL ? unsoot_rows_get (db, &unsoot_fluid_row_type, lot->fluid_id, error) : NULL;
      if (fluid == NULL)
        return NULL;
      g_string_append_printf (words, _ (", %s, lot %s"), fluid->name, lot->code);
    }
  if (last != NULL && last->label != NULL)
    g_string_append_printf (words, ", “%s”", last->label);
  return g_strdup (words->str);
}

static UnsootTankState *
state_of (UnsootDb *db, const UnsootTankRow *tank, GError **error)
{
  g_autoptr (UnsootTankState) state = g_new0 (UnsootTankState, 1);
  g_autoptr (GError) failed = NULL;

  state->tank = unsoot_record_copy (&unsoot_tank_row_type, tank);
  state->last
      = unsoot_rows_maybe (db, &unsoot_tank_event_row_type, &failed,
                           "WHERE tank_id = $1 ORDER BY id DESC LIMIT 1", unsoot_int (tank->id));
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return NULL;
    }
  state->words = words_of (db, state->last, error);
  return state->words != NULL ? g_steal_pointer (&state) : NULL;
}

GPtrArray *
unsoot_tank_list (UnsootDb *db, GError **error)
{
  return unsoot_rows_list (db, &unsoot_tank_row_type, error, "ORDER BY machine_id, side");
}

GPtrArray *
unsoot_machine_tanks (UnsootDb *db, gint64 machine_id, GError **error)
{
  g_autoptr (GPtrArray) tanks
      = unsoot_rows_list (db, &unsoot_tank_row_type, error, "WHERE machine_id = $1 ORDER BY side",
                          unsoot_int (machine_id));
  g_autoptr (GPtrArray) states
      = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_tank_state_free);

  for (guint i = 0; tanks != NULL && i < tanks->len; i++)
    {
      UnsootTankState *state = state_of (db, tanks->pdata[i], error);
      if (state == NULL)
        return NULL;
      g_ptr_array_add (states, state);
    }
  return tanks != NULL ? g_steal_pointer (&states) : NULL;
}

UnsootTankState *
unsoot_machine_tank (UnsootDb *db, gint64 machine_id, const char *side, GError **error)
{
  g_autoptr (UnsootTankRow) tank = unsoot_rows_first (
      db, &unsoot_tank_row_type, error, "WHERE machine_id = $1 AND side = $2 ORDER BY id",
      unsoot_int (machine_id), unsoot_text (side));

  return tank != NULL ? state_of (db, tank, error) : NULL;
}

GPtrArray *
unsoot_tank_events (UnsootDb *db, gint64 tank_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_tank_event_row_type, error, "WHERE tank_id = $1 ORDER BY id",
                           unsoot_int (tank_id));
}

gboolean
unsoot_gauge_check_post (UnsootDb *db, const UnsootActing *who, UnsootGaugeCheckRow *check,
                         GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_CHECK_MACHINE, error);

  if (deed == NULL)
    return FALSE;
  check->id = 0;
  check->at = who->now;
  check->staff_id = who->staff_id;
  return unsoot_deed_end (&deed, unsoot_rows_post (db, &unsoot_gauge_check_row_type, check, error),
                          error);
}

GPtrArray *
unsoot_gauge_checks (UnsootDb *db, gint64 machine_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_gauge_check_row_type, error,
                           "WHERE machine_id = $1 ORDER BY id", unsoot_int (machine_id));
}

gboolean
unsoot_machine_hoses (UnsootDb *db, const UnsootActing *who, gint64 machine_id, const char *due_on,
                      GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_CHECK_MACHINE, error);
  g_autoptr (UnsootMachineRow) machine
      = deed != NULL ? unsoot_machine_load (db, machine_id, error) : NULL;

  if (machine == NULL)
    return FALSE;
  g_free (machine->hoses_due_on);
  machine->hoses_due_on = g_strdup (due_on);
  return unsoot_deed_end (
      &deed, unsoot_rows_update (db, &unsoot_machine_row_type, machine, who, error), error);
}
