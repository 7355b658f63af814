/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "order-papers.h"

#include "fluids.h"
#include "shops.h"
#include "staff-row.h"
#include "supply-orders.h"

UnsootOrderFile *
unsoot_order_file_load (UnsootDb *db, gint64 order_id, GError **error)
{
  g_autoptr (UnsootOrderFile) file = g_new0 (UnsootOrderFile, 1);
  g_autoptr (UnsootSupplyOrder) order = unsoot_supply_order_load (db, order_id, error);
  g_autoptr (UnsootStaffRow) staff = NULL;

  if (order == NULL || (file->shop = unsoot_shop_load (db, error)) == NULL
      || (file->fluid = unsoot_fluid_load (db, order->order->fluid_id, error)) == NULL)
    return NULL;
  if (order->order->staff_id != 0)
    {
      staff = unsoot_rows_get (db, &unsoot_staff_row_type, order->order->staff_id, error);
      if (staff == NULL)
        return NULL;
      file->ordered_by = g_strdup (staff->name);
    }
  file->supplier = g_steal_pointer (&order->supplier);
  file->order = g_steal_pointer (&order->order);
  file->expected_on = g_steal_pointer (&order->expected_on);
  file->cancelled = g_steal_pointer (&order->cancelled);
  file->date = unsoot_shop_date (file->shop, file->order->at);
  return g_steal_pointer (&file);
}
