/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job.h"

#include "bookings.h"
#include "demo-run.h"
#include "finishes.h"
#include "invoices.h"
#include "job-readings.h"
#include "jobs.h"
#include "photos.h"
#include "pictures.h"
#include "prechecks.h"
#include "quotes.h"
#include "shops.h"
#include "stocks.h"

#include <math.h>

/* Days of usual driving more or less than the calendar says: slack times and busy ones. The slope
 * is gentle, so a meter never runs backwards. */
static double
season (const UnsootDemoVehicle *vehicle, double days)
{
  return 12 * sin (days / 40 + vehicle->miles_a_day);
}

double
unsoot_demo_meter (const UnsootDemoVehicle *vehicle, gint64 at)
{
  double days = (double) (at - vehicle->read_at) / UNSOOT_DEMO_DAY;

  days += season (vehicle, days) - season (vehicle, 0);
  return floor (vehicle->odometer_mi + days * vehicle->miles_a_day);
}

int
unsoot_demo_service_for (const UnsootDemoVehicle *vehicle)
{
  return vehicle->model->family == 'e' ? 1 : vehicle->model->family == 'c' ? 2 : 0;
}

/* The fluid of a side by how often the shop takes it. */
static gint64
choose_fluid (UnsootDemo *demo, const char *side)
{
  double chance = g_rand_double (demo->random);
  gint64 chosen = 0;

  for (gsize i = 0; i < unsoot_demo_n_fluids; i++)
    if (g_str_equal (unsoot_demo_fluids[i].side, side))
      {
        chosen = demo->fluids[i];
        chance -= unsoot_demo_fluids[i].share;
        if (chance <= 0.0)
          break;
      }
  return chosen;
}

gint64
unsoot_demo_quote (UnsootDemo *demo, const UnsootDemoPlan *plan, GError **error)
{
  UnsootActing who
      = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR, plan->starts_at - plan->quoted_before);
  g_autofree char *po = NULL;
  UnsootQuoteWish wish = { .vehicle_id = plan->vehicle->id,
                           .service_id = demo->services[plan->service],
                           .fuel_fluid_id = choose_fluid (demo, "fuel"),
                           .intake_fluid_id = choose_fluid (demo, "intake"),
                           .wanted_at = plan->starts_at,
                           .comeback_of = plan->comeback_of,
                           .complaint = plan->complaint };

  if (plan->vehicle->fleet)
    wish.po_number = po
        = g_strdup_printf ("PO-%05d", g_rand_int_range (demo->random, 20000, 30000));
  return unsoot_job_quote (demo->db, &who, &wish, error);
}

gboolean
unsoot_demo_authorise (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, GError **error)
{
  static const char *const ways[] = { "phone", "email", "in-person", "text" };
  UnsootActing who = unsoot_demo_as (
      demo, UNSOOT_DEMO_ADVISOR, plan->starts_at - plan->quoted_before + 45 * UNSOOT_DEMO_MINUTE);

  return unsoot_job_authorise (demo->db, &who, job_id, plan->vehicle->contact,
                               ways[g_rand_int_range (demo->random, 0, 4)], 0, NULL, NULL, error);
}

gboolean
unsoot_demo_book (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, GError **error)
{
  UnsootActing who = unsoot_demo_as (
      demo, UNSOOT_DEMO_ADVISOR, plan->starts_at - plan->quoted_before + 50 * UNSOOT_DEMO_MINUTE);
  UnsootBookingWish wish = { .job_id = job_id,
                             .bay_id = demo->bays[plan->bay],
                             .machine_id = demo->machines[plan->machine],
                             .technician_id = demo->staff[plan->technician],
                             .starts_at = plan->starts_at };

  return unsoot_job_book (demo->db, &who, &wish, error) != 0;
}

