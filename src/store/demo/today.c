/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adapters.h"
#include "finishes.h"
#include "job.h"
#include "jobs.h"
#include "lot-row.h"
#include "quotes.h"
#include "stocks.h"

#include <math.h>

/* A busy day around the moment at which the shop is opened: work done, two vehicles in
 * their bays, one waiting, more to come, and what needs a hand. */

#define AT(hour, minute) ((hour) *3600 + (minute) *60)
#define AGO(minutes) (-60 * (minutes))

/* How far a job of today has come. */
typedef enum
{
  QUOTED,
  BOOKED,
  ARRIVED,
  RUNNING,
  DONE,
  BILLED,
  PAID,
} Progress;

typedef struct
{
  char family; /* of the vehicle to pick; '=' the vehicle whose last job was latest */
  gboolean fleet;
  int day;      /* from today */
  gint64 start; /* AT a time of that day, or so long AGO */
  int bay;
  int machine;
  int technician;
  Progress progress;
  double share; /* of the steps, where it is running */
  const char *complaint;
  const char *codes;
} Entry;

static const Entry entries[] = {
  { 'a', FALSE, 0, AT (7, 30), 0, 0, UNSOOT_DEMO_TECHNICIAN, PAID, 1.0, "Due by distance", NULL },
  { 'b', TRUE, 0, AT (7, 35), 1, 1, UNSOOT_DEMO_LEAD, DONE, 1.0, "Regenerates every second day",
    "P2463" },
  { 'c', TRUE, 0, AGO (50), 0, 0, UNSOOT_DEMO_TECHNICIAN, RUNNING, 0.55, "Lamp on, EGR flow",
    "P0401" },
  { 'e', FALSE, 0, AGO (20), 2, 2, UNSOOT_DEMO_TECHNICIAN_2, RUNNING, 0.3,
    "Long crank in the morning", NULL },
  { 'a', TRUE, 0, AGO (25), 1, 1, UNSOOT_DEMO_LEAD, ARRIVED, 0.0, "Less pull uphill", "P0299" },
  { 'd', TRUE, 0, AT (13, 0), 3, 2, UNSOOT_DEMO_TECHNICIAN_2, BOOKED, 0.0, "Smoke under load",
    NULL },
  { 'b', FALSE, 0, AT (13, 15), 1, 1, UNSOOT_DEMO_LEAD, BOOKED, 0.0, "Uses more fuel", NULL },
  { '=', FALSE, 0, AT (14, 0), 0, 0, UNSOOT_DEMO_TECHNICIAN, BOOKED, 0.0,
    "Rough idle again after the last cleaning", "P0300" },
  { 'd', TRUE, 1, AT (10, 0), 3, 0, UNSOOT_DEMO_TECHNICIAN, BOOKED, 0.0, "Due by hours", NULL },
  { 'c', FALSE, 1, AT (8, 0), 1, 1, UNSOOT_DEMO_LEAD, BOOKED, 0.0, "Due by distance", NULL },
  { 'a', TRUE, 1, AT (13, 0), 2, 2, UNSOOT_DEMO_TECHNICIAN_2, BOOKED, 0.0, "Due by distance",
    NULL },
  { 'b', FALSE, 2, AT (9, 0), 0, 0, UNSOOT_DEMO_TECHNICIAN, BOOKED, 0.0, "Lamp on", "P0404" },
  { 'a', FALSE, 6, AT (9, 0), 0, 0, UNSOOT_DEMO_TECHNICIAN, QUOTED, 0.0, "Rough idle", NULL },
  { 'b', TRUE, 7, AT (9, 0), 1, 1, UNSOOT_DEMO_LEAD, QUOTED, 0.0, "Regenerates too often", NULL },
  { 'c', FALSE, 8, AT (9, 0), 1, 1, UNSOOT_DEMO_LEAD, QUOTED, 0.0, "Smoke", NULL },
};

/* A vehicle of the family that nobody has taken yet today. */
static const UnsootDemoVehicle *
take_vehicle (UnsootDemo *demo, char family, gboolean fleet)
{
  for (guint i = demo->vehicles->len; i-- > 0;)
    {
      UnsootDemoVehicle *vehicle = demo->vehicles->pdata[i];

      if (!vehicle->taken && vehicle->fleet == fleet && vehicle->model->family == family)
        {
          vehicle->taken = TRUE;
          return vehicle;
        }
    }
  return NULL;
}

