/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "carry-private.h"

#include <glib/gi18n-lib.h>

#include "demo-run.h"
#include "dose.h"
#include "job-files.h"
#include "lots.h"
#include "prechecks.h"
#include "runs.h"
#include "shops.h"

#define MINUTE 60

/* A lot that may be used and holds the side's dose, the first to expire. */
static gboolean
pick_lot (UnsootCarry *carry, const UnsootFluidRow *fluid, gint64 ml, gint64 *lot_id,
          GError **error)
{
  UnsootCall *call = carry->call;
  g_autofree char *today = unsoot_shop_date (call->shop, call->who.now);

  if (ml <= 0 || fluid == NULL)
    return TRUE;
  g_autoptr (UnsootLotRow) lot = unsoot_lot_pick (call->db, fluid->id, ml, today, error);
  if (lot == NULL)
    return FALSE;
  *lot_id = lot->id;
  return TRUE;
}

static gboolean
pick_lots (UnsootCarry *carry, UnsootDemoPace *pace, GError **error)
{
  g_autoptr (UnsootJobFile) file = unsoot_job_file_load (carry->call->db, carry->job_id, error);

  return file != NULL
         && pick_lot (carry, file->fuel_fluid, file->job->fuel_dose_ml,
                      &pace->lot_id[UNSOOT_SIDE_FUEL], error)
         && pick_lot (carry, file->intake_fluid, file->job->intake_dose_ml,
                      &pace->lot_id[UNSOOT_SIDE_INTAKE], error);
}

/* What was entered with the step last confirmed, "" for nothing. */
static char *
entered_words (UnsootCarry *carry, gint64 run_id, GError **error)
{
  g_autoptr (GPtrArray) events = unsoot_job_run_events (carry->call->db, run_id, error);

  if (events == NULL)
    return NULL;
  const UnsootRunEventRow *last = events->len > 0 ? events->pdata[events->len - 1] : NULL;
  if (last == NULL || last->ml <= 0)
    return g_strdup ("");
  g_autofree char *volume = unsoot_dose_volume_words (last->ml);
  return g_strconcat (", ", volume, NULL);
}

static gboolean
carry_step (UnsootCarry *carry, gint64 run_id, UnsootDemoPace *pace, int step, int steps,
            GError **error)
{
  UnsootCall *call = carry->call;
  gint64 ends_at = call->who.now;

  pace->share = (double) (step + 1) / steps;
  if (!unsoot_demo_carry (call->db, &call->who, run_id, pace, &ends_at, error))
    return FALSE;
  call->who.now = ends_at;
  g_autoptr (UnsootRun) run = unsoot_job_run_load (call->db, run_id, error);
  g_autofree char *entered = run != NULL ? entered_words (carry, run_id, error) : NULL;
  if (entered == NULL)
    return FALSE;
  g_autofree char *words
      = unsoot_step_words (unsoot_procedure_step (unsoot_run_procedure (run), step));
  unsoot_carry_tell (carry, carry->technician,
                     /* Translators: a step's number, how many there are, what it does, and the
                      * volume entered with it, if any */
                     g_strdup_printf (_ ("Step %d of %d: %s%s"), step + 1, steps, words, entered));
  return TRUE;
}

gboolean
unsoot_carry_run (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  UnsootDemoPace pace = { 0 };

  unsoot_carry_act (carry, carry->technician, 5 * MINUTE);
  if (!unsoot_job_precheck_rest (call->db, &call->who, carry->job_id, error))
    return FALSE;
  unsoot_carry_tell (carry, carry->technician,
                     g_strdup (_ ("Every check before the work is as it should be")));
  gint64 run_id = unsoot_job_run_begin (call->db, &call->who, carry->job_id, 0, error);
  if (run_id == 0 || !pick_lots (carry, &pace, error))
    return FALSE;
  unsoot_carry_tell (carry, carry->technician, g_strdup (_ ("The run begins")));
  g_autoptr (UnsootRun) run = unsoot_job_run_load (call->db, run_id, error);
  if (run == NULL)
    return FALSE;
  int steps = (int) unsoot_run_procedure (run)->steps->len;
  for (int step = 0; step < steps; step++)
    if (!carry_step (carry, run_id, &pace, step, steps, error))
      return FALSE;
  return TRUE;
}