gboolean
unsoot_demo_arrive (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, GError **error)
{
  gint64 at = plan->starts_at - (plan->wait > 0 ? plan->wait : 12 * UNSOOT_DEMO_MINUTE);
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR, at);
  double shown = unsoot_demo_meter (plan->vehicle, at);
  UnsootArrival arrival = { .odometer = plan->vehicle->hours ? (double) NAN : shown,
                            .odometer_unit = "mi",
                            .hours = plan->vehicle->hours ? shown : (double) NAN,
                            .codes = plan->codes };

  return unsoot_job_arrive (demo->db, &who, job_id, &arrival, error);
}

/* Soot costs an engine some of everything, and cleaning gives most of it back. */
typedef struct
{
  const char *kind;
  const char *unit;
  const char *instrument;
  double clean; /* as typed */
  double soot;  /* added by soot: before is clean + soot */
  double spread;
  int decimals;
  double rpm;
  const char *egr;
  const char *sides; /* the services that it says something of */
} Reading;

static const Reading readings[] = {
  { "air-idle", "g/s", "scan tool", 15.2, -2.6, 0.4, 1, 700, "shut", "both intake" },
  { "boost", "psi", "scan tool", 24.5, -3.1, 0.5, 1, 2200, "regulated", "both intake" },
  { "egr-error", "%", "scan tool", 2.0, 9.0, 1.5, 1, 1500, "regulated", "both intake" },
  { "opacity", "%", "opacity meter", 9.0, 14.0, 2.5, 1, 2200, "regulated", "both fuel" },
  { "return-flow", "L/h", "graduate", 3.7, 1.3, 0.4, 2, 700, "regulated", "both fuel" },
  { "idle-scatter", "rpm", "scan tool", 6.0, 15.0, 3.0, 0, 700, "regulated", "both fuel" },
};

static gboolean
take_reading (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, const Reading *from,
              gboolean after, gint64 at, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, plan->technician, at);
  g_autoptr (UnsootReadingRow) row = unsoot_reading_row_new ();
  double left = after ? 0.18 : 1.0;
  double value = from->clean + from->soot * left
                 + from->spread * g_rand_double_range (demo->random, -0.5, 0.5);

  row->job_id = job_id;
  row->stage = g_strdup (after ? "after" : "before");
  row->kind = g_strdup (from->kind);
  row->typed = g_strdup_printf ("%.*f", from->decimals, value);
  row->unit = g_strdup (from->unit);
  row->instrument = g_strdup (from->instrument);
  row->rpm = from->rpm;
  row->coolant_c = 86.0 + g_rand_double_range (demo->random, -2.0, 2.0);
  row->egr_state = g_strdup (from->egr);
  row->load_percent = g_str_equal (from->kind, "boost") ? 92.0 : 14.0;
  row->barometer_pa = 100600.0;
  row->ambient_c = 17.0;
  return unsoot_reading_add (demo->db, &who, row, error);
}

static gboolean
take_readings (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, gboolean after,
               gint64 at, GError **error)
{
  const char *sides = unsoot_demo_services[plan->service].sides;

  for (gsize i = 0; i < G_N_ELEMENTS (readings); i++)
    if (strstr (readings[i].sides, sides) != NULL)
      if (!take_reading (demo, plan, job_id, &readings[i], after, at + 40 * (gint64) i, error))
        return FALSE;
  return TRUE;
}

static gboolean
take_picture (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, gboolean after,
              gint64 at, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, plan->technician, at);
  g_autoptr (UnsootPhotoRow) photo = unsoot_photo_row_new ();
  int width = 0, height = 0;

  if (plan->port == 0)
    return TRUE;
  photo->jpeg = unsoot_demo_picture (after ? 0.12 : 0.9, plan->port, &width, &height, error);
  if (photo->jpeg == NULL)
    return FALSE;
  photo->job_id = job_id;
  photo->stage = g_strdup (after ? "after" : "before");
  photo->angle = g_strdup ("Port of cylinder 1");
  photo->width = width;
  photo->height = height;
  return unsoot_photo_add (demo->db, &who, photo, error);
}

/* A lot for each side's dose, first to expire first; bought in the day before where the
 * shelf is low. */