/* The vehicle whose last job is the latest that is done, and that job. */
static const UnsootDemoVehicle *
take_latest (UnsootDemo *demo, gint64 *job_id, GError **error)
{
  g_autoptr (UnsootJobRow) job = unsoot_rows_first (
      demo->db, &unsoot_job_row_type, error,
      "WHERE arrived_at < $1 AND status = 'paid' ORDER BY arrived_at DESC, id DESC",
      unsoot_int (demo->day_start - 3 * UNSOOT_DEMO_DAY));

  if (job == NULL)
    return NULL;
  for (guint i = 0; i < demo->vehicles->len; i++)
    {
      UnsootDemoVehicle *vehicle = demo->vehicles->pdata[i];

      if (vehicle->id == job->vehicle_id)
        {
          vehicle->taken = TRUE;
          *job_id = job->id;
          return vehicle;
        }
    }
  return NULL;
}

static gboolean
take_through (UnsootDemo *demo, const Entry *entry, const UnsootDemoPlan *plan, gint64 job_id,
              GError **error)
{
  gint64 ends_at = 0;
  gint64 ends_by = entry->progress == RUNNING ? demo->now - 40 : plan->starts_at + AT (1, 25);

  if (unsoot_demo_run (demo, plan, job_id, entry->share, ends_by, &ends_at, error) == 0)
    return FALSE;
  if (entry->progress == RUNNING)
    return TRUE;
  if (!unsoot_demo_finish (demo, plan, job_id, ends_at, error))
    return FALSE;
  gint64 billed = ends_at + 20 * UNSOOT_DEMO_MINUTE;
  return entry->progress == DONE
         || unsoot_demo_bill (demo, job_id, billed, entry->progress == PAID ? billed + 300 : 0,
                              "card", error);
}

/* Bookings begin on five minutes. */
static gint64
start_of (const UnsootDemo *demo, const Entry *entry)
{
  if (entry->start < 0)
    return (demo->now + entry->start) / 300 * 300;
  return demo->day_start + entry->day * UNSOOT_DEMO_DAY + entry->start;
}

static gboolean
make_entry (UnsootDemo *demo, const Entry *entry, GError **error)
{
  UnsootDemoPlan plan = { .starts_at = start_of (demo, entry),
                          .bay = entry->bay,
                          .machine = entry->machine,
                          .technician = entry->technician,
                          .complaint = entry->complaint,
                          .port = entry->progress >= RUNNING ? 1 : 0,
                          .codes = entry->codes };

  plan.vehicle = entry->family == '=' ? take_latest (demo, &plan.comeback_of, error)
                                      : take_vehicle (demo, entry->family, entry->fleet);
  if (plan.vehicle == NULL)
    plan.vehicle = take_vehicle (demo, 'a', FALSE);
  plan.service = unsoot_demo_service_for (plan.vehicle);
  plan.quoted_before = (entry->day + 4) * UNSOOT_DEMO_DAY + AT (1, 20);
  plan.wait = 5 * UNSOOT_DEMO_MINUTE;

  gint64 job_id = unsoot_demo_quote (demo, &plan, error);
  if (job_id == 0)
    return FALSE;
  if (entry->progress == QUOTED)
    return TRUE;
  return unsoot_demo_authorise (demo, &plan, job_id, error)
         && unsoot_demo_book (demo, &plan, job_id, error)
         && (entry->progress == BOOKED
             || (unsoot_demo_arrive (demo, &plan, job_id, error)
                 && (entry->progress == ARRIVED
                     || take_through (demo, entry, &plan, job_id, error))));
}

