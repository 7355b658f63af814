/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "job.h"
#include "jobs.h"
#include "stocks.h"

/* Fourteen months of work: every vehicle comes at its own interval, fleets more often. */

#define FIRST_DAY 420
#define VISITS_A_DAY 4
#define LITRES_KEPT 9000 /* mL of each fluid, below which a delivery comes */
#define LITRES_SENT 20000
#define PICTURED 6 /* of the latest visits there are pictures */

typedef struct
{
  gint64 at;
  guint vehicle;
} Visit;

static int
visit_compare (gconstpointer a, gconstpointer b)
{
  const Visit *left = a, *right = b;

  if (left->at != right->at)
    return left->at < right->at ? -1 : 1;
  return left->vehicle < right->vehicle ? -1 : left->vehicle > right->vehicle;
}

/* The first day from @day (counted back from today) that has room; 0 where none has. */
static int
day_with_room (int *taken, int day)
{
  while (day > 1 && taken[day] >= VISITS_A_DAY)
    day--;
  if (day <= 1)
    return 0;
  taken[day]++;
  return day;
}

/* Visits by time. */
static GArray *
plan_visits (UnsootDemo *demo)
{
  int taken[FIRST_DAY + 1] = { 0 };
  GArray *visits = g_array_new (FALSE, FALSE, sizeof (Visit));

  for (guint i = 0; i < demo->vehicles->len; i++)
    {
      const UnsootDemoVehicle *vehicle = demo->vehicles->pdata[i];
      int interval = vehicle->fleet ? g_rand_int_range (demo->random, 120, 190)
                                    : g_rand_int_range (demo->random, 170, 330);

      for (int day = FIRST_DAY - g_rand_int_range (demo->random, 0, interval); day > 1;
           day -= interval + g_rand_int_range (demo->random, -12, 13))
        {
          int free_day = day_with_room (taken, day);
          Visit visit = { demo->day_start - free_day * (gint64) UNSOOT_DEMO_DAY, i };
          if (free_day > 0)
            g_array_append_val (visits, visit);
        }
    }
  g_array_sort (visits, visit_compare);
  return visits;
}

static gboolean
deliver (UnsootDemo *demo, gint64 fluid_id, gint64 ml, gint64 at, int expires_in, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_CLERK, at);
  g_autoptr (UnsootLotRow) lot = unsoot_lot_row_new ();
  int days_ago = (int) ((demo->now - at) / UNSOOT_DEMO_DAY);

  lot->fluid_id = fluid_id;
  lot->code = g_strdup_printf ("%d", g_rand_int_range (demo->random, 61000, 98999));
  lot->received_on = unsoot_demo_date (demo, -days_ago);
  lot->expires_on = unsoot_demo_date (demo, expires_in - days_ago);
  lot->cost_minor_per_litre = 2300;
  return unsoot_stock_deliver (demo->db, &who, lot, ml, error);
}

static gboolean
keep_stocked (UnsootDemo *demo, gint64 at, GError **error)
{
  for (gsize i = 0; i < unsoot_demo_n_fluids; i++)
    {
      g_autoptr (UnsootFluidStock) stock
          = unsoot_fluid_stock (demo->db, demo->fluids[i], at, error);

      if (stock == NULL)
        return FALSE;
      if (stock->on_hand_ml - stock->unusable_ml < LITRES_KEPT
          && !deliver (demo, demo->fluids[i], LITRES_SENT, at, 540, error))
        return FALSE;
    }
  return TRUE;
}

/* What was said at the desk, and the codes that went with it. */
static const struct
{
  const char *complaint;
  const char *codes;
} complaints[] = {
  { "Less pull uphill than it had", "P0299" },
  { "Rough idle when cold", "P0300" },
  { "Uses more fuel than it did", NULL },
  { "Regenerates every second day", "P2463" },
  { "Smoke when pulling away", NULL },
  { "Lamp on, EGR flow", "P0401 P0404" },
  { "Due by distance", NULL },
  { "Long crank in the morning", "P0087" },
};

