/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "procedures.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "deed.h"
#include "families.h"
#include "procedure-rows.h"
#include "trade-error.h"

UnsootFamilyFacts *
unsoot_family_row_facts (const UnsootFamilyRow *family)
{
  UnsootFamilyFacts *facts = unsoot_family_facts_new (family->name);

  facts->has_lift_pump = family->lift_pump;
  facts->lift_pump_bypass_allowed = family->lift_pump_bypass;
  facts->window_min_pa = family->window_min_pa;
  facts->window_max_pa = family->window_max_pa;
  facts->has_egr = family->has_egr;
  facts->has_egr_cooler = family->has_egr_cooler;
  facts->has_heater = family->has_heater;
  facts->has_regeneration = family->has_regeneration;
  facts->has_road = family->has_road;
  facts->dose_ml[UNSOOT_SIDE_FUEL] = family->fuel_dose_ml;
  facts->dose_ml[UNSOOT_SIDE_INTAKE] = family->intake_dose_ml;
  g_auto (GStrv) points
      = g_strsplit (family->low_points != NULL ? family->low_points : "", "\n", -1);
  for (char **point = points; *point != NULL; point++)
    if (*g_strstrip (*point) != '\0')
      unsoot_family_facts_add_low_point (facts, *point);
  return facts;
}

GPtrArray *
unsoot_procedure_list (UnsootDb *db, gint64 family_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_procedure_row_type, error,
                           "WHERE family_id = $1 ORDER BY number DESC, sides, id",
                           unsoot_int (family_id));
}

GPtrArray *
unsoot_procedure_phases (UnsootDb *db, gint64 procedure_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_phase_row_type, error,
                           "WHERE procedure_id = $1 ORDER BY position", unsoot_int (procedure_id));
}

GPtrArray *
unsoot_procedure_steps (UnsootDb *db, gint64 procedure_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_step_row_type, error,
                           "WHERE procedure_id = $1 ORDER BY position", unsoot_int (procedure_id));
}

UnsootProcedureRow *
unsoot_procedure_in_use (UnsootDb *db, gint64 family_id, const char *sides, GError **error)
{
  return unsoot_rows_maybe (db, &unsoot_procedure_row_type, error,
                            "WHERE family_id = $1 AND sides = $2 AND state = 'in-use'"
                            " ORDER BY number DESC LIMIT 1",
                            unsoot_int (family_id), unsoot_text (sides));
}

const char *
unsoot_procedure_sides (const UnsootProcedure *procedure)
{
  gboolean fuel = procedure->cleans[UNSOOT_SIDE_FUEL];
  gboolean intake = procedure->cleans[UNSOOT_SIDE_INTAKE];

  return fuel && intake ? "both" : fuel ? "fuel" : "intake";
}

UnsootProcedure *
unsoot_procedure_load (UnsootDb *db, gint64 procedure_id, GError **error)
{
  g_autoptr (UnsootProcedureRow) row
      = unsoot_rows_get (db, &unsoot_procedure_row_type, procedure_id, error);
  g_autoptr (GPtrArray) phases
      = row != NULL ? unsoot_procedure_phases (db, procedure_id, error) : NULL;
  g_autoptr (GPtrArray) steps
      = phases != NULL ? unsoot_procedure_steps (db, procedure_id, error) : NULL;

  return steps != NULL ? unsoot_procedure_from_rows (row, phases, steps, error) : NULL;
}

/* How much is each job's own matter: for safety there only has to be a dose, which a family
 * may leave to the size class. */
static void
assume_doses (UnsootFamilyFacts *facts)
{
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    if (facts->dose_ml[side] == 0)
      facts->dose_ml[side] = 1000;
}

/* The first rule that it breaks, with the step counted as people count. */
static gboolean
check_safe (const UnsootProcedure *procedure, const UnsootFamilyRow *family, GError **error)
{
  g_autoptr (UnsootFamilyFacts) facts = unsoot_family_row_facts (family);
  g_autoptr (GArray) faults = unsoot_faults_new ();

  assume_doses (facts);
  if (unsoot_procedure_check (procedure, facts, faults))
    return TRUE;
  const UnsootFault *fault = &g_array_index (faults, UnsootFault, 0);
  g_autofree char *sentence = unsoot_fault_sentence (fault);
  if (fault->step >= 0 && fault->step < (int) procedure->steps->len)
    g_set_error (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, _ ("Step %d: %s"),
                 fault->step + 1, sentence);
  else
    g_set_error_literal (error, UNSOOT_TRADE_ERROR, UNSOOT_TRADE_ERROR_REFUSED, sentence);
  return FALSE;
}

static gboolean
retire_former (UnsootDb *db, const UnsootActing *who, gint64 family_id, const char *sides,
               GError **error)
{
  g_autoptr (GPtrArray) former
      = unsoot_rows_list (db, &unsoot_procedure_row_type, error,
                          "WHERE family_id = $1 AND sides = $2 AND state = 'in-use' ORDER BY id",
                          unsoot_int (family_id), unsoot_text (sides));

  if (former == NULL)
    return FALSE;
  for (guint i = 0; i < former->len; i++)
    {
      UnsootProcedureRow *row = former->pdata[i];
      g_free (row->state);
      row->state = g_strdup ("retired");
      if (!unsoot_rows_update (db, &unsoot_procedure_row_type, row, who, error))
        return FALSE;
    }
  return TRUE;
}

static gint64
insert_version (UnsootDb *db, const UnsootActing *who, gint64 family_id,
                const UnsootProcedure *procedure, GError **error)
{
  g_autoptr (UnsootProcedureRow) row = unsoot_procedure_row_new ();

  row->family_id = family_id;
  row->sides = g_strdup (unsoot_procedure_sides (procedure));
  row->title = g_strdup (procedure->title);
  row->state = g_strdup ("in-use");
  row->made_at = who->now;
  row->made_by = who->staff_id;
  if (!unsoot_db_int (db, &row->number, error,
                      "SELECT COALESCE (max (number), 0) + 1 FROM procedures"
                      " WHERE family_id = $1 AND sides = $2",
                      unsoot_int (family_id), unsoot_text (row->sides))
      || !unsoot_rows_insert (db, &unsoot_procedure_row_type, row, who, error)
      || !unsoot_procedure_rows_insert (db, who, row->id, procedure, error))
    return 0;
  return row->id;
}

gint64
unsoot_procedure_save (UnsootDb *db, const UnsootActing *who, gint64 family_id,
                       const UnsootProcedure *procedure, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_PROCEDURE, error);
  g_autoptr (UnsootFamilyRow) family
      = deed != NULL ? unsoot_family_load (db, family_id, error) : NULL;

  if (family == NULL || !check_safe (procedure, family, error)
      || !retire_former (db, who, family_id, unsoot_procedure_sides (procedure), error))
    return 0;
  gint64 id = insert_version (db, who, family_id, procedure, error);
  return unsoot_deed_end (&deed, id != 0, error) ? id : 0;
}

gboolean
unsoot_procedure_stop (UnsootDb *db, const UnsootActing *who, gint64 procedure_id,
                       const char *reason, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_PROCEDURE, error);
  g_autoptr (UnsootProcedureRow) row
      = deed != NULL ? unsoot_rows_get (db, &unsoot_procedure_row_type, procedure_id, error) : NULL;

  if (row == NULL)
    return FALSE;
  g_free (row->stop_reason);
  row->stop_reason = g_strdup (reason);
  return unsoot_deed_end (
      &deed, unsoot_rows_update (db, &unsoot_procedure_row_type, row, who, error), error);
}