/* Yesterday's van waits for a part: it stands in the yard in pieces, with its tag. */
static gboolean
make_incomplete (UnsootDemo *demo, GError **error)
{
  UnsootDemoPlan plan = { .vehicle = take_vehicle (demo, 'c', TRUE),
                          .starts_at = demo->day_start - UNSOOT_DEMO_DAY + AT (14, 0),
                          .bay = 2,
                          .machine = 1,
                          .technician = UNSOOT_DEMO_TECHNICIAN_2,
                          .quoted_before = 4 * UNSOOT_DEMO_DAY,
                          .complaint = "Lamp on, EGR flow",
                          .codes = "P0401" };
  gint64 ends_at = 0;

  plan.service = unsoot_demo_service_for (plan.vehicle);
  gint64 job_id = unsoot_demo_quote (demo, &plan, error);
  if (job_id == 0 || !unsoot_demo_authorise (demo, &plan, job_id, error)
      || !unsoot_demo_book (demo, &plan, job_id, error)
      || !unsoot_demo_arrive (demo, &plan, job_id, error)
      || unsoot_demo_run (demo, &plan, job_id, 0.22, 0, &ends_at, error) == 0)
    return FALSE;
  UnsootActing who = unsoot_demo_as (demo, plan.technician, ends_at + 600);
  return unsoot_job_release (demo->db, &who, job_id, "Lio Ansgar",
                             "The flange is warped; a new one comes tomorrow", error);
}

static gboolean
lend (UnsootDemo *demo, const char *label, const char *to, int out_days, int due_days,
      GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_CLERK,
                                     demo->day_start - out_days * UNSOOT_DEMO_DAY + AT (16, 0));
  g_autoptr (UnsootLoanRow) loan = unsoot_loan_row_new ();

  if (!unsoot_db_int (demo->db, &loan->item_id, error,
                      "SELECT id FROM adapter_items WHERE label = $1", unsoot_text (label)))
    return FALSE;
  loan->to_kind = g_strdup ("shop");
  loan->to_name = g_strdup (to);
  loan->phone = g_strdup ("(270) 555-0103");
  loan->due_on = unsoot_demo_date (demo, due_days);
  return unsoot_adapter_lend (demo->db, &who, loan, error);
}

/* Leaves @ml free of a fluid: the rest was found missing at the last count. */
static gboolean
count_down (UnsootDemo *demo, int fluid, gint64 free_ml, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_CLERK, demo->day_start + AT (7, 35));
  g_autoptr (UnsootFluidStock) stock
      = unsoot_fluid_stock (demo->db, demo->fluids[fluid], demo->now, error);
  if (stock == NULL)
    return FALSE;
  gint64 excess = stock->free_ml - free_ml;
  g_autoptr (GPtrArray) lots = unsoot_lot_list (demo->db, demo->fluids[fluid], demo->today, error);
  if (lots == NULL)
    return FALSE;
  for (guint i = 0; i < lots->len && excess > 0; i++)
    {
      const UnsootLotStock *lot = lots->pdata[i];
      gint64 less = MIN (excess, lot->on_hand_ml);

      if (less > 0
          && !unsoot_stock_count (demo->db, &who, lot->lot->id, lot->on_hand_ml - less,
                                  "Monthly count", error))
        return FALSE;
      excess -= less;
    }
  return TRUE;
}

/* The lot of the third intake fluid goes off next week. */
static gboolean
near_expiry (UnsootDemo *demo, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_CLERK, demo->now - 200 * UNSOOT_DEMO_DAY);
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();

  lot->fluid_id = demo->fluids[4];
  lot->code = g_strdup ("60417");
  lot->received_on = unsoot_demo_date (demo, -200);
  lot->expires_on = unsoot_demo_date (demo, 9);
  lot->cost_minor_per_litre = 2420;
  return unsoot_stock_deliver (demo->db, &who, lot, 5000, error);
}

gboolean
unsoot_demo_make_today (UnsootDemo *demo, GError **error)
{
  if (!make_incomplete (demo, error) || !near_expiry (demo, error)
      || !lend (demo, "V-07/3", "Osier Garage", 8, -1, error)
      || !lend (demo, "F-03/2", "Ninebark Nursery", 20, -6, error)
      || !lend (demo, "F-11/3", "Tollgate Towing", 2, 5, error))
    return FALSE;
  for (gsize i = 0; i < G_N_ELEMENTS (entries); i++)
    if (!unsoot_demo_goes_on (demo, 0.9 + 0.1 * (double) i / G_N_ELEMENTS (entries), error)
        || !make_entry (demo, &entries[i], error))
      return FALSE;
  return count_down (demo, 3, -3000, error);
}
