/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "planner-file.h"

#include <glib/gi18n-lib.h>

#include "adapter-row.h"
#include "bookings.h"
#include "free-times.h"
#include "machine-row.h"
#include "machines.h"
#include "role.h"
#include "services.h"
#include "staff.h"

static void
lane_free (gpointer data)
{
  UnsootPlannerLane *lane = data;

  g_free (lane->name);
  g_free (lane);
}

static void
booking_free (gpointer data)
{
  UnsootPlannerBooking *booking = data;

  g_clear_pointer (&booking->items, g_array_unref);
  g_free (booking);
}

void
unsoot_planner_file_free (UnsootPlannerFile *self)
{
  g_clear_pointer (&self->bookings, g_ptr_array_unref);
  g_clear_pointer (&self->lanes, g_ptr_array_unref);
  g_clear_pointer (&self->services, g_ptr_array_unref);
  g_clear_pointer (&self->free, g_array_unref);
  g_clear_pointer (&self->day, unsoot_day_free);
  g_free (self);
}

static void
add_lane (UnsootPlannerFile *self, UnsootLaneKind kind, gint64 id, const char *name)
{
  UnsootPlannerLane *lane = g_new0 (UnsootPlannerLane, 1);

  lane->kind = kind;
  lane->id = id;
  lane->name = g_strdup (name);
  g_ptr_array_add (self->lanes, lane);
}

