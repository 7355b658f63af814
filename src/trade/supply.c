/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "supply.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "civil.h"
#include "slug.h"

#define DAYS_A_WEEK 7.0

static const UnsootSlug supplies[] = {
  { UNSOOT_SUPPLY_SHORT, "short", N_ ("short") },
  { UNSOOT_SUPPLY_LOW, "low", N_ ("low") },
  { UNSOOT_SUPPLY_ON_ORDER, "on-order", N_ ("on order") },
  /* Translators: of a fluid, some of which will expire before it is used */
  { UNSOOT_SUPPLY_GOES_OFF, "goes-off", N_ ("goes off") },
  /* Translators: of a fluid: enough, and nothing expires unused */
  { UNSOOT_SUPPLY_FINE, "fine", N_ ("fine") },
  { 0, NULL, NULL },
};

const char *
unsoot_supply_words (UnsootSupply supply)
{
  return unsoot_slug_words (supplies, (int) supply);
}

UnsootSupply
unsoot_supply (gint64 short_ml, gint64 free_ml, gint64 on_order_ml, double point,
               gint64 going_off_ml)
{
  if (short_ml > 0 || free_ml < 0)
    return UNSOOT_SUPPLY_SHORT;
  if (!isnan (point) && (double) free_ml <= point)
    return (double) (free_ml + on_order_ml) <= point ? UNSOOT_SUPPLY_LOW : UNSOOT_SUPPLY_ON_ORDER;
  return going_off_ml > 0 ? UNSOOT_SUPPLY_GOES_OFF : UNSOOT_SUPPLY_FINE;
}

gboolean
unsoot_demand_of_weeks (const gint64 *weeks, gsize n, double *demand, double *demand_sd)
{
  double sum = 0, squares = 0;

  if (n < 2)
    return FALSE;
  for (gsize i = 0; i < n; i++)
    sum += (double) weeks[i];
  /* Twice over the data: one pass loses the deviation of large, even use. */
  for (gsize i = 0; i < n; i++)
    squares += pow ((double) weeks[i] - sum / (double) n, 2);
  *demand = sum / (double) n / DAYS_A_WEEK;
  *demand_sd = sqrt (squares / (double) (n - 1) / DAYS_A_WEEK);
  return TRUE;
}

/* Days from @today to the lot's last; a lot without one never goes off. */
static int
days_until (const UnsootStockLot *lot, int today)
{
  const char *last = unsoot_stock_last_day (lot);
  int day;

  return last != NULL && unsoot_day_parse (last, &day, NULL) ? day - today : G_MAXINT;
}

gint64
unsoot_supply_going_off (const UnsootStockLot *lots, gsize n, const char *today, double demand,
                         int horizon)
{
  gint64 shortage;
  g_autoptr (GArray) order = unsoot_stock_pick (lots, n, G_MAXINT64, today, &shortage);
  double spent_days = 0;
  double lost = 0;
  int start;

  if (!unsoot_day_parse (today, &start, NULL))
    return 0;
  for (guint i = 0; i < order->len; i++)
    {
      const UnsootStockPick *pick = &g_array_index (order, UnsootStockPick, i);
      const int last = days_until (&lots[pick->lot], start);
      /* The last day itself still counts. */
      const double days = MAX ((double) last + 1 - spent_days, 0);
      const double used = MIN ((double) pick->ml, demand > 0 ? days * demand : 0);
      if (last <= horizon)
        lost += (double) pick->ml - used;
      if (demand > 0)
        spent_days += used / demand;
    }
  return (gint64) llround (lost);
}

gboolean
unsoot_supply_suggest (const UnsootReorder *reorder, gint64 free_ml, gint64 on_order_ml,
                       UnsootSuggestion *suggestion, GError **error)
{
  const gint64 counted = free_ml + on_order_ml;
  UnsootSuggestion made = { 0 };

  if (!unsoot_reorder_safety (reorder, &made.safety, error)
      || !unsoot_reorder_point (reorder, &made.point, error))
    return FALSE;
  made.target = made.point + reorder->demand * UNSOOT_SUPPLY_COVER_DAYS;
  if ((double) counted <= made.point && made.target > (double) counted)
    made.wanted_ml = (gint64) ceil (made.target) - counted;
  *suggestion = made;
  return TRUE;
}

gboolean
unsoot_pack_order (const UnsootPack *packs, gsize n, gint64 ml, UnsootPackOrder *order)
{
  gboolean any = FALSE;

  for (gsize i = 0; i < n && ml > 0; i++)
    {
      const gint64 count = ml / packs[i].ml + (ml % packs[i].ml != 0);
      const UnsootPackOrder those = { i, count, count * packs[i].ml, count * packs[i].cost_minor };
      if (any
          && (those.cost_minor > order->cost_minor
              || (those.cost_minor == order->cost_minor && those.ml >= order->ml)))
        continue;
      *order = those;
      any = TRUE;
    }
  return any;
}

static gint64
sum_until (const UnsootOutlookNeed *needs, gsize n, int day)
{
  gint64 sum = 0;

  for (gsize i = 0; i < n; i++)
    if (needs[i].day <= day)
      sum += needs[i].ml;
  return sum;
}

gint64
unsoot_arrived_by (const UnsootOutlookNeed *arrivals, gsize n, int day)
{
  return sum_until (arrivals, n, day);
}

void
unsoot_outlook (gint64 usable, const UnsootOutlookNeed *needs, gsize n,
                const UnsootOutlookNeed *arrivals, gsize n_arrivals, double demand,
                double demand_sd, double z, UnsootOutlookDay *days, gsize n_days)
{
  for (gsize i = 0; i < n_days; i++)
    {
      const double used = MAX ((double) sum_until (needs, n, (int) i), demand * (double) i);
      const double spread = z * demand_sd * sqrt ((double) i);
      const double here = (double) (usable + sum_until (arrivals, n_arrivals, (int) i));
      const double left = here - used;
      days[i] = (UnsootOutlookDay){ MAX (left, 0), MAX (left - spread, 0), MAX (left + spread, 0) };
    }
}
