/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "prefs-file.h"

#include "bookings.h"
#include "families.h"
#include "fluids.h"
#include "machines.h"
#include "procedures.h"
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
  g_clear_pointer (&self->machines, g_ptr_array_unref);
  g_clear_pointer (&self->tanks, g_ptr_array_unref);
  g_clear_pointer (&self->fluids, g_ptr_array_unref);
  g_clear_pointer (&self->suppliers, g_ptr_array_unref);
  g_clear_pointer (&self->families, g_ptr_array_unref);
  g_clear_pointer (&self->procedures, g_ptr_array_unref);
  g_free (self);
}

static gboolean
load_procedures (UnsootDb *db, UnsootPrefsFile *self, GError **error)
{
  self->procedures = g_ptr_array_new_with_free_func ((GDestroyNotify) unsoot_procedure_row_free);
  for (guint i = 0; i < self->families->len; i++)
    {
      const UnsootFamilyRow *family = g_ptr_array_index (self->families, i);
      g_autoptr (GPtrArray) versions = unsoot_procedure_list (db, family->id, error);

      if (versions == NULL)
        return FALSE;
      for (guint k = 0; k < versions->len; k++)
        {
          const UnsootProcedureRow *version = g_ptr_array_index (versions, k);
          if (g_strcmp0 (version->state, "in-use") == 0)
            g_ptr_array_add (self->procedures,
                             unsoot_record_copy (&unsoot_procedure_row_type, version));
        }
    }
  return TRUE;
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
      || (self->staff = unsoot_staff_list (db, error)) == NULL
      || (self->machines = unsoot_machine_list (db, error)) == NULL
      || (self->tanks = unsoot_tank_list (db, error)) == NULL
      || (self->fluids = unsoot_fluid_list (db, error)) == NULL
      || (self->suppliers = unsoot_supplier_list (db, error)) == NULL
      || (self->families = unsoot_family_list (db, error)) == NULL
      || !load_procedures (db, self, error))
    return NULL;
  return g_steal_pointer (&self);
}