static gboolean
load_bookings (UnsootDb *db, UnsootPlannerFile *self, GError **error)
{
  for (guint i = 0; i < self->day->blocks->len; i++)
    {
      const UnsootDayBlock *block = g_ptr_array_index (self->day->blocks, i);
      g_autoptr (UnsootBookingRow) row
          = unsoot_rows_get (db, &unsoot_booking_row_type, block->booking_id, error);
      UnsootPlannerBooking *booking;

      if (row == NULL)
        return FALSE;
      booking = g_new0 (UnsootPlannerBooking, 1);
      g_ptr_array_add (self->bookings, booking);
      booking->block = block;
      booking->machine_id = row->machine_id;
      booking->technician_id = row->technician_id;
      booking->items = unsoot_booking_items (db, row->id, error);
      if (booking->items == NULL)
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_in_use (const UnsootPlannerFile *self, UnsootLaneKind kind, gint64 id)
{
  const UnsootPlannerLane lane = { .kind = kind, .id = id };

  for (guint i = 0; i < self->bookings->len; i++)
    if (unsoot_planner_holds (g_ptr_array_index (self->bookings, i), &lane))
      return TRUE;
  return FALSE;
}

static void
add_bays (UnsootPlannerFile *self)
{
  for (guint i = 0; i < self->day->bays->len; i++)
    {
      const UnsootBayRow *bay = g_ptr_array_index (self->day->bays, i);
      if (bay->active || is_in_use (self, UNSOOT_LANE_BAY, bay->id))
        add_lane (self, UNSOOT_LANE_BAY, bay->id, bay->name);
    }
  if (is_in_use (self, UNSOOT_LANE_BAY, 0))
    add_lane (self, UNSOOT_LANE_BAY, 0, _ ("No bay"));
}

static gboolean
add_machines (UnsootDb *db, UnsootPlannerFile *self, GError **error)
{
  g_autoptr (GPtrArray) machines = unsoot_machine_list (db, error);

  for (guint i = 0; machines != NULL && i < machines->len; i++)
    {
      const UnsootMachineRow *machine = g_ptr_array_index (machines, i);
      if (machine->active || is_in_use (self, UNSOOT_LANE_MACHINE, machine->id))
        add_lane (self, UNSOOT_LANE_MACHINE, machine->id, machine->name);
    }
  return machines != NULL;
}

static gboolean
add_technicians (UnsootDb *db, UnsootPlannerFile *self, GError **error)
{
  g_autoptr (GPtrArray) staff = unsoot_staff_list (db, error);

  for (guint i = 0; staff != NULL && i < staff->len; i++)
    {
      const UnsootStaffRow *person = g_ptr_array_index (staff, i);
      UnsootRole role;
      const gboolean runs = person->active && unsoot_role_find (person->role, &role)
                            && (role == UNSOOT_ROLE_TECHNICIAN || role == UNSOOT_ROLE_LEAD);
      if (runs || is_in_use (self, UNSOOT_LANE_TECHNICIAN, person->id))
        add_lane (self, UNSOOT_LANE_TECHNICIAN, person->id, person->name);
    }
  return staff != NULL;
}

static gboolean
has_lane (const UnsootPlannerFile *self, UnsootLaneKind kind, gint64 id)
{
  for (guint i = 0; i < self->lanes->len; i++)
    {
      const UnsootPlannerLane *lane = g_ptr_array_index (self->lanes, i);
      if (lane->kind == kind && lane->id == id)
        return TRUE;
    }
  return FALSE;
}

/* Only those that the day holds: a shop has many. */
static gboolean
add_adapters (UnsootDb *db, UnsootPlannerFile *self, GError **error)
{
  for (guint i = 0; i < self->bookings->len; i++)
    {
      const UnsootPlannerBooking *booking = g_ptr_array_index (self->bookings, i);
      for (guint j = 0; j < booking->items->len; j++)
        {
          const gint64 id = g_array_index (booking->items, gint64, j);
          g_autoptr (UnsootAdapterItemRow) item = NULL;
          if (has_lane (self, UNSOOT_LANE_ADAPTER, id))
            continue;
          item = unsoot_rows_get (db, &unsoot_adapter_item_row_type, id, error);
          if (item == NULL)
            return FALSE;
          add_lane (self, UNSOOT_LANE_ADAPTER, id, item->label);
        }
    }
  return TRUE;
}

static gboolean
load_services (UnsootDb *db, UnsootPlannerFile *self, GError **error)
{
  self->services = unsoot_service_list (db, error);
  for (guint i = 0; self->services != NULL && i < self->services->len;)
    {
      const UnsootServiceRow *service = g_ptr_array_index (self->services, i);
      if (service->active)
        i++;
      else
        g_ptr_array_remove_index (self->services, i);
    }
  return self->services != NULL;
}

/* Times that touch are one stretch: any start within it, less the service's length, is free. */
static void
add_free (GArray *free, gint64 bay_id, const GPtrArray *times)
{
  for (guint i = 0; i < times->len; i++)
    {
      const UnsootFreeTime *time = g_ptr_array_index (times, i);
      UnsootPlannerFree *last
          = free->len > 0 ? &g_array_index (free, UnsootPlannerFree, free->len - 1) : NULL;
      const UnsootPlannerFree next = { bay_id, time->starts_at, time->ends_at };

      if (last != NULL && last->bay_id == bay_id && time->starts_at <= last->to)
        last->to = MAX (last->to, time->ends_at);
      else
        g_array_append_val (free, next);
    }
}

static gboolean
load_free (UnsootDb *db, UnsootPlannerFile *self, gint64 service_id, gint64 now, GError **error)
{
  g_autoptr (UnsootVehicleRow) any = unsoot_vehicle_row_new ();
  const gint64 from = MAX (self->day->starts_at, now);

  for (guint i = 0; i < self->day->bays->len; i++)
    {
      const UnsootBayRow *bay = g_ptr_array_index (self->day->bays, i);
      const UnsootFreeTimeAsk ask
          = { .vehicle = any, .service_id = service_id, .bay_id = bay->id, .days = 1 };
      g_autoptr (GPtrArray) days = NULL;

      if (!bay->active || from >= self->day->ends_at)
        continue;
      days = unsoot_free_days (db, &ask, from, error);
      if (days == NULL)
        return FALSE;
      for (guint j = 0; j < days->len; j++)
        {
          const UnsootFreeDay *day = g_ptr_array_index (days, j);
          if (g_strcmp0 (day->day, self->day->date) == 0)
            add_free (self->free, bay->id, day->times);
        }
    }
  return TRUE;
}

UnsootPlannerFile *
unsoot_planner_file_load (UnsootDb *db, const char *date, gint64 service_id, gint64 now,
                          GError **error)
{
  g_autoptr (UnsootPlannerFile) self = g_new0 (UnsootPlannerFile, 1);

  self->bookings = g_ptr_array_new_with_free_func (booking_free);
  self->lanes = g_ptr_array_new_with_free_func (lane_free);
  self->free = g_array_new (FALSE, FALSE, sizeof (UnsootPlannerFree));
  self->day = unsoot_day_load (db, date, now, error);
  if (self->day == NULL || !load_bookings (db, self, error) || !load_services (db, self, error))
    return NULL;
  add_bays (self);
  if (!add_machines (db, self, error) || !add_technicians (db, self, error)
      || !add_adapters (db, self, error)
      || (service_id != 0 && !load_free (db, self, service_id, now, error)))
    return NULL;
  return g_steal_pointer (&self);
}

gboolean
unsoot_planner_holds (const UnsootPlannerBooking *booking, const UnsootPlannerLane *lane)
{
  switch (lane->kind)
    {
    case UNSOOT_LANE_BAY:
      return booking->block->bay_id == lane->id;
    case UNSOOT_LANE_MACHINE:
      return booking->machine_id == lane->id;
    case UNSOOT_LANE_TECHNICIAN:
      return booking->technician_id == lane->id;
    case UNSOOT_LANE_ADAPTER:
      for (guint i = 0; i < booking->items->len; i++)
        if (g_array_index (booking->items, gint64, i) == lane->id)
          return TRUE;
      return FALSE;
    }
  g_return_val_if_reached (FALSE);
}
