/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-file.h"

#include "bookings.h"
#include "services.h"
#include "shops.h"
#include "staff.h"

void
unsoot_prefs_file_free (UnsootPrefsFile *self)
{
  g_clear_pointer (&self->shop, unsoot_shop_row_free);
  g_clear_pointer (&self->hours, g_ptr_array_unref);
  g_clear_pointer (&self->holidays, g_ptr_array_unref);
  g_clear_pointer (&self->bays, g_ptr_array_unref);
  g_clear_pointer (&self->services, g_ptr_array_unref);
  g_clear_pointer (&self->dose_rules, g_ptr_array_unref);
  g_clear_pointer (&self->tax_rules, g_ptr_array_unref);
  g_clear_pointer (&self->staff, g_ptr_array_unref);
  g_free (self);
}

UnsootPrefsFile *
unsoot_prefs_file_load (UnsootDb *db, GError **error)
{
  g_autoptr (UnsootPrefsFile) self = g_new0 (UnsootPrefsFile, 1);

  if ((self->shop = unsoot_shop_load (db, error)) == NULL
      || (self->hours = unsoot_open_hours_list (db, error)) == NULL
      || (self->holidays = unsoot_holiday_list (db, error)) == NULL
      || (self->bays = unsoot_bay_list (db, error)) == NULL
      || (self->services = unsoot_service_list (db, error)) == NULL
      || (self->dose_rules = unsoot_dose_rule_list (db, error)) == NULL
      || (self->tax_rules = unsoot_tax_rule_list (db, error)) == NULL
      || (self->staff = unsoot_staff_list (db, error)) == NULL)
    return NULL;
  return g_steal_pointer (&self);
}
