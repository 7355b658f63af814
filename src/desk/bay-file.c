/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bay-file.h"

#include "path.h"
#include "shops.h"

static void
machine_free (gpointer data)
{
  UnsootBayMachine *machine = data;

  unsoot_machine_row_free (machine->row);
  g_ptr_array_unref (machine->tanks);
  g_free (machine);
}

void
unsoot_bay_file_free (UnsootBayFile *file)
{
  if (file == NULL)
    return;
  g_clear_pointer (&file->view, unsoot_job_view_file_unref);
  unsoot_run_free (file->run);
  for (int side = UNSOOT_SIDE_FUEL; side < UNSOOT_SIDES; side++)
    g_clear_pointer (&file->lots[side], g_ptr_array_unref);
  g_clear_pointer (&file->machines, g_ptr_array_unref);
  g_free (file);
}

static gboolean
read_lots (UnsootBayFile *file, UnsootDb *db, UnsootSide side, const UnsootFluidRow *fluid,
           const char *today, GError **error)
{
  if (fluid != NULL)
    file->lots[side] = unsoot_lot_list (db, fluid->id, today, error);
  return fluid == NULL || file->lots[side] != NULL;
}

static gboolean
read_events (UnsootBayFile *file)
{
  const GPtrArray *events = file->view->file->run_events;

  for (guint i = 0; i < events->len; i++)
    {
      const UnsootRunEventRow *event = g_ptr_array_index (events, i);
      if (event->happening != NULL)
        unsoot_happening_from_slug (event->happening, &file->happening);
      file->last_at = event->at;
    }
  if (events->len == 0)
    return TRUE;
  return unsoot_run_event_from_slug (
      ((const UnsootRunEventRow *) g_ptr_array_index (events, events->len - 1))->kind, &file->last);
}

static gboolean
read_run (UnsootBayFile *file, UnsootDb *db, gint64 now, GError **error)
{
  const UnsootJobFile *job = file->view->file;
  g_autofree char *today = unsoot_shop_date (job->shop, now);

  file->run_id = job->run->id;
  file->run = unsoot_job_run_load (db, file->run_id, error);
  return file->run != NULL && read_events (file)
         && read_lots (file, db, UNSOOT_SIDE_FUEL, job->fuel_fluid, today, error)
         && read_lots (file, db, UNSOOT_SIDE_INTAKE, job->intake_fluid, today, error);
}

static gboolean
is_busy (const GPtrArray *runs, gint64 machine_id)
{
  for (guint i = 0; i < runs->len; i++)
    if (((const UnsootRunRow *) g_ptr_array_index (runs, i))->machine_id == machine_id)
      return TRUE;
  return FALSE;
}

static gboolean
read_machines (UnsootBayFile *file, UnsootDb *db, GError **error)
{
  g_autoptr (GPtrArray) rows = unsoot_machine_list (db, error);
  g_autoptr (GPtrArray) runs = rows != NULL ? unsoot_job_run_list (db, error) : NULL;

  for (guint i = 0; runs != NULL && i < rows->len; i++)
    {
      const UnsootMachineRow *row = g_ptr_array_index (rows, i);
      GPtrArray *tanks = row->active ? unsoot_machine_tanks (db, row->id, error) : NULL;
      UnsootBayMachine *machine;

      if (!row->active)
        continue;
      if (tanks == NULL)
        return FALSE;
      machine = g_new0 (UnsootBayMachine, 1);
      machine->row = unsoot_record_copy (&unsoot_machine_row_type, row);
      machine->tanks = tanks;
      machine->busy = is_busy (runs, row->id);
      g_ptr_array_add (file->machines, machine);
    }
  return runs != NULL;
}

UnsootBayFile *
unsoot_bay_file_load (UnsootDb *db, gint64 job_id, gint64 now, GError **error)
{
  g_autoptr (UnsootBayFile) file = g_new0 (UnsootBayFile, 1);

  file->machines = g_ptr_array_new_with_free_func (machine_free);
  file->view = unsoot_job_view_file_load (db, job_id, now, error);
  if (file->view == NULL)
    return NULL;
  if (file->view->file->run != NULL ? !read_run (file, db, now, error)
                                    : !read_machines (file, db, error))
    return NULL;
  return g_steal_pointer (&file);
}

gboolean
unsoot_bay_file_goes_on (const UnsootBayFile *file)
{
  if (file->run == NULL)
    return FALSE;
  switch (unsoot_run_state (file->run))
    {
    case UNSOOT_RUN_STATE_READY:
    case UNSOOT_RUN_STATE_RUNNING:
    case UNSOOT_RUN_STATE_HALTED:
    case UNSOOT_RUN_STATE_COMPLETE:
      return TRUE;
    case UNSOOT_RUN_STATE_SIGNED:
    case UNSOOT_RUN_STATE_RELEASED:
      return FALSE;
    }
  g_return_val_if_reached (FALSE);
}

gboolean
unsoot_bay_file_may_begin (const UnsootBayFile *file)
{
  const char *status = file->view->file->job->status;

  return file->run == NULL && g_strcmp0 (status, unsoot_job_status_slug (UNSOOT_JOB_ARRIVED)) == 0;
}
