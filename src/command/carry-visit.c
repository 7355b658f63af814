/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "carry-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "bookings.h"
#include "customers.h"
#include "job-readings.h"
#include "jobs.h"
#include "lists.h"
#include "machines.h"
#include "meters.h"
#include "quotes.h"
#include "reading.h"
#include "runs.h"
#include "services.h"
#include "vehicles.h"
#include "when.h"

#define MINUTE 60
#define HALF_HOUR (30 * MINUTE)
#define SLOTS_A_FORTNIGHT (14 * 48)
#define VEHICLES_LOOKED_AT 200
#define SINCE_LAST_TIME 150.0

static gboolean
is_over (const char *status)
{
  static const char *const over[] = { "done", "invoiced", "paid", "declined", "cancelled", NULL };

  return g_strv_contains (over, status);
}

static gboolean
has_open_job (UnsootCall *call, gint64 vehicle_id, gboolean *open, GError **error)
{
  g_autoptr (GPtrArray) jobs = unsoot_vehicle_jobs (call->db, vehicle_id, error);

  *open = FALSE;
  for (guint i = 0; jobs != NULL && i < jobs->len; i++)
    *open |= !is_over (((const UnsootJobRow *) jobs->pdata[i])->status);
  return jobs != NULL;
}

/* Whether the vehicle is free and nothing stands in the way of both sides. */
static gboolean
is_ready (UnsootCall *call, const UnsootQuoteWish *wish)
{
  gboolean open = FALSE;

  if (!has_open_job (call, wish->vehicle_id, &open, NULL) || open)
    return FALSE;
  g_autoptr (UnsootQuote) quote = unsoot_quote_preview (call->db, wish, call->who.now, NULL);
  return quote != NULL && quote->procedure != NULL && quote->warnings->len == 0
         && quote->fuel.ml > 0 && quote->intake.ml > 0;
}

static gboolean
choose_vehicle (UnsootCarry *carry, UnsootQuoteWish *wish, GError **error)
{
  const UnsootListPage page = { .limit = VEHICLES_LOOKED_AT };
  g_autoptr (GPtrArray) vehicles = unsoot_vehicle_page (carry->call->db, &page, 0, error);

  if (vehicles == NULL)
    return FALSE;
  for (guint i = 0; i < vehicles->len; i++)
    {
      const UnsootVehicleLine *listing = vehicles->pdata[i];

      wish->vehicle_id = listing->id;
      if (is_ready (carry->call, wish))
        {
          carry->vehicle_id = listing->id;
          return TRUE;
        }
    }
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                       _ ("No vehicle of the demo shop is free to be carried through."));
  return FALSE;
}

static gboolean
choose_service (UnsootCarry *carry, UnsootQuoteWish *wish, GError **error)
{
  g_autoptr (GPtrArray) services = unsoot_service_list (carry->call->db, error);

  for (guint i = 0; services != NULL && i < services->len; i++)
    {
      const UnsootServiceRow *service = services->pdata[i];

      if (service->active && g_strcmp0 (service->sides, "both") == 0)
        wish->service_id = service->id;
    }
  return services != NULL;
}

/* Who can give the word: the contact, or the customer. */
static gboolean
meet_customer (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  g_autoptr (UnsootVehicleRow) vehicle = unsoot_vehicle_load (call->db, carry->vehicle_id, error);
  g_autoptr (UnsootCustomerRow) customer
      = vehicle != NULL ? unsoot_customer_load (call->db, vehicle->customer_id, error) : NULL;

  if (customer == NULL)
    return FALSE;
  carry->contact = g_strdup (customer->contact != NULL ? customer->contact : customer->name);
  g_autofree char *title = unsoot_vehicle_title (vehicle);
  unsoot_carry_tell (carry, carry->advisor,
                     /* Translators: a customer, then a vehicle */
                     g_strdup_printf (_ ("%s asks for a quote: %s"), customer->name, title));
  return TRUE;
}

