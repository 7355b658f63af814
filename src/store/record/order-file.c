/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "order-file.h"

void
unsoot_order_file_free (UnsootOrderFile *file)
{
  if (file == NULL)
    return;
  g_clear_pointer (&file->shop, unsoot_shop_row_free);
  g_clear_pointer (&file->supplier, unsoot_supplier_row_free);
  g_clear_pointer (&file->fluid, unsoot_fluid_row_free);
  g_clear_pointer (&file->order, unsoot_supply_order_row_free);
  g_free (file->date);
  g_free (file->expected_on);
  g_free (file->cancelled);
  g_free (file->ordered_by);
  g_free (file);
}