static UnsootDemoPlan
plan_for (UnsootDemo *demo, const UnsootDemoVehicle *vehicle, gint64 day, int nth)
{
  gsize said = (gsize) g_rand_int_range (demo->random, 0, G_N_ELEMENTS (complaints));

  return (UnsootDemoPlan){ .vehicle = vehicle,
                           .service = unsoot_demo_service_for (vehicle),
                           .starts_at = day + 8 * 3600 + nth * 7200,
                           .bay = nth % 3,
                           .machine = nth % 3,
                           .technician = UNSOOT_DEMO_LEAD + nth % 3,
                           .quoted_before
                           = (3 + g_rand_int_range (demo->random, 0, 5)) * UNSOOT_DEMO_DAY,
                           .complaint = complaints[said].complaint,
                           .codes = complaints[said].codes };
}

/* Persons pay when they fetch the vehicle; others by transfer, some of them late, a few
 * not yet. 0: not paid yet. */
static gint64
paid_at (UnsootDemo *demo, const UnsootDemoVehicle *vehicle, gint64 at, int nth)
{
  gint64 days = vehicle->fleet ? g_rand_int_range (demo->random, 18, 39)
                               : g_rand_int_range (demo->random, 0, 3) * 9;

  if (nth % 29 == 11 && demo->now - at < 150 * (gint64) UNSOOT_DEMO_DAY)
    return 0;
  return at + days * UNSOOT_DEMO_DAY <= demo->now ? at + days * UNSOOT_DEMO_DAY : 0;
}

/* Work takes about as long as planned. */
static gint64
planned_end (UnsootDemo *demo, const UnsootDemoPlan *plan)
{
  double planned = (double) unsoot_demo_services[plan->service].planned_minutes * 60.0;

  return plan->starts_at + (gint64) (planned * g_rand_double_range (demo->random, 0.78, 1.06));
}

static gint64
carry_through (UnsootDemo *demo, const UnsootDemoPlan *plan, int nth, GError **error)
{
  gint64 ends_at = 0;
  gint64 job_id = unsoot_demo_quote (demo, plan, error);

  if (job_id == 0 || !unsoot_demo_authorise (demo, plan, job_id, error)
      || !unsoot_demo_book (demo, plan, job_id, error)
      || !unsoot_demo_arrive (demo, plan, job_id, error)
      || unsoot_demo_run (demo, plan, job_id, 1.0, planned_end (demo, plan), &ends_at, error) == 0
      || !unsoot_demo_finish (demo, plan, job_id, ends_at, error))
    return 0;
  gint64 billed = ends_at + 25 * UNSOOT_DEMO_MINUTE;
  gint64 paid = paid_at (demo, plan->vehicle, billed, nth);
  const char *method = plan->vehicle->fleet ? "transfer" : nth % 4 == 0 ? "cash" : "card";
  return unsoot_demo_bill (demo, job_id, billed, paid, method, error) ? job_id : 0;
}

/* Quotes that were not taken: declined for good, or lines of them. */
static gboolean
decline_one (UnsootDemo *demo, const UnsootDemoPlan *plan, GError **error)
{
  UnsootActing who = unsoot_demo_as (demo, UNSOOT_DEMO_ADVISOR,
                                     plan->starts_at - plan->quoted_before + UNSOOT_DEMO_DAY);
  gint64 job_id = unsoot_demo_quote (demo, plan, error);

  return job_id != 0
         && unsoot_job_decline (demo->db, &who, job_id, "Wants to wait until after the harvest",
                                error);
}

gboolean
unsoot_demo_make_history (UnsootDemo *demo, GError **error)
{
  g_autoptr (GArray) visits = plan_visits (demo);
  gint64 day = 0;
  int nth = 0;

  for (guint i = 0; i < visits->len; i++)
    {
      const Visit *visit = &g_array_index (visits, Visit, i);
      const UnsootDemoVehicle *vehicle = demo->vehicles->pdata[visit->vehicle];

      if (!unsoot_demo_goes_on (demo, 0.05 + 0.85 * i / visits->len, error))
        return FALSE;
      nth = visit->at == day ? nth + 1 : 0;
      day = visit->at;
      if (!keep_stocked (demo, visit->at - 16 * 3600, error))
        return FALSE;
      UnsootDemoPlan plan = plan_for (demo, vehicle, visit->at, nth);
      if (i + PICTURED >= visits->len)
        plan.port = 1 + i % 4;
      if (i % 23 == 7)
        {
          if (!decline_one (demo, &plan, error))
            return FALSE;
          continue;
        }
      if (carry_through (demo, &plan, (int) i, error) == 0)
        return FALSE;
    }
  return TRUE;
}