static gboolean
choose_lot (UnsootDemo *demo, gint64 fluid_id, gint64 ml, gint64 at, gint64 *lot_id, GError **error)
{
  g_autoptr (UnsootShopRow) shop = unsoot_shop_load (demo->db, error);
  if (shop == NULL)
    return FALSE;
  g_autofree char *date = unsoot_shop_date (shop, at);
  g_autoptr (UnsootLotRow) lot = unsoot_lot_pick (demo->db, fluid_id, ml, date, error);

  if (lot == NULL)
    return FALSE;
  *lot_id = lot->id;
  return TRUE;
}

static gboolean
side_fluid (UnsootDemo *demo, gint64 job_id, const char *side, gint64 *fluid_id, GError **error)
{
  return unsoot_db_int (demo->db, fluid_id, error,
                        "SELECT COALESCE (MIN (l.fluid_id), 0) FROM job_lines l "
                        "JOIN fluids f ON f.id = l.fluid_id WHERE l.job_id = $1 AND f.side = $2",
                        unsoot_int (job_id), unsoot_text (side));
}

static gboolean
choose_lots (UnsootDemo *demo, gint64 job_id, gint64 at, UnsootDemoPace *pace, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_job_load (demo->db, job_id, error);
  gint64 fluid_id = 0;

  if (job == NULL)
    return FALSE;
  if (job->fuel_dose_ml > 0
      && (!side_fluid (demo, job_id, "fuel", &fluid_id, error)
          || !choose_lot (demo, fluid_id, job->fuel_dose_ml, at, &pace->lot_id[UNSOOT_SIDE_FUEL],
                          error)))
    return FALSE;
  return job->intake_dose_ml <= 0
         || (side_fluid (demo, job_id, "intake", &fluid_id, error)
             && choose_lot (demo, fluid_id, job->intake_dose_ml, at,
                            &pace->lot_id[UNSOOT_SIDE_INTAKE], error));
}

gint64
unsoot_demo_run (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, double share,
                 gint64 ends_by, gint64 *ends_at, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, plan->technician, plan->starts_at);
  UnsootDemoPace pace = { .share = share, .ends_by = ends_by, .random = demo->random };

  gint64 before = plan->starts_at - 9 * UNSOOT_DEMO_MINUTE;

  if (!take_readings (demo, plan, job_id, FALSE, before, error)
      || !take_picture (demo, plan, job_id, FALSE, before + 300, error)
      || !choose_lots (demo, job_id, plan->starts_at, &pace, error))
    return 0;
  UnsootActing looks = { who.staff_id, plan->starts_at };
  if (!unsoot_job_precheck_rest (demo->db, &looks, job_id, error))
    return 0;
  gint64 run_id = unsoot_job_run_begin (demo->db, &who, job_id, 0, error);
  if (run_id == 0 || !unsoot_demo_carry (demo->db, &who, run_id, &pace, ends_at, error))
    return 0;
  return run_id;
}

gboolean
unsoot_demo_finish (UnsootDemo *demo, const UnsootDemoPlan *plan, gint64 job_id, gint64 at,
                    GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, plan->technician, at + 8 * UNSOOT_DEMO_MINUTE);

  return take_readings (demo, plan, job_id, TRUE, at + UNSOOT_DEMO_MINUTE, error)
         && take_picture (demo, plan, job_id, TRUE, at + 6 * UNSOOT_DEMO_MINUTE, error)
         && unsoot_job_finish (demo->db, &who, job_id, unsoot_demo_staff[plan->technician].name,
                               error);
}

gboolean
unsoot_demo_bill (UnsootDemo *demo, gint64 job_id, gint64 at, gint64 paid_at, const char *method,
                  GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR, at);
  gint64 invoice_id = unsoot_job_invoice (demo->db, &who, job_id, error);
  gint64 open = 0;

  if (invoice_id == 0)
    return FALSE;
  if (paid_at == 0)
    return TRUE;
  who.now = paid_at;
  return unsoot_invoice_open_minor (demo->db, invoice_id, &open, error)
         && unsoot_invoice_pay (demo->db, &who, invoice_id, open, method, NULL, NULL, error) != 0;
}
