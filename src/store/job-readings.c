/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job-readings.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "job-status.h"
#include "jobs.h"
#include "reading-change.h"
#include "unit-text.h"

GPtrArray *
unsoot_job_readings (UnsootDb *db, gint64 job_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_reading_row_type, error,
                           "WHERE job_id = $1 ORDER BY kind, stage DESC, id", unsoot_int (job_id));
}

GPtrArray *
unsoot_vehicle_readings (UnsootDb *db, gint64 vehicle_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_reading_row_type, error,
                           "WHERE job_id IN (SELECT id FROM jobs WHERE vehicle_id = $1)"
                           " ORDER BY at, id",
                           unsoot_int (vehicle_id));
}

static UnsootCondition
condition_of (const UnsootReadingRow *row)
{
  int egr = UNSOOT_EGR_UNKNOWN;

  if (row->egr_state != NULL)
    unsoot_slug_find (unsoot_egr_states, row->egr_state, &egr);
  return (UnsootCondition){ .rpm = row->rpm,
                            .load = row->load_percent,
                            .coolant = row->coolant_c,
                            .egr = (UnsootEgrState) egr,
                            .regeneration = row->regeneration,
                            .barometer = row->barometer_pa,
                            .ambient = row->ambient_c };
}

/* The value in SI from what was typed, in the unit that stands beside it. */
static gboolean
take_value (UnsootReadingRow *row, UnsootReadingKind kind, GError **error)
{
  UnsootUnit unit = row->unit != NULL ? unsoot_unit_from_words (row->unit) : UNSOOT_UNIT_NONE;
  UnsootTyped typed;

  if (unsoot_deed_blank (row->typed))
    return !isnan (row->value)
           || unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID, _ ("Enter what was read."));
  if (!unsoot_typed_parse (row->typed, unsoot_reading_quantity (kind), unit, &typed, error))
    return FALSE;
  row->value = typed.si;
  g_free (row->unit);
  row->unit = g_strdup (unsoot_unit_slug (typed.unit));
  return TRUE;
}

static gboolean
check_reading (UnsootReadingRow *row, UnsootReadingKind *kind, GError **error)
{
  int value;

  if (!unsoot_slug_parse (unsoot_reading_kinds, _ ("a reading"), row->kind, &value, error))
    return FALSE;
  *kind = (UnsootReadingKind) value;
  if (g_strcmp0 (row->stage, "before") != 0 && g_strcmp0 (row->stage, "after") != 0)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("A reading is taken before or after."));
  if (row->egr_state != NULL
      && !unsoot_slug_parse (unsoot_egr_states, _ ("a state of the EGR valve"), row->egr_state,
                             &value, error))
    return FALSE;
  return take_value (row, *kind, error);
}

/* An after that was taken under other conditions than its before shows nothing. */
static gboolean
check_alike (UnsootDb *db, const UnsootReadingRow *row, UnsootReadingKind kind, GError **error)
{
  gboolean after = g_strcmp0 (row->stage, "after") == 0;
  g_autoptr (GPtrArray) others = unsoot_rows_list (
      db, &unsoot_reading_row_type, error,
      "WHERE job_id = $1 AND kind = $2 AND stage = $3 AND id <> $4 ORDER BY id DESC LIMIT 1",
      unsoot_int (row->job_id), unsoot_text (row->kind), unsoot_text (after ? "before" : "after"),
      unsoot_int (row->id));
  g_autofree char *why = NULL;

  if (others == NULL || others->len == 0)
    return others != NULL;
  UnsootCondition this = condition_of (row);
  UnsootCondition other = condition_of (others->pdata[0]);
  if (!unsoot_reading_alike (kind, after ? &other : &this, after ? &this : &other,
                             &unsoot_alike_usual, &why))
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_CONSTRAINT, "%s", why);
  return TRUE;
}

static gboolean
check_job (UnsootDb *db, gint64 job_id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (db, job_id, error);

  return job != NULL && unsoot_job_check_open (job, error);
}

gboolean
unsoot_reading_save (UnsootDb *db, const UnsootActing *who, UnsootReadingRow *reading,
                     GError **error)
{
  UnsootRecordHead before = { reading->id, reading->version };
  UnsootReadingKind kind;

  if (!check_reading (reading, &kind, error))
    return FALSE;
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  if (deed == NULL)
    return FALSE;
  gboolean done = check_job (db, reading->job_id, error) && check_alike (db, reading, kind, error)
                  && unsoot_deed_keep (db, &unsoot_reading_row_type, reading, who, error);
  if (unsoot_deed_end (&deed, done, error))
    return TRUE;
  reading->id = before.id;
  reading->version = before.version;
  return FALSE;
}

gboolean
unsoot_reading_add (UnsootDb *db, const UnsootActing *who, UnsootReadingRow *reading,
                    GError **error)
{
  reading->id = 0;
  reading->at = who->now;
  reading->staff_id = who->staff_id;
  return unsoot_reading_save (db, who, reading, error);
}

gboolean
unsoot_reading_remove (UnsootDb *db, const UnsootActing *who, gint64 reading_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed
      = unsoot_deed_begin (db, who, UNSOOT_DEED_RECORD_READING, error);
  g_autoptr (UnsootReadingRow) reading
      = deed != NULL ? unsoot_rows_get (db, &unsoot_reading_row_type, reading_id, error) : NULL;

  if (reading == NULL || !check_job (db, reading->job_id, error))
    return FALSE;
  return unsoot_deed_end (
      &deed, unsoot_rows_delete (db, &unsoot_reading_row_type, reading, who, error), error);
}
