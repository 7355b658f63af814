/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "vehicles.h"

#include <glib/gi18n-lib.h>

#include "deed.h"
#include "indexing.h"
#include "vin.h"

UnsootVehicleRow *
unsoot_vehicle_load (UnsootDb *db, gint64 id, GError **error)
{
  return unsoot_rows_get (db, &unsoot_vehicle_row_type, id, error);
}

GPtrArray *
unsoot_customer_vehicles (UnsootDb *db, gint64 customer_id, GError **error)
{
  return unsoot_rows_list (db, &unsoot_vehicle_row_type, error,
                           "WHERE customer_id = $1 AND active = 1"
                           " ORDER BY unit_number NULLS LAST, plate NULLS LAST, id",
                           unsoot_int (customer_id));
}

static void
add_word (GString *title, const char *between, const char *word)
{
  if (!unsoot_deed_blank (word))
    g_string_append_printf (title, "%s%s", title->len > 0 ? between : "", word);
}

static GString *
make_model_engine (const UnsootVehicleRow *vehicle)
{
  GString *title = g_string_new (NULL);

  add_word (title, " ", vehicle->make);
  add_word (title, " ", vehicle->model);
  add_word (title, " ", vehicle->engine);
  return title;
}

char *
unsoot_vehicle_title (const UnsootVehicleRow *vehicle)
{
  GString *title = make_model_engine (vehicle);

  if (!unsoot_deed_blank (vehicle->unit_number))
    {
      g_autofree char *unit = g_strdup_printf (_ ("unit %s"), vehicle->unit_number);
      add_word (title, " · ", unit);
    }
  if (!unsoot_deed_blank (vehicle->plate))
    {
      g_autofree char *plate = g_strdup_printf (_ ("plate %s"), vehicle->plate);
      add_word (title, " · ", plate);
    }
  if (title->len == 0)
    add_word (title, "", vehicle->vin);
  return g_string_free (title, FALSE);
}

char *
unsoot_vehicle_whole_title (const UnsootVehicleRow *vehicle)
{
  g_autofree char *title = unsoot_vehicle_title (vehicle);

  if (unsoot_deed_blank (vehicle->vin) || g_strcmp0 (title, vehicle->vin) == 0)
    return g_steal_pointer (&title);
  return g_strdup_printf (_ ("%s · VIN %s"), title, vehicle->vin);
}

char *
unsoot_vehicle_model_title (const UnsootVehicleRow *vehicle)
{
  g_autoptr (GString) title = make_model_engine (vehicle);

  return vehicle->year > 0 ? g_strdup_printf ("%" G_GINT64_FORMAT " %s", vehicle->year, title->str)
                           : g_strdup (title->str);
}

static gboolean
check_vehicle (UnsootDb *db, const UnsootVehicleRow *vehicle, GError **error)
{
  if (unsoot_deed_blank (vehicle->vin) && unsoot_deed_blank (vehicle->plate)
      && unsoot_deed_blank (vehicle->unit_number) && unsoot_deed_blank (vehicle->engine_serial))
    return unsoot_deed_fail (
        error, UNSOOT_STORE_ERROR_INVALID,
        _ ("Enter a VIN, a plate, a unit number or an engine serial: something has to tell this "
           "vehicle from others."));
  g_autoptr (UnsootVehicleRow) before
      = vehicle->id != 0 ? unsoot_vehicle_load (db, vehicle->id, error) : NULL;
  if (vehicle->id != 0 && before == NULL)
    return FALSE;
  if (before != NULL && before->customer_id != vehicle->customer_id)
    return unsoot_deed_fail (error, UNSOOT_STORE_ERROR_INVALID,
                             _ ("Whose vehicle it is changes by passing it on, not by an edit."));
  return TRUE;
}

/* What is odd about the VIN: its own check first, else another vehicle that has it. */
static gboolean
vin_warning (UnsootDb *db, const UnsootVehicleRow *vehicle, char **warning, GError **error)
{
  if (unsoot_deed_blank (vehicle->vin))
    return TRUE;
  g_autoptr (UnsootVinCheck) check = unsoot_vin_check (vehicle->vin);
  *warning = g_strdup (check->sentence);
  if (*warning != NULL)
    return TRUE;

  g_autoptr (GError) failed = NULL;
  g_autoptr (UnsootVehicleRow) other
      = unsoot_rows_maybe (db, &unsoot_vehicle_row_type, &failed,
                           "WHERE vin = $1 AND id <> $2 AND active = 1 ORDER BY id LIMIT 1",
                           unsoot_text (vehicle->vin), unsoot_int (vehicle->id));
  if (failed != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&failed));
      return FALSE;
    }
  if (other != NULL)
    {
      g_autofree char *title = unsoot_vehicle_title (other);
      *warning = g_strdup_printf (_ ("%s has the same VIN."), title);
    }
  return TRUE;
}

static void
tidy_vin (UnsootVehicleRow *vehicle)
{
  g_autofree char *vin = vehicle->vin != NULL ? unsoot_vin_normalise (vehicle->vin) : NULL;

  if (vin != NULL)
    {
      g_free (vehicle->vin);
      vehicle->vin = *vin != '\0' ? g_steal_pointer (&vin) : NULL;
    }
}

gboolean
unsoot_vehicle_save (UnsootDb *db, const UnsootActing *who, UnsootVehicleRow *vehicle,
                     char **warning, GError **error)
{
  g_autofree char *odd = NULL;

  tidy_vin (vehicle);
  if (!check_vehicle (db, vehicle, error) || !vin_warning (db, vehicle, &odd, error)
      || !unsoot_deed_save (db, who, UNSOOT_DEED_EDIT_VEHICLE, &unsoot_vehicle_row_type, vehicle,
                            unsoot_index_vehicle, error))
    return FALSE;
  if (warning != NULL)
    *warning = g_steal_pointer (&odd);
  return TRUE;
}

gboolean
unsoot_vehicle_pass_on (UnsootDb *db, const UnsootActing *who, gint64 vehicle_id,
                        gint64 customer_id, GError **error)
{
  g_autoptr (UnsootTransaction) deed = unsoot_deed_begin (db, who, UNSOOT_DEED_EDIT_VEHICLE, error);
  g_autoptr (UnsootVehicleRow) vehicle
      = deed != NULL ? unsoot_vehicle_load (db, vehicle_id, error) : NULL;
  if (vehicle == NULL)
    return FALSE;

  vehicle->customer_id = customer_id;
  return unsoot_deed_end (&deed,
                          unsoot_rows_update (db, &unsoot_vehicle_row_type, vehicle, who, error)
                              && unsoot_index_vehicle (db, vehicle_id, error),
                          error);
}
