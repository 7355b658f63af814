/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fluid-file.h"

#include <glib/gi18n-lib.h>

#include "fluids.h"
#include "shops.h"
#include "stock-picture.h"

enum
{
  USES_SHOWN = 12,
  ORDERS_SHOWN = 6,
  DAY_SECONDS = 86400
};

void
unsoot_fluid_file_free (UnsootFluidFile *file)
{
  if (file == NULL)
    return;
  unsoot_fluid_supply_free (file->supply);
  g_clear_pointer (&file->lots, g_ptr_array_unref);
  g_clear_pointer (&file->containers, g_ptr_array_unref);
  g_clear_pointer (&file->moves, g_ptr_array_unref);
  g_clear_pointer (&file->uses, g_ptr_array_unref);
  g_clear_pointer (&file->shorts, g_ptr_array_unref);
  g_clear_pointer (&file->suppliers, g_ptr_array_unref);
  g_clear_pointer (&file->past, g_ptr_array_unref);
  g_free (file);
}

static gboolean
load_containers (UnsootDb *db, UnsootFluidFile *file, GError **error)
{
  file->containers = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_container_row_free);
  for (guint i = 0; i < file->lots->len; i++)
    {
      const UnsootLotStock *stock = g_ptr_array_index (file->lots, i);
      g_autoptr (GPtrArray) open = unsoot_container_list (db, stock->lot->id, error);
      if (open == NULL)
        return FALSE;
      g_ptr_array_set_free_func (open, NULL);
      g_ptr_array_extend (file->containers, open, NULL, NULL);
    }
  return TRUE;
}

static gint64
first_fluid (UnsootDb *db, GError **error)
{
  g_autoptr (GPtrArray) fluids = unsoot_fluid_list (db, error);

  if (fluids == NULL)
    return 0;
  if (fluids->len == 0)
    {
      g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                           _ ("There is no fluid yet."));
      return 0;
    }
  return ((UnsootFluidRow *) g_ptr_array_index (fluids, 0))->id;
}

UnsootFluidFile *
unsoot_fluid_file_load (UnsootDb *db, gint64 id, const char *today, gint64 now, GError **error)
{
  g_autoptr (UnsootFluidFile) file = g_new0 (UnsootFluidFile, 1);
  const gint64 from = now - (gint64) UNSOOT_STOCK_DAYS_BACK * DAY_SECONDS;

  if (id == 0)
    id = first_fluid (db, error);
  file->supply = id != 0 ? unsoot_fluid_supply (db, id, now, error) : NULL;
  file->lots = file->supply != NULL ? unsoot_lot_list (db, id, today, error) : NULL;
  if (file->lots == NULL || !load_containers (db, file, error))
    return NULL;
  file->moves = unsoot_move_lines (db, id, 0, from, &file->before_ml, error);
  file->uses = file->moves != NULL ? unsoot_fluid_uses (db, id, USES_SHOWN, error) : NULL;
  file->shorts = file->uses != NULL ? unsoot_short_jobs (db, id, now, error) : NULL;
  file->suppliers = file->shorts != NULL ? unsoot_supplier_list (db, error) : NULL;
  file->past = file->suppliers != NULL ? unsoot_supply_orders (db, id, ORDERS_SHOWN, error) : NULL;
  return file->past != NULL ? g_steal_pointer (&file) : NULL;
}