gboolean
unsoot_carry_quote (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  UnsootQuoteWish wish
      = { .complaint = _ ("Rough idle, less pull uphill"), .po_number = "PO-24170" };

  unsoot_carry_act (carry, carry->advisor, 0);
  if (!choose_service (carry, &wish, error) || !choose_vehicle (carry, &wish, error)
      || !meet_customer (carry, error))
    return FALSE;
  g_autoptr (UnsootQuote) quote = unsoot_quote_preview (call->db, &wish, call->who.now, error);
  carry->job_id = quote != NULL ? unsoot_job_quote (call->db, &call->who, &wish, error) : 0;
  if (carry->job_id == 0)
    return FALSE;
  g_autofree char *total = unsoot_call_money_words (call, quote->bill->with_tax);
  unsoot_carry_tell (carry, carry->advisor,
                     /* Translators: doses with their reasons, then the total */
                     g_strdup_printf (_ ("Estimate: fuel side %s, intake side %s, in all %s"),
                                      quote->fuel.reason, quote->intake.reason, total));
  return TRUE;
}

/* Where and by what the job can be done, leaving out what a run of today holds. */
typedef struct
{
  GArray *bays; /* gint64 */
  GArray *machines;
} Free;

static void
free_clear (Free *places)
{
  g_clear_pointer (&places->bays, g_array_unref);
  g_clear_pointer (&places->machines, g_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Free, free_clear)

static gboolean
add_free_bays (UnsootCall *call, GArray *free_bays, GError **error)
{
  g_autoptr (GPtrArray) bays = unsoot_bay_list (call->db, error);

  for (guint i = 0; bays != NULL && i < bays->len; i++)
    {
      const UnsootBayRow *bay = bays->pdata[i];
      g_autoptr (UnsootRunRow) run = unsoot_bay_run (call->db, bay->id, NULL);

      if (bay->active && run == NULL)
        g_array_append_val (free_bays, bay->id);
    }
  return bays != NULL;
}

static gboolean
machine_runs (GPtrArray *runs, gint64 machine_id)
{
  for (guint i = 0; i < runs->len; i++)
    if (((const UnsootRunRow *) runs->pdata[i])->machine_id == machine_id)
      return TRUE;
  return FALSE;
}

static gboolean
add_free_machines (UnsootCall *call, GArray *free_machines, GError **error)
{
  g_autoptr (GPtrArray) machines = unsoot_machine_list (call->db, error);
  g_autoptr (GPtrArray) runs = machines != NULL ? unsoot_job_run_list (call->db, error) : NULL;

  for (guint i = 0; runs != NULL && i < machines->len; i++)
    {
      const UnsootMachineRow *machine = machines->pdata[i];

      if (machine->active && !machine_runs (runs, machine->id))
        g_array_append_val (free_machines, machine->id);
    }
  return runs != NULL;
}

/* The first bay and cart that nobody objects to at that time. */
static gboolean
fits_at (UnsootCarry *carry, UnsootBookingWish *wish, const Free *places)
{
  for (guint bay = 0; bay < places->bays->len; bay++)
    for (guint machine = 0; machine < places->machines->len; machine++)
      {
        wish->bay_id = g_array_index (places->bays, gint64, bay);
        wish->machine_id = g_array_index (places->machines, gint64, machine);
        g_autoptr (GPtrArray) conflicts
            = unsoot_booking_conflicts (carry->call->db, wish, carry->call->who.now, NULL);
        if (conflicts != NULL && conflicts->len == 0)
          return TRUE;
      }
  return FALSE;
}

static gboolean
find_slot (UnsootCarry *carry, UnsootBookingWish *wish, GError **error)
{
  UnsootCall *call = carry->call;
  g_auto (Free) places = { g_array_new (FALSE, FALSE, sizeof (gint64)),
                           g_array_new (FALSE, FALSE, sizeof (gint64)) };

  if (!add_free_bays (call, places.bays, error)
      || !add_free_machines (call, places.machines, error))
    return FALSE;
  wish->starts_at = call->who.now - call->who.now % HALF_HOUR + 2 * HALF_HOUR;
  for (int i = 0; i < SLOTS_A_FORTNIGHT; i++, wish->starts_at += HALF_HOUR)
    if (fits_at (carry, wish, &places))
      return TRUE;
  g_set_error_literal (error, UNSOOT_STORE_ERROR, UNSOOT_STORE_ERROR_NOT_FOUND,
                       _ ("The demo shop has no free time within a fortnight."));
  return FALSE;
}

gboolean
unsoot_carry_book (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  UnsootBookingWish wish = { .job_id = carry->job_id, .technician_id = carry->technician->id };

  unsoot_carry_act (carry, carry->advisor, 5 * MINUTE);
  if (!find_slot (carry, &wish, error) || unsoot_job_book (call->db, &call->who, &wish, error) == 0)
    return FALSE;
  carry->starts_at = wish.starts_at;
  g_autofree char *when = unsoot_when_words (call->shop, wish.starts_at);
  unsoot_carry_tell (carry, carry->advisor,
                     /* Translators: a day and time, then a technician's name */
                     g_strdup_printf (_ ("Booked for %s with %s"), when, carry->technician->name));
  return TRUE;
}

/* What the meter that was read last may show today. */
static gboolean
read_meter (UnsootCarry *carry, UnsootArrival *arrival, GError **error)
{
  g_autoptr (GPtrArray) meters = unsoot_vehicle_meters (carry->call->db, carry->vehicle_id, error);

  if (meters == NULL)
    return FALSE;
  for (guint i = 0; i < meters->len; i++)
    {
      const UnsootMeterReadingRow *meter = meters->pdata[i];

      if (g_strcmp0 (meter->kind, "hours") == 0)
        arrival->hours = meter->typed + SINCE_LAST_TIME;
      else
        {
          arrival->odometer = meter->typed + SINCE_LAST_TIME;
          arrival->odometer_unit = g_strcmp0 (meter->unit, "km") == 0 ? "km" : "mi";
        }
    }
  return TRUE;
}

gboolean
unsoot_carry_arrive (UnsootCarry *carry, GError **error)
{
  UnsootCall *call = carry->call;
  UnsootArrival arrival = {
    .odometer = (double) NAN, .hours = (double) NAN, .odometer_unit = "mi", .codes = "P0299"
  };

  call->who.now = carry->starts_at - 15 * MINUTE;
  unsoot_carry_act (carry, carry->advisor, 0);
  if (!read_meter (carry, &arrival, error)
      || !unsoot_job_arrive (call->db, &call->who, carry->job_id, &arrival, error))
    return FALSE;
  unsoot_carry_tell (carry, carry->advisor, g_strdup (_ ("The vehicle is here")));
  return TRUE;
}

/* Invented values that soot would leave, and that a cleaning gives back. */
typedef struct
{
  UnsootReadingKind kind;
  const char *unit;
  const char *instrument;
  const char *before;
  const char *after;
} Reading;

static const Reading readings[] = {
  { UNSOOT_READING_OPACITY, "%", "opacity meter", "23.5", "10.0" },
  { UNSOOT_READING_AIR_IDLE, "g/s", "scan tool", "12.6", "15.1" },
  { UNSOOT_READING_IDLE_SCATTER, "rpm", "scan tool", "21", "8" },
};

static UnsootReadingRow *
new_reading (const UnsootCarry *carry, const Reading *from, gboolean after)
{
  UnsootReadingRow *row = unsoot_reading_row_new ();

  row->job_id = carry->job_id;
  row->stage = g_strdup (after ? "after" : "before");
  row->kind = g_strdup (unsoot_slug_of (unsoot_reading_kinds, (int) from->kind));
  row->typed = g_strdup (after ? from->after : from->before);
  row->unit = g_strdup (from->unit);
  row->instrument = g_strdup (from->instrument);
  row->rpm = 700.0;
  row->load_percent = 0.0;
  row->coolant_c = 86.0;
  row->egr_state = g_strdup ("shut");
  row->barometer_pa = 100600.0;
  row->ambient_c = 17.0;
  return row;
}

gboolean
unsoot_carry_readings (UnsootCarry *carry, gboolean after, GError **error)
{
  UnsootCall *call = carry->call;

  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    {
      g_autoptr (UnsootReadingRow) row = new_reading (carry, &readings[i], after);

      unsoot_carry_act (carry, carry->technician, MINUTE);
      if (!unsoot_reading_add (call->db, &call->who, row, error))
        return FALSE;
      unsoot_carry_tell (
          carry, carry->technician,
          /* Translators: a reading's name, value and unit */
          g_strdup_printf (after ? _ ("Measured after: %s %s %s") : _ ("Measured before: %s %s %s"),
                           unsoot_slug_words (unsoot_reading_kinds, (int) readings[i].kind),
                           row->typed, readings[i].unit));
    }
  return TRUE;
}
